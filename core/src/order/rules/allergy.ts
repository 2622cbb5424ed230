/**
 * [OR13] [OR14] [OR41] Is the person allergic to what is in the feed? Names that match stop, by whole words or because both
 * name the same thing; a part of a word, or a feed whose recipe varies, is asked about; what matches nothing is shown.
 */
import type { Feed } from '../../feeds/feed.ts';
import { allergyMatches, wordsOf } from '../../feeds/match.ts';
import type { Order, Problem } from '../order.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

/** Written by somebody who asked, and found none: that is an answer, and nothing is left to compare. */
const NONE_KNOWN = new Set([
  'none',
  'none known',
  'nil known',
  'no known allergie',
  'no known drug allergie',
  'nka',
  'nkda',
]);

const saysNone = (allergies: readonly string[]): boolean =>
  allergies.length > 0 && allergies.every((one) => NONE_KNOWN.has(wordsOf(one).join(' ')));

type Match = 'same' | 'part' | 'none';

/** Short words turn up inside others by chance. */
const LEAST_PART = 3;

function matchOf(allergy: string, contained: string): Match {
  if (allergyMatches([allergy], [contained]).length > 0) return 'same';
  const within = (x: string, y: string) => x.length >= LEAST_PART && y.includes(x);
  const [said, named] = [wordsOf(allergy), wordsOf(contained)];
  return said.some((x) => named.some((y) => within(x, y) || within(y, x))) ? 'part' : 'none';
}

const CODES = { same: 'order/allergy', part: 'order/allergy-possible' } as const;

function inFeed(allergies: readonly string[], feed: Feed): readonly Problem[] {
  return allergies.flatMap((allergy, i) =>
    feed.allergens.flatMap((allergen) => {
      const match = matchOf(allergy, allergen);
      if (match === 'none') return [];
      const code = feed.compositionVaries === true ? 'order/allergy-possible' : CODES[match];
      return [problem(code, ['patient', 'allergies', i], { allergy, allergen, feed: feed.name })];
    }),
  );
}

/** A name says less than a list of contents, so that it is only asked about. */
function inNames(allergies: readonly string[], { feed, modules, medicines }: Order): readonly Problem[] {
  const names = [...(feed?.additives ?? []), ...modules, ...medicines].map((one) => one.name);
  return allergies.flatMap((allergy, i) =>
    names
      .filter((name) => matchOf(allergy, name) !== 'none')
      .map((name) =>
        problem('order/allergy-possible', ['patient', 'allergies', i], { allergy, allergen: name }),
      ),
  );
}

export function allergies({ order, feed }: Review): readonly Problem[] {
  const said = order.patient.allergies;
  if (feed === null || saysNone(said)) return [];
  const path = ['patient', 'allergies'];
  if (said.length === 0) {
    return [problem('order/allergies-to-compare', path, { allergies: [], allergens: feed.allergens })];
  }
  const found = [...inFeed(said, feed), ...inNames(said, order)];
  const unmatched = said.filter((_, i) => !found.some((one) => one.path.at(-1) === i));
  return unmatched.length === 0
    ? found
    : [
        ...found,
        problem('order/allergies-to-compare', path, { allergies: unmatched, allergens: feed.allergens }),
      ];
}
