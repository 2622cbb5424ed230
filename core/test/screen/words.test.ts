/** Has everything that can be said words, with a remedy? */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { ORDER_PROBLEMS } from '../../src/order/problem.ts';
import { ENGLISH } from '../../src/screen/english/english.ts';

const SOURCE = new URL('../../src/', import.meta.url).pathname;

/** What the sentences that list things need to have something to list. */
const EMPTY = { allergies: [], answers: [], names: [], nearest: null };

/** Every code of an issue that stands in the source of core: `number/grouped`, `field/unknown` … */
const codesIn = (families: RegExp): readonly string[] =>
  readdirSync(SOURCE, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.startsWith('screen'))
    .flatMap((name) =>
      [...readFileSync(join(SOURCE, name), 'utf8').matchAll(/'([a-z]+\/[a-z-]+)'/g)].map(
        (found) => found[1]!,
      ),
    )
    .filter((code) => families.test(code));

test('[SC3] every problem of an order has words and a remedy', () => {
  for (const code of Object.keys(ORDER_PROBLEMS)) {
    const sentence = ENGLISH.problems[code]?.({ ...EMPTY, what: 'x', path: 'x' });
    assert.ok(sentence !== undefined && sentence.says !== '' && sentence.remedy !== '', code);
  }
});

test('[SC3] every problem of a plan has words', () => {
  const codes = new Set(codesIn(/^plan\//));
  assert.ok(codes.size >= 2);
  for (const code of codes) assert.ok(ENGLISH.problems[code] !== undefined, code);
});

test('[SC3] every issue of a document, a number, a policy or a feed has words', () => {
  const codes = new Set(
    codesIn(/^(number|field|document|json|text|time|policy|feeds|entry|fact|residual|act)\//),
  );
  assert.ok(codes.size > 40);
  const silent = [...codes].filter((code) => ENGLISH.issues[code] === undefined);
  assert.deepEqual(silent, []);
});

test('[SC3] no sentence speaks of an error, and none is empty', () => {
  for (const [code, say] of Object.entries({ ...ENGLISH.problems, ...ENGLISH.issues })) {
    const { says, remedy } = say(EMPTY);
    const text = `${says} ${remedy}`.replaceAll('entered in error', '');
    assert.ok(says !== '' && !/\berror\b/i.test(text), code);
  }
});
