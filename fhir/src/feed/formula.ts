/**
 * Which feed of the facility's list is meant, at what strength, with what mixed in?
 * A feed is taken only where a name or code of the order is a name or id of the list to the letter (case and spaces
 * aside); else it is asked, with those whose energy density fits. FHIR has no strength: it is full where the density of
 * the order is that of the feed, else asked.
 */
import { compare as compareFractions, type Fraction, ONE } from '@feedwright/core/base/fraction';
import { type Feed, type FeedList, feedById } from '@feedwright/core/feeds/feed';
import type { Additive, Order } from '@feedwright/core/order/order';
import { compare, type Exact, of, ofFraction, times } from '@feedwright/core/reckon/exact';
import type { Dialect, WrittenAdditive } from '../dialect.ts';
import { conceptOf, labelOf, namesOf, tidyName } from '../read/coded.ts';
import { type Element, field, numeralOf, textOf } from '../read/element.ts';
import { writtenAs } from '../read/numeral.ts';
import { answered, answeredInstead, ask, note, stop } from '../read/reading.ts';
import { type Density, densityOf } from './density.ts';

const plain = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');

const called = (feed: Feed, name: string): boolean =>
  plain(feed.id) === plain(name) || plain(feed.name) === plain(name);

/** A label's density is rounded: within a twentieth it may be the same feed. For suggestions, never for a choice. */
const isNear = (a: Exact, b: Exact): boolean =>
  compare(times(a, of(20)), times(b, of(19))) >= 0 && compare(times(a, of(20)), times(b, of(21))) <= 0;

/** The feeds of the list whose energy density is about the one that is meant, or else all of them. */
function candidates({ feeds }: FeedList, { kcalPerMl, settled, likely }: Density): readonly string[] {
  const meant = settled && kcalPerMl !== null ? ofFraction(kcalPerMl) : likely;
  const given = feeds.filter(({ system }) => system !== 'water');
  const fitting = given.filter((feed) => meant !== null && isNear(ofFraction(feed.energyKcalPerMl), meant));
  return (fitting.length > 0 ? fitting : given).map(({ id }) => id);
}

type Named = { readonly id: string; readonly feed: Feed | null };

/** [FH17] The feed, or what the order calls it where the list has no such. */
function namedFeed(formula: Element, dialect: Dialect, feeds: FeedList, density: Density): Named | null {
  const product = tidyName(field(formula, 'baseFormulaProductName'));
  const type = conceptOf(dialect.concept(field(formula, 'baseFormulaType')));
  const codes = type.codings.flatMap(({ code }) => (code === null ? [] : [code]));
  const names = [...(product === null ? [] : [product]), ...namesOf(type), ...codes];
  const found = feeds.feeds.filter((feed) => names.some((name) => called(feed, name)));
  const [only] = found;
  if (only !== undefined && found.length === 1) return { id: only.id, feed: only };
  const answer = ask(
    formula,
    'FH17',
    found.length > 1 ? 'fhir/feeds-several' : 'fhir/feed-not-listed',
    'feed',
    {
      names: names.filter((name) => !codes.includes(name)),
      candidates: found.length > 1 ? found.map(({ id }) => id) : candidates(feeds, density),
    },
  );
  const chosen = answer === null ? null : feedById(feeds, answer);
  if (answer !== null && chosen === null) {
    stop(formula, 'FH17', 'fhir/feed-answer-not-listed', {
      feed: answer,
      candidates: candidates(feeds, density),
    });
  }
  const id = chosen?.id ?? product ?? labelOf(type);
  return id === null ? null : { id, feed: chosen };
}

/** [FH17] Full strength stands in while the feed or the strength is an open question. */
function strengthOf(formula: Element, { feed }: Named, { kcalPerMl, settled }: Density): Fraction {
  if (feed === null) return answered(formula, 'strength') ?? ONE;
  const same = settled && kcalPerMl !== null && compareFractions(kcalPerMl, feed.energyKcalPerMl) === 0;
  if (!same) return ask(formula, 'FH17', 'fhir/strength-unsaid', 'strength', { feed: feed.id }) ?? ONE;
  const said = answeredInstead(
    formula,
    'strength',
    '1/1',
    (strength) => compareFractions(strength, ONE) === 0,
  );
  if (said !== null) return said;
  note(formula, 'FH17', 'fhir/full-strength', { feed: feed.id });
  return ONE;
}

/** An amount that FHIR gives, as people write it: `20 mL`. */
function amountText(quantity: Element | null): string | null {
  const value = numeralOf(quantity, 'value');
  const unit = textOf(quantity, 'code') ?? textOf(quantity, 'unit');
  textOf(quantity, 'system');
  textOf(quantity, 'unit');
  return value === null || unit === null ? null : `${writtenAs(value)} ${unit}`;
}

const additiveOf = ({ concept, name, quantity }: WrittenAdditive): Additive => ({
  name: tidyName(name) ?? labelOf(conceptOf(concept)) ?? '?',
  amount: amountText(quantity),
});

/** [FH18] What is mixed in changes energy and keeping time: without an amount it is asked. */
function additivesOf(formula: Element, dialect: Dialect): readonly Additive[] {
  const written = dialect.additives(formula).map((one) => {
    const additive = additiveOf(one);
    conceptOf(one.concept);
    return additive;
  });
  if (written.every(({ amount }) => amount !== null)) return written;
  const amounts = ask(formula, 'FH18', 'fhir/additive-without-amount', 'additives', {
    additives: written.map(({ name }) => name),
  });
  if (amounts === null) return written;
  if (amounts.length !== written.length) {
    stop(formula, 'FH18', 'fhir/additive-answers', { additives: written.length, answers: amounts.length });
    return written;
  }
  return written.map((additive, place) => ({ ...additive, amount: additive.amount ?? amounts[place]! }));
}

export type Formula = {
  readonly feed: Order['feed'];
  readonly density: Density;
  readonly listed: Feed | null;
};

export function formulaOf(formula: Element, dialect: Dialect, feeds: FeedList): Formula {
  const density = densityOf(formula);
  const named = namedFeed(formula, dialect, feeds, density);
  const additives = additivesOf(formula, dialect);
  if (named === null) return { feed: null, density, listed: null };
  return {
    density,
    listed: named.feed,
    feed: {
      id: named.id,
      strength: strengthOf(formula, named, density),
      additives,
      statedKcalPerMl: density.kcalPerMl,
      preparedAt: null,
      expiresAt: null,
    },
  };
}
