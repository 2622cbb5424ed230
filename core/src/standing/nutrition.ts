/**
 * What is in it? Energy, protein and free water of what was kept, by mixture, worked once from whole volumes. A feed that is
 * not in the feed list is named, not guessed: then the totals are of the rest. [ST22]
 */
import type { Fraction } from '../base/fraction.ts';
import { type Span, within } from '../base/instant.ts';
import { add, inMl, share, subtract, sum, type Volume } from '../base/volume.ts';
import {
  ARITHMETIC,
  type Basis,
  input,
  shownNumber,
  shownVolume,
  type Worked,
  type WorkingInput,
  worked,
} from '../base/working.ts';
import { type Feed, type FeedList, feedById } from '../feeds/feed.ts';
import { type Exact, ofFraction, plus, times, toFraction } from '../reckon/exact.ts';
import type { Delivered, Mixture } from './readings/delivery.ts';
import type { Dose, Intake } from './readings/liquids.ts';
import { sumWithin } from './stretch.ts';

export type MixtureKept = { readonly mixture: Mixture | null; readonly volume: Volume };

export type Nutrition = {
  readonly mixtures: readonly MixtureKept[];
  readonly energyKcal: Worked<Fraction>;
  readonly proteinG: Worked<Fraction>;
  readonly freeWater: {
    readonly feed: Worked<Volume>;
    readonly given: Worked<Volume>;
    readonly total: Worked<Volume>;
  };
  /** Feeds that the totals leave out, because the feed list does not have them; null stands for one that nobody named. */
  readonly unknownFeeds: readonly (string | null)[];
};

const keyOf = (mixture: Mixture | null): string | null =>
  mixture === null ? null : `${mixture.feed} ${mixture.strength.n}/${mixture.strength.d}`;

/** Within a span, by mixture. */
export const mixturesWithin = (list: readonly Delivered[], span: Span): readonly MixtureKept[] =>
  [...Map.groupBy(list, (one) => keyOf(one.mixture)).values()]
    .map((own) => ({ mixture: own[0]?.mixture ?? null, volume: sumWithin(own, span) }))
    .filter((one) => one.volume !== 0);

/** A volume of a mixture whose feed is known: the formula in it. */
type Known = { readonly feed: Feed; readonly mixture: Volume; readonly formula: Volume };

function known(kept: readonly MixtureKept[], feeds: FeedList): readonly Known[] {
  return kept.flatMap(({ mixture, volume }) => {
    const feed = mixture === null ? null : feedById(feeds, mixture.feed);
    return feed === null || mixture === null
      ? []
      : [{ feed, mixture: volume, formula: share(volume, mixture.strength) }];
  });
}

type PerMl = {
  readonly symbol: string;
  readonly field: 'energyKcalPerMl' | 'proteinGPerMl';
  readonly unit: string;
};

const formulaInput = ({ feed, formula }: Known, place: number): WorkingInput =>
  input(`V_${place + 1}`, shownVolume(formula), { kind: 'entry', id: feed.id });

/** Volume of formula × density, and what modules and food bring. */
function nutrient(
  list: readonly Known[],
  doses: readonly Dose[],
  { symbol, field, unit }: PerMl,
): Worked<Fraction> {
  const own = field === 'energyKcalPerMl' ? 'energyKcal' : 'proteinG';
  const fromFeed = (one: Known): Exact => times(ofFraction(inMl(one.formula)), ofFraction(one.feed[field]));
  const total = plus(...list.map(fromFeed), ...doses.map((one) => ofFraction(one[own])));
  const density = ({ feed }: Known, place: number): WorkingInput =>
    input(`d_${place + 1}`, shownNumber(feed[field], `${unit}/mL`), {
      kind: 'feed-list',
      feed: feed.id,
      field,
    });
  return worked(toFraction(total), (value) => shownNumber(value, unit), {
    symbol,
    equation: doses.length === 0 ? `${symbol} = Σ V × d` : `${symbol} = Σ V × d + Σ dose`,
    inputs: [
      ...list.flatMap((one, place) => [formulaInput(one, place), density(one, place)]),
      ...doses.map((one) => input(one.name, shownNumber(one[own], unit), { kind: 'entry', id: one.name })),
    ],
    rule: 'ST22',
    basis: ARITHMETIC,
  });
}

const total = (
  symbol: string,
  value: Volume,
  equation: string,
  inputs: readonly WorkingInput[],
): Worked<Volume> =>
  worked(value, shownVolume, { symbol, equation, inputs, rule: 'ST22', basis: ARITHMETIC });

/** The formula's share, and all that dilutes it. */
function waterInFeed(list: readonly Known[]): Worked<Volume> {
  const of = ({ feed, mixture, formula }: Known): Volume =>
    add(share(formula, feed.waterFraction), subtract(mixture, formula));
  const inputs = list.flatMap((one, place) => [
    formulaInput(one, place),
    input(`w_${place + 1}`, shownNumber(one.feed.waterFraction), {
      kind: 'feed-list',
      feed: one.feed.id,
      field: 'waterFraction',
    }),
    input(`V_mixture_${place + 1}`, shownVolume(one.mixture), { kind: 'entry', id: one.feed.id }),
  ]);
  return total('W_feed', sum(list.map(of)), 'W_feed = Σ V × w + Σ (V_mixture − V)', inputs);
}

const of = (one: Worked<unknown>): Basis => ({ kind: 'working', working: one.working });

export type Eaten = {
  readonly feed: readonly Delivered[];
  readonly water: readonly Intake[];
  readonly doses: readonly Dose[];
};

export function nutritionWithin({ feed, water, doses }: Eaten, span: Span, feeds: FeedList): Nutrition {
  const kept = mixturesWithin(feed, span);
  const list = known(kept, feeds);
  const own = doses.filter((one) => within(span, one.at));
  const inFeed = waterInFeed(list);
  const given = sumWithin(water, span);
  const byItself = total('W_given', given, 'W_given', []);
  return {
    mixtures: kept,
    energyKcal: nutrient(list, own, { symbol: 'E', field: 'energyKcalPerMl', unit: 'kcal' }),
    proteinG: nutrient(list, own, { symbol: 'm_protein', field: 'proteinGPerMl', unit: 'g' }),
    freeWater: {
      feed: inFeed,
      given: byItself,
      total: total('W', add(inFeed.value, given), 'W = W_feed + W_given', [
        input('W_feed', shownVolume(inFeed.value), of(inFeed)),
        input('W_given', shownVolume(given), of(byItself)),
      ]),
    },
    unknownFeeds: [
      ...new Set(
        kept
          .map(({ mixture }) => mixture?.feed ?? null)
          .filter((one) => one === null || feedById(feeds, one) === null),
      ),
    ],
  };
}
