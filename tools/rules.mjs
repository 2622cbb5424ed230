// @ts-check
/**
 * Does every rule have its test, and does every rule that is named exist?
 * RULES.md is the contract between clinician, code and test; this keeps the three from drifting apart.
 */
import { existsSync, globSync } from 'node:fs';
import { join } from 'node:path';
import { allSources, read } from './house.mjs';
import { dissect } from './source.mjs';

const RULES = 'core/RULES.md';
/** Files with tests, and the suites beside them that several of them run. */
const TESTS = /\.test\.\w+$|^[^/]+\/test\//;
const ID = /[A-Z]{2}\d+/g;
/** One id in square brackets, or several with commas between. */
const CITED = /\[([A-Z]{2}\d+(?:, ?[A-Z]{2}\d+)*)\]/g;

/** @param {string} text @returns {string[]} */
const cited = (text) => [...text.matchAll(CITED)].flatMap(([, ids = '']) => ids.match(ID) ?? []);

/** The rules in the order of the file, each with the heading it stands under. @param {string} text */
function rulesIn(text) {
  /** @type {{ id: string, family: string, says: string }[]} */
  const rules = [];
  let family = '';
  for (const line of text.split('\n')) {
    family = /^## ([A-Z]{2}):/.exec(line)?.[1] ?? family;
    const row = /^\|\s*([A-Z]{2}\d+)\s*\|(.*)\|\s*$/.exec(line);
    if (row) rules.push({ id: row[1] ?? '', family, says: (row[2] ?? '').trim() });
  }
  return rules;
}

/** The names of the tests of a file, less those that are skipped or still to be written. @param {string} text */
function testNames(text) {
  const { code, uncommented } = dissect(text);
  const call = /\b(?:test|it|describe|suite)\s*\(\s*(['"`])((?:\\.|(?!\1)[\s\S])*)\1/g;
  return [...uncommented.matchAll(call)]
    .filter((found) => /\S/.test(code[found.index] ?? ''))
    .map((found) => found[2] ?? '');
}

/** Rules as a plan or a problem carries them: a text that is nothing but the id. @param {string} text @param {Set<string>} families */
const carried = (text, families) =>
  [...dissect(text).uncommented.matchAll(/(['"`])([A-Z]{2}\d+)\1/g)]
    .map((found) => found[2] ?? '')
    .filter((id) => families.has(id.slice(0, 2)));

/** A table of cases may hold the rule of each row; the name is then made from it. @param {string} text @param {Set<string>} families */
function namedByTests(text, families) {
  const names = testNames(text);
  const madeFromTable = names.some((name) => /\[\$\{/.test(name));
  return [...names.flatMap(cited), ...(madeFromTable ? carried(text, families) : [])];
}

/** @param {{ id: string, family: string, says: string }[]} rules */
function* malformed(rules) {
  const seen = new Set();
  for (const { id, family, says } of rules) {
    if (seen.has(id)) yield `${RULES}: ${id} stands there twice`;
    if (!id.startsWith(family)) yield `${RULES}: ${id} stands under ${family}`;
    if (says === '') yield `${RULES}: ${id} says nothing`;
    seen.add(id);
  }
}

/** @param {string} root @returns {import('./house.mjs').Report} */
export function rules(root) {
  const list = rulesIn(read(root, RULES));
  const known = new Set(list.map(({ id }) => id));
  const families = new Set(list.map(({ family }) => family));
  const problems = [...malformed(list)];
  const tested = new Set();
  /** @param {string} file @param {string[]} ids */
  const mustExist = (file, ids) => {
    const unknown = [...new Set(ids)].filter((id) => !known.has(id));
    if (unknown.length > 0) problems.push(`${file}: ${RULES} has no ${unknown.join(', ')}`);
  };
  for (const file of allSources(root)) {
    const text = read(root, file);
    if (TESTS.test(file)) {
      const ids = namedByTests(text, families);
      for (const id of ids) tested.add(id);
      mustExist(file, ids);
    } else mustExist(file, [...cited(dissect(text).comments), ...carried(text, families)]);
  }
  for (const file of globSync('docs/**/*.md', { cwd: root })) mustExist(file, cited(read(root, file)));
  if (existsSync(join(root, 'ARCHITECTURE.md')))
    mustExist('ARCHITECTURE.md', cited(read(root, 'ARCHITECTURE.md')));
  for (const { id } of list) if (!tested.has(id)) problems.push(`${RULES}: no test is named [${id}]`);
  return { looked: list.length, problems };
}
