import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, hours } from '@feedwright/core/base/instant';
import { ml } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { type Feed, feedById } from '@feedwright/core/feeds/feed';
import { judgeFeeds } from '@feedwright/core/feeds/judge';

const STANDARD = feedById(DEFAULT_FEEDS, 'standard-1.0')!;
const CLOSED = feedById(DEFAULT_FEEDS, 'standard-1.0-closed')!;
const WATER = feedById(DEFAULT_FEEDS, 'water')!;

/** What is refused of one feed, as `rule field`. */
const refused = (changed: Partial<Feed>, feed: Feed = STANDARD): readonly string[] =>
  judgeFeeds({ version: '1', feeds: [{ ...feed, ...changed }] }).map(
    (one) => `${one.data.rule} ${one.path.slice(2).join('.')}`,
  );

const NO_PROTEIN = { proteinGPerMl: fraction(0) };

test('[FE3] energy at, under and over 0.1 and 3 kcal/mL', () => {
  const energy = (n: number, d: number) => refused({ ...NO_PROTEIN, energyKcalPerMl: fraction(n, d) });
  assert.deepEqual(energy(1, 10), []);
  assert.deepEqual(energy(3, 1), []);
  assert.deepEqual(energy(99, 1000), ['FE3 energyKcalPerMl']);
  assert.deepEqual(energy(3001, 1000), ['FE3 energyKcalPerMl']);
});

test('[FE3] a density off by a factor of 1000, either way, is refused and the feed is named', () => {
  for (const wrong of [fraction(1500), fraction(15, 10_000)]) {
    const issues = judgeFeeds({
      version: '1',
      feeds: [WATER, { ...STANDARD, ...NO_PROTEIN, energyKcalPerMl: wrong }],
    });
    assert.deepEqual(
      issues.map((one) => [one.code, one.path, one.data.feed]),
      [['feeds/energy', ['feeds', 1, 'energyKcalPerMl'], 'standard-1.0']],
    );
  }
});

test('[FE3] water has no energy, not even a little', () => {
  assert.deepEqual(refused({}, WATER), []);
  assert.deepEqual(refused({ energyKcalPerMl: fraction(1, 100) }, WATER), ['FE3 energyKcalPerMl']);
});

test('[FE4] water at, under and over all of it', () => {
  assert.deepEqual(refused({ waterFraction: fraction(1) }), []);
  assert.deepEqual(refused({ waterFraction: fraction(1, 100) }), []);
  assert.deepEqual(refused({ waterFraction: fraction(1001, 1000) }), ['FE4 waterMlPer100Ml']);
  assert.deepEqual(refused({ waterFraction: fraction(85) }), ['FE4 waterMlPer100Ml']);
  assert.deepEqual(refused({ waterFraction: fraction(0) }), ['FE4 waterMlPer100Ml']);
});

test('[FE5] protein at 4 kcal/g at, under and over the whole energy', () => {
  // 1 kcal/mL is 25 g of protein in 100 mL and nothing else.
  assert.deepEqual(refused({ proteinGPerMl: fraction(25, 100) }), []);
  assert.deepEqual(refused({ proteinGPerMl: fraction(2501, 10_000) }), ['FE5 proteinGPer100Ml']);
  assert.deepEqual(refused({ proteinGPerMl: fraction(0) }), []);
  assert.deepEqual(refused({ proteinGPerMl: fraction(-1, 100) }), ['FE5 proteinGPer100Ml']);
  // 40 g a litre typed as 40 g in 100 mL.
  assert.deepEqual(refused({ proteinGPerMl: fraction(40, 100) }), ['FE5 proteinGPer100Ml']);
});

test('[FE6] a pack holds more than nothing and at most 5 L', () => {
  const pack = (volume: number) => refused({ packs: [{ kind: 'carton', volume: ml(volume) }] });
  assert.deepEqual(pack(1), []);
  assert.deepEqual(pack(5000), []);
  assert.deepEqual(pack(0), ['FE6 packs']);
  assert.deepEqual(pack(-200), ['FE6 packs']);
  assert.deepEqual(pack(5001), ['FE6 packs']);
});

test('[FE6] a closed feed comes in containers, and in some; a poured one in cartons or in none', () => {
  const container = { kind: 'container', volume: ml(1000) } as const;
  const carton = { kind: 'carton', volume: ml(200) } as const;
  assert.deepEqual(refused({ packs: [container] }, CLOSED), []);
  assert.deepEqual(refused({ packs: [container, carton] }, CLOSED), ['FE6 packs']);
  assert.deepEqual(refused({ packs: [] }, CLOSED), ['FE6 packs']);
  assert.deepEqual(refused({ packs: [] }), []);
  assert.deepEqual(refused({ packs: [container] }), ['FE6 packs']);
});

test('[FE7] one id is one feed, whatever its capitals', () => {
  const twice = (id: string, first = STANDARD.id) =>
    judgeFeeds({
      version: '1',
      feeds: [
        { ...STANDARD, id: first },
        { ...STANDARD, id },
      ],
    }).map((one) => [one.data.rule, one.path[1]]);
  assert.deepEqual(twice('standard-1.0'), [['FE7', 1]]);
  assert.deepEqual(twice('Standard-1.0'), [['FE7', 1]]);
  assert.deepEqual(twice('standard-1.0', 'Standard-1.0'), [['FE7', 1]]);
  assert.deepEqual(twice('standard-1.00'), []);
});

test('[FE8] a label’s limit is over nothing and at most 48 h', () => {
  assert.deepEqual(refused({ labelHangLimit: hours(48) }), []);
  assert.deepEqual(refused({ labelHangLimit: 1 }), []);
  assert.deepEqual(refused({ labelHangLimit: 48 * HOUR + 1 }), ['FE8 labelHangLimitHours']);
  assert.deepEqual(refused({ labelHangLimit: 0 }), ['FE8 labelHangLimitHours']);
});
