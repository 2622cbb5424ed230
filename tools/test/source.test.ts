import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { allSources, ROOT, read } from '../house.mjs';
import { dissect, importsOf } from '../source.mjs';

/** What Node's own parser says that each file asks for, after it took the types away. */
const PARSER = `
  import { readFileSync } from 'node:fs';
  import { stripTypeScriptTypes } from 'node:module';
  import { SourceTextModule } from 'node:vm';
  const asked = (path) => {
    const text = readFileSync(path, 'utf8').replace(/^#!.*/, '');
    const script = path.endsWith('.ts') ? stripTypeScriptTypes(text) : text;
    return new SourceTextModule(script).moduleRequests.map(({ specifier }) => specifier);
  };
  console.log(JSON.stringify(process.argv.slice(1).map(asked)));
`;

test('sees every import that the parser of Node sees, in every file of this house', () => {
  const files = allSources(ROOT);
  const { stdout, stderr } = spawnSync(
    process.execPath,
    [
      '--experimental-vm-modules',
      '--input-type=module',
      '-e',
      PARSER,
      ...files.map((file) => join(ROOT, file)),
    ],
    { encoding: 'utf8' },
  );
  assert.ok(stdout, stderr);
  const asked: string[][] = JSON.parse(stdout);
  assert.ok(asked.flat().length > 100);
  for (const [index, file] of files.entries()) {
    const seen = importsOf(read(ROOT, file));
    for (const specifier of asked[index] ?? []) assert.ok(seen.includes(specifier), `${file}: ${specifier}`);
  }
});

const code = (text: string) => dissect(text).code.replaceAll(' ', '');

test('tells code from comments, texts and patterns', () => {
  assert.equal(code('a // b\n/* c */ d'), 'a\nd');
  assert.equal(code(`a('b // c') + "d \\" e"`), `a('')+""`);
  assert.equal(code('a(`b $' + '{c({ d: `e $' + '{f} g` })} h`)'), 'a(`{c({d:`{f}`})}`)');
  assert.equal(code("a.replace(/['`/*]/g, b) / c / d"), 'a.replace(/g,b)/c/d');
  assert.equal(code('a(/[/]"/) // b'), 'a(//)');
  assert.equal(dissect('a // b\nc').comments, '  // b\n ');
  assert.equal(dissect("a('b') /* c */").uncommented, "a('b')        ");
});
