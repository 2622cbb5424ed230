/**
 * Delivery, nutrition, intake and output against printed exercises: the day is charted as it is described there, and what
 * it comes to must be what is printed. Each source stands beside its check.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction, ONE } from '@feedwright/core/base/fraction';
import { after, hours, type Instant, DAY as LASTS, type Span } from '@feedwright/core/base/instant';
import { ml, type Volume, volume } from '@feedwright/core/base/volume';
import type { Feed, FeedList } from '@feedwright/core/feeds/feed';
import type { AnyEntry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { type Account, accountOver } from '@feedwright/core/standing/account';
import { at, bag, courseOf, FEEDS, give, inMl, LONDON, POLICY, pump, residual, said } from './bedside.ts';

type Composition = {
  readonly kcalPerMl: number;
  readonly proteinG?: [number, number];
  readonly water?: [number, number];
};

/** One feed with the figures of the exercise: hundredths of kcal/mL, and grams or mL in so many mL. */
const feedsWith = ({ kcalPerMl, proteinG = [0, 1], water = [0, 1] }: Composition): FeedList => {
  const feed: Feed = {
    ...FEEDS.feeds[0]!,
    energyKcalPerMl: fraction(Math.round(kcalPerMl * 100), 100),
    proteinGPerMl: fraction(Math.round(proteinG[0] * 10), proteinG[1] * 10),
    waterFraction: fraction(...water),
  };
  return { version: 'exercise', feeds: [feed] };
};

const over = (from: string, until: Instant, entries: readonly AnyEntry[], feeds = FEEDS): Account => {
  const span: Span = { from: at(from), until };
  return accountOver(courseOf(...entries), span, { at: until, policy: POLICY, zone: LONDON, feeds });
};

/** So many hours at a rate from eight, out of containers that are large enough. */
function ran(rate: number, lasts: number, feeds: FeedList): Account {
  const until = after(at('08:00'), hours(lasts));
  return over('08:00', until, [said('08:00', bag.up('A', 5_000)), said('08:00', pump.start(rate))], feeds);
}

const kcal = ({ nutrition: { energyKcal } }: Account): number => energyKcal.value.n / energyKcal.value.d;
const protein = ({ nutrition: { proteinG } }: Account): number => proteinG.value.n / proteinG.value.d;
const feedWater = ({ nutrition }: Account): number => inMl(nutrition.freeWater.feed.value);

test('[ST2] [ST22] 70 mL/h for 22 h of 1.2 kcal/mL is 1540 mL, 1848 kcal and 1240 mL of water (dietetics handout, patient 1)', () => {
  const account = ran(70, 22, feedsWith({ kcalPerMl: 1.2, water: [805, 1000] }));
  assert.equal(inMl(account.received), 1540);
  assert.equal(kcal(account), 1848);
  assert.equal(Math.round(feedWater(account)), 1240);
});

test('[ST2] [ST22] 68 mL/h for 24 h of 1.05 kcal/mL, 9 g in 237 mL, is 1632 mL, 1714 kcal, 62 g (NDFS 356, question 1)', () => {
  const account = ran(68, 24, feedsWith({ kcalPerMl: 1.05, proteinG: [9, 237] }));
  assert.equal(inMl(account.received), 1632);
  assert.equal(Math.round(kcal(account)), 1714);
  assert.equal(Math.round(protein(account)), 62);
});

test('[ST2] [ST22] 120 mL/h for 24 h of 1.2 kcal/mL, 191 mL water in 237 mL, is 2880 mL, 3456 kcal, 2321 mL (NDFS 356, question 2)', () => {
  const account = ran(120, 24, feedsWith({ kcalPerMl: 1.2, proteinG: [13.2, 237], water: [191, 237] }));
  assert.equal(inMl(account.received), 2880);
  assert.equal(kcal(account), 3456);
  assert.equal(Math.round(feedWater(account)), 2321);
  // The sheet prints the water again for the protein; 13.2 g in 237 mL are 160.4 g, and never 2321.
  assert.equal(Math.round(protein(account) * 10) / 10, 160.4);
});

test('[ST2] [ST22] 85 mL/h for 24 h of 1.06 kcal/mL, 835 mL water a litre, is 2040 mL, 2162 kcal, 1703.4 mL (worksheet 1, question 4)', () => {
  const account = ran(85, 24, feedsWith({ kcalPerMl: 1.06, water: [835, 1000] }));
  assert.equal(inMl(account.received), 2040);
  assert.equal(Math.round(kcal(account)), 2162);
  assert.equal(feedWater(account), 1703.4);
});

test('[ST2] [ST22] 90 mL/h for 24 h of 1.2 kcal/mL is 2160 mL and about 2600 kcal, which is 2592 (case worksheet, 89 years)', () => {
  const account = ran(90, 24, feedsWith({ kcalPerMl: 1.2, proteinG: [55.5, 1000] }));
  assert.equal(inMl(account.received), 2160);
  assert.equal(kcal(account), 2592);
  assert.equal(Math.round(protein(account)), 120);
});

test('[ST6] [ST22] 3½ cans of 240 kcal and 10 g are 840 kcal and 35 g (NDFS 356, question 7)', () => {
  const feeds = feedsWith({ kcalPerMl: 1, proteinG: [10, 240] });
  const cans = ['08:00', '12:00', '16:00'].map((when) => said(when, give.feed(240, 15)));
  const account = over('08:00', at('21:00'), [...cans, said('20:00', give.feed(120, 15))], feeds);
  assert.equal(kcal(account), 840);
  assert.equal(protein(account), 35);
});

test('[ST4] 500 mL at 75 mL/h are in after 6 h 40 min, and not a ms before (Open RN, Nursing Skills, 5.16)', () => {
  const entries = [said('08:00', bag.up('A', 500)), said('08:00', pump.start(75))];
  const until = (when: Instant): Volume => over('08:00', when, entries).received;
  assert.equal(until(at('14:40')), ml(500));
  assert.equal(until((at('14:40') - 1) as Instant), volume(ml(500) - 7_500));
  assert.equal(until(at('18:00')), ml(500));
});

const measured = (route: 'oral' | 'intravenous', amount: number): Fact => ({
  kind: 'intake-measured/1',
  route,
  volume: ml(amount),
  energyKcal: null,
});

test('[ST20] from 08:00 to 16:00 he drank 660 mL and had two half litres: 1660 mL; what came later is not in it (300NAS209, question 3)', () => {
  const drank = [120, 180, 200, 100, 60].map((amount, hour) =>
    said(after(at('08:00'), hours(hour * 1.5)), measured('oral', amount)),
  );
  const entries = [
    ...drank,
    said('08:30', measured('intravenous', 500)),
    said('13:00', measured('intravenous', 500)),
    said('17:00', measured('oral', 150)),
    said('18:00', measured('oral', 200)),
  ];
  const span: Span = { from: at('08:00'), until: at('16:00') };
  const view = { at: at('20:00'), policy: POLICY, zone: LONDON, feeds: FEEDS };
  const { liquids } = accountOver(courseOf(...entries), span, view);
  assert.equal(inMl(liquids.totalIn.value), 1660);
});

test('[ST20] 2455 mL in and 2260 mL out is a balance of +195 mL (Davison, example 2.6)', () => {
  const entries = [
    said('08:00', measured('intravenous', 2_000)),
    said('09:00', give.water(455)),
    said('10:00', { kind: 'output-measured/1', what: 'urine', volume: ml(2_000) }),
    said('11:00', { kind: 'output-measured/1', what: 'drain', volume: ml(260) }),
  ];
  const { liquids } = over('08:00', at('12:00'), entries);
  assert.deepEqual(
    [liquids.totalIn, liquids.totalOut, liquids.balance].map((one) => inMl(one.value)),
    [2455, 2260, 195],
  );
});

// The packet prints the problem only: 300 mL at 04, 08, 12, 16, 20 and 24 o'clock, 100 mL water after each.
test('[ST20] a night shift from 23:00 to 07:00 has the feeds of midnight and four: 800 mL (practice packet, problem 4)', () => {
  const first = at('2026-11-25T00:00:00Z');
  const entries = Array.from({ length: 12 }, (_, index) => after(first, hours(index * 4))).flatMap((when) => [
    said(when, give.feed(300)),
    said(when, give.water(100)),
  ]);
  const night: Span = { from: at('23:00'), until: after(at('07:00'), LASTS) };
  const view = { at: after(first, hours(47)), policy: POLICY, zone: LONDON, feeds: FEEDS };
  assert.equal(inMl(accountOver(courseOf(...entries), night, view).liquids.totalIn.value), 800);
});

// From memory: discarded aspirate is output, returned aspirate is not counted. Figures of this project's own.
test('[ST21] 760 mL in, 500 mL of urine and 150 mL of aspirate thrown away: 650 mL out, +110 mL', () => {
  const entries = [
    said('08:00', give.feed(480)),
    said('08:30', give.water(120)),
    said('09:00', { kind: 'medicine-given/1', name: 'a medicine', volume: ml(60), lumen: null }),
    said('09:30', measured('intravenous', 100)),
    said('10:00', { kind: 'output-measured/1', what: 'urine', volume: ml(500) }),
    said('10:30', residual('measured', 350, 150)),
  ];
  const { liquids } = over('08:00', at('12:00'), entries);
  assert.deepEqual(
    [liquids.totalIn, liquids.totalOut, liquids.balance].map((one) => inMl(one.value)),
    [760, 650, 110],
  );
  assert.deepEqual(liquids.output, { urine: ml(500), 'residual-discarded': ml(150) });
});

test('[ST22] a feed that the list does not have is named, and the totals are of the rest', () => {
  const strange: Fact = {
    kind: 'feed-given/1',
    by: 'syringe',
    feed: 'kitchen',
    strength: ONE,
    volume: ml(100),
    lasted: null,
    heightCm: null,
    timedBarrel: null,
  };
  const account = over('08:00', at('12:00'), [said('08:00', give.feed(200)), said('09:00', strange)]);
  assert.deepEqual(account.nutrition.unknownFeeds, ['kitchen']);
  assert.equal(kcal(account), 200);
  assert.equal(inMl(account.received), 300);
});

test('[ST22] modules bring energy and protein without a volume of feed', () => {
  const module: Fact = {
    kind: 'module-given/1',
    name: 'protein',
    energyKcal: fraction(40),
    proteinG: fraction(10),
  };
  const account = over('08:00', at('12:00'), [said('08:00', give.feed(200)), said('09:00', module)]);
  assert.deepEqual([kcal(account), protein(account)], [240, 18]);
});
