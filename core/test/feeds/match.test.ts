import assert from 'node:assert/strict';
import { test } from 'node:test';
import { allergyMatches } from '@feedwright/core/feeds/match';
import fc from 'fast-check';
import { runs } from '../runs.ts';

const CONTAINED = ['milk', 'soya', 'fish'];

/** `allergen reason`, for one allergy against an ordinary feed. */
const met = (allergy: string, contained: readonly string[] = CONTAINED): readonly string[] =>
  allergyMatches([allergy], contained).map((one) => `${one.allergen} ${one.group ?? one.because}`);

test('[FE10] whole words meet, whatever their case, spacing and marks', () => {
  for (const allergy of [
    'milk',
    'MILK',
    '  Milk ',
    'Cow’s milk protein',
    "cow's-milk (rash)",
    'allergic to milk.',
  ]) {
    assert.deepEqual(met(allergy), ['milk same-words'], allergy);
  }
  assert.deepEqual(met('Fish   Oil', ['fish oil']), ['fish oil same-words']);
  assert.deepEqual(met('guar', ['guar gum']), ['guar gum same-words']);
  assert.deepEqual(met('guar gum (E 412)', ['guar gum']), ['guar gum same-words']);
  assert.deepEqual(met('eggs', ['egg']), ['egg same-words']);
});

test('[FE10] parts of words and other things do not meet', () => {
  for (const allergy of ['shellfish', 'milkweed', 'latex', 'penicillin', 'none known', '', '—']) {
    assert.deepEqual(met(allergy), [], allergy);
  }
  // Lactose is no protein of milk: intolerance, not allergy.
  assert.deepEqual(met('lactose intolerance'), []);
  assert.deepEqual(met('peanut', ['nuts']), []);
});

test('[FE10] other names of the same thing meet, and say what both are', () => {
  assert.deepEqual(met('casein'), ['milk milk']);
  assert.deepEqual(met('Dairy products'), ['milk milk']);
  assert.deepEqual(met('soy'), ['soya soya']);
  assert.deepEqual(met('Soybeans'), ['soya soya']);
  assert.deepEqual(met('salmon'), ['fish fish']);
  assert.deepEqual(met('milk', ['whey protein']), ['whey protein milk']);
  assert.deepEqual(met('gluten', ['wheat']), ['wheat wheat']);
  assert.deepEqual(met('groundnuts', ['peanut']), ['peanut peanut']);
});

test('[FE10] every allergy is compared with every allergen, in order', () => {
  assert.deepEqual(
    allergyMatches(['fish', 'latex', 'whey'], CONTAINED).map((one) => [
      one.allergy,
      one.allergen,
      one.because,
    ]),
    [
      ['fish', 'fish', 'same-words'],
      ['whey', 'milk', 'same-thing'],
    ],
  );
});

test('[FE10] a feed always meets an allergy to what it lists, and the order of words around it is no matter', () => {
  const word = fc.stringMatching(/^[a-z]{3,8}$/);
  fc.assert(
    fc.property(word, fc.string(), fc.string(), (name, before, after) => {
      assert.equal(allergyMatches([`${before} ${name.toUpperCase()} ${after}`], [name]).length, 1);
    }),
    runs(5000),
  );
});
