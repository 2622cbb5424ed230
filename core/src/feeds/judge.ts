/**
 * Can there be such a feed? What is impossible is refused by name of the row: a density off by a factor of a thousand
 * makes every number after it wrong, and looks like a number all the same.
 */
import { compare, type Fraction, fraction, ONE, times, ZERO } from '../base/fraction.ts';
import { hours } from '../base/instant.ts';
import { type Issue, issue } from '../base/result.ts';
import { inMl, ml } from '../base/volume.ts';
import type { Feed, FeedList, Pack } from './feed.ts';
import { readGtin } from './scan/gtin.ts';

/** Published classes have 0.67 to 2.0 kcal/mL (S31, S95); a diluted one half as much. Far outside it is a unit slipped. */
const LEAST_ENERGY = fraction(1, 10);
const MOST_ENERGY = fraction(3);
/** The general factor for protein, kcal/g, as food labels use it. */
const KCAL_PER_G_PROTEIN = fraction(4);
/** The longest hang limit that is published for anything (S1, S24). */
const LONGEST_HANG = hours(48);
const LARGEST_PACK = ml(5000);

type Where = { readonly index: number; readonly feed: Feed };

const refuse = (
  { index, feed }: Where,
  field: string,
  rule: string,
  code: string,
  data: Issue['data'],
): readonly Issue[] => [issue(['feeds', index, field], code, { rule, feed: feed.id, ...data })];

const energyFromProtein = (feed: Feed): Fraction => times(feed.proteinGPerMl, KCAL_PER_G_PROTEIN);

/** [FE3] Between 0.1 and 3 kcal/mL; water has none. */
function energy(at: Where): readonly Issue[] {
  const { energyKcalPerMl: value, system } = at.feed;
  const [least, most] = system === 'water' ? [ZERO, ZERO] : [LEAST_ENERGY, MOST_ENERGY];
  return compare(value, least) < 0 || compare(value, most) > 0
    ? refuse(at, 'energyKcalPerMl', 'FE3', 'feeds/energy', { value, least, most, unit: 'kcal/mL' })
    : [];
}

/** [FE4] No more water than feed, and some. */
function water(at: Where): readonly Issue[] {
  const { waterFraction: value } = at.feed;
  return compare(value, ZERO) <= 0 || compare(value, ONE) > 0
    ? refuse(at, 'waterMlPer100Ml', 'FE4', 'feeds/water', { value: times(value, fraction(100)) })
    : [];
}

/** [FE5] Protein brings no more energy than there is. */
function protein(at: Where): readonly Issue[] {
  const { energyKcalPerMl, proteinGPerMl } = at.feed;
  return compare(proteinGPerMl, ZERO) < 0 || compare(energyFromProtein(at.feed), energyKcalPerMl) > 0
    ? refuse(at, 'proteinGPer100Ml', 'FE5', 'feeds/protein', {
        value: times(proteinGPerMl, fraction(100)),
        energyFromProtein: energyFromProtein(at.feed),
        energy: energyKcalPerMl,
      })
    : [];
}

const isPack = (pack: Pack): boolean => pack.volume > 0 && pack.volume <= LARGEST_PACK;

/** [FE6] A pack holds something; a closed feed comes in containers, a poured one in cartons. */
function packs(at: Where): readonly Issue[] {
  const { packs: all, system } = at.feed;
  const sizes = all.flatMap((pack, i) =>
    isPack(pack)
      ? []
      : refuse(at, 'packs', 'FE6', 'feeds/pack-size', { pack: i, volumeMl: inMl(pack.volume), mostMl: 5000 }),
  );
  const wanted = system === 'closed' ? 'container' : system === 'open-liquid' ? 'carton' : null;
  const wrong = wanted !== null && all.some((pack) => pack.kind !== wanted);
  const none = system === 'closed' && all.length === 0;
  return wrong || none
    ? [...sizes, ...refuse(at, 'packs', 'FE6', 'feeds/pack-kind', { system, wanted })]
    : sizes;
}

/** [FE8] */
function labelLimit(at: Where): readonly Issue[] {
  const { labelHangLimit: value } = at.feed;
  return value !== null && (value <= 0 || value > LONGEST_HANG)
    ? refuse(at, 'labelHangLimitHours', 'FE8', 'feeds/label-limit', { value, most: LONGEST_HANG })
    : [];
}

/** [FE7] One id is one feed: an order that names it must not be able to mean two. */
function twice(at: Where, list: FeedList): readonly Issue[] {
  const sameId = (other: Feed): boolean => other.id.toLowerCase() === at.feed.id.toLowerCase();
  const first = list.feeds.findIndex(sameId);
  return first < at.index ? refuse(at, 'id', 'FE7', 'feeds/twice', { first }) : [];
}

type Numbered = { readonly gtin: string; readonly row: number };

/** Every product number that can be one, in the fourteen digits by which two writings of it are the same. */
const numbersIn = (list: FeedList): readonly Numbered[] =>
  list.feeds.flatMap((feed, row) =>
    (feed.gtins ?? []).flatMap((text) => {
      const read = readGtin(text);
      return read.ok ? [{ gtin: read.value, row }] : [];
    }),
  );

/** [FE12] [FE13] Each number can be one, and names one feed: a scan must not be able to mean two. */
function gtins(at: Where, numbers: readonly Numbered[]): readonly Issue[] {
  const wrong = (at.feed.gtins ?? []).flatMap((text) => {
    const read = readGtin(text);
    return read.ok
      ? []
      : read.issues.flatMap((one) => refuse(at, 'gtins', 'FE12', one.code, { text, ...one.data }));
  });
  const again = numbers.flatMap(({ gtin, row }, index) => {
    const first = numbers.findIndex((other) => other.gtin === gtin);
    return row === at.index && first < index
      ? refuse(at, 'gtins', 'FE13', 'feeds/gtin-twice', { gtin, first: numbers[first]?.row })
      : [];
  });
  return [...wrong, ...again];
}

/** All that is impossible in a feed list, as issues that name the feed and the field, with the rule in `data.rule`. */
export function judgeFeeds(list: FeedList): readonly Issue[] {
  const numbers = numbersIn(list);
  return list.feeds.flatMap((feed, index) => {
    const at = { index, feed };
    return [
      ...twice(at, list),
      ...energy(at),
      ...protein(at),
      ...water(at),
      ...packs(at),
      ...labelLimit(at),
      ...gtins(at, numbers),
    ];
  });
}
