/** A ward is its courses, each by itself. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { ml, NOTHING } from '@feedwright/core/base/volume';
import { EMPTY_WARD, wardOf, wardStandings, wardWith } from '@feedwright/core/standing/ward';
import { at, bag, FEEDS, give, LONDON, POLICY, pump, said } from './bedside.ts';
import { orderWith } from './day-order.ts';

const VIEW = { at: at('10:00'), policy: POLICY, feeds: FEEDS, zone: LONDON };

const ENTRIES = [
  said('08:00', bag.up('a', 500), { course: 'ada' }),
  said('08:00', pump.start(100), { course: 'ada' }),
  said('09:00', give.feed(250), { course: 'ben' }),
  said('09:30', give.water(30), { course: 'ben' }),
];

test('[ST61] entries of many courses, in any order, come to the standing of each', () => {
  const together = wardStandings(wardOf(ENTRIES), VIEW);
  assert.deepEqual(
    [...together].map(([name, one]) => [name, one.receivedToday, one.waterToday]),
    [
      ['ada', ml(200), NOTHING],
      ['ben', ml(250), ml(30)],
    ],
  );
  const oneByOne = ENTRIES.toReversed().reduce(wardWith, EMPTY_WARD);
  for (const [name, one] of wardStandings(oneByOne, VIEW)) assert.deepEqual(one, together.get(name));
  assert.equal(wardWith(oneByOne, ENTRIES[0]!), oneByOne);
});

test('[ST14] each course has the feeding day of its own order', () => {
  const order = orderWith({ zone: 'America/New_York' });
  const far = said('05:00', { kind: 'order-placed/1', placed: order }, { course: 'far' });
  const standings = wardStandings(wardOf([...ENTRIES, far]), VIEW);
  const begins = (name: string): string => new Date(standings.get(name)?.today?.span.from ?? 0).toISOString();
  assert.equal(begins('far'), '2026-11-24T11:00:00.000Z');
  assert.equal(begins('ada'), '2026-11-25T06:00:00.000Z');
});
