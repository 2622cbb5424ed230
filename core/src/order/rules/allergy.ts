/**
 * [OR13] [OR14] [OR41] Is the person allergic to what is in the feed? Whole words that match stop; a part of a word, or a
 * feed whose recipe varies, is asked about; and what matches nothing is shown side by side, for words have synonyms.
 */
import type { Feed } from '../../feeds/feed.ts';
import type { Order, Problem } from '../order.ts';
import { problem } from '../problem.ts';
import type { Review } from '../review.ts';

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .normalize('NFC')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word.length > 0);

/** An egg is an allergy to eggs. */
const singular = (word: string): string => (word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word);

type Match = 'same' | 'part' | 'none';

/** Short words turn up inside others by chance. */
const LEAST_PART = 3;

function matchOf(allergy: string, contained: string): Match {
  const [a, b] = [wordsOf(allergy).map(singular), wordsOf(contained).map(singular)];
  const some = (fits: (x: string, y: string) => boolean) => a.some((x) => b.some((y) => fits(x, y)));
  if (some((x, y) => x === y)) return 'same';
  const within = (x: string, y: string) => x.length >= LEAST_PART && y.includes(x);
  return some((x, y) => within(x, y) || within(y, x)) ? 'part' : 'none';
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
  if (feed === null) return [];
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
