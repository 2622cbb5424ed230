/**
 * Is this person allergic to something in it? Allergies are written by people: compared by whole words, whatever their
 * case and spacing, and by a small table of what is the same thing under another name. Nothing matched is no proof:
 * a list of allergens is only as good as the label it was copied from.
 */

/** Each name of one allergen. What is a part or a kind of it counts as it: better asked once too often. */
const GROUPS: readonly { readonly group: string; readonly names: readonly string[] }[] = [
  // Not lactose: who cannot digest it is not allergic to milk, and most feeds have none.
  {
    group: 'milk',
    names: ['milk', 'dairy', 'casein', 'caseinate', 'whey', 'lactalbumin', 'lactoglobulin', 'cmpa'],
  },
  { group: 'soya', names: ['soya', 'soy', 'soybean', 'soyabean', 'soja'] },
  { group: 'fish', names: ['fish', 'cod', 'salmon', 'tuna', 'mackerel', 'anchovy'] },
  { group: 'egg', names: ['egg', 'ovalbumin', 'albumen'] },
  { group: 'wheat', names: ['wheat', 'gluten', 'gliadin'] },
  { group: 'nuts', names: ['nut', 'almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'pistachio'] },
  { group: 'peanut', names: ['peanut', 'groundnut', 'arachis'] },
];

export type AllergyMatch = {
  /** As written in the order. */
  readonly allergy: string;
  /** As written in the feed list. */
  readonly allergen: string;
  readonly because: 'same-words' | 'same-thing';
  /** The thing that both are names of, where the words differ. */
  readonly group: string | null;
};

/** An egg is an allergy to eggs. */
const singular = (word: string): string => (word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word);

/** The words of a name, in small letters, one for many. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map(singular);

/** Whether the words of one stand side by side in the other: `fish oil` in `allergy to fish oil`. */
function contains(words: readonly string[], phrase: readonly string[]): boolean {
  if (phrase.length === 0) return false;
  return words.some((_, start) => phrase.every((word, offset) => words[start + offset] === word));
}

const groupsOf = (words: readonly string[]): readonly string[] =>
  GROUPS.filter(({ names }) => names.some((name) => words.includes(name))).map(({ group }) => group);

function matchOf(allergy: string, allergen: string): AllergyMatch | null {
  const [said, contained] = [wordsOf(allergy), wordsOf(allergen)];
  if (contains(said, contained) || contains(contained, said)) {
    return { allergy, allergen, because: 'same-words', group: null };
  }
  const group = groupsOf(said).find((one) => groupsOf(contained).includes(one));
  return group === undefined ? null : { allergy, allergen, because: 'same-thing', group };
}

/** Each allergy that meets something contained, with the reason; in the order of the allergies. [FE10] */
export const allergyMatches = (
  allergies: readonly string[],
  contained: readonly string[],
): readonly AllergyMatch[] =>
  allergies.flatMap((allergy) => contained.flatMap((allergen) => matchOf(allergy, allergen) ?? []));
