import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { approximately, compare, type Fraction, fraction, times } from '@feedwright/core/base/fraction';
import { ml } from '@feedwright/core/base/volume';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { type Feed, feedById } from '@feedwright/core/feeds/feed';
import { judgeFeeds } from '@feedwright/core/feeds/judge';
import { SOURCES } from '@feedwright/core/policy/sources';

const feed = (id: string): Feed => {
  const found = feedById(DEFAULT_FEEDS, id);
  assert.ok(found !== null, id);
  return found;
};

type Range = readonly [least: number, most: number];
type Published = readonly [
  id: string,
  kcalPerMl: number,
  proteinGPerL: Range,
  waterMlPerL: Range,
  osmolality: Range | null,
  source: string,
];

/**
 * The published range of each class. Read in a textbook (S31) and an intensive care teaching table (S95) where those
 * stand; the other ranges are from memory of what labels of the class say.
 */
const CLASSES: readonly Published[] = [
  ['standard-1.0', 1, [35, 45], [830, 850], [270, 350], 'S31, S95'],
  ['high-protein-1.2', 1.2, [55, 65], [810, 840], [340, 450], 'common-practice'],
  ['energy-1.5', 1.5, [60, 68], [760, 780], [475, 650], 'S95'],
  ['energy-low-carbohydrate-1.5', 1.5, [63, 63], [790, 790], [475, 475], 'S95'],
  ['two-calorie-2.0', 2, [75, 90], [690, 720], [690, 790], 'S31'],
  ['renal-2.0', 2, [70, 91], [700, 730], [600, 960], 'S95'],
  ['renal-low-protein-1.8', 1.8, [30, 47], [700, 740], [600, 700], 'common-practice'],
  ['peptide-1.0', 1, [40, 68], [770, 850], null, 'common-practice'],
  ['peptide-1.5', 1.5, [40, 68], [770, 850], null, 'common-practice'],
  ['paediatric-1.0', 1, [28, 30], [840, 850], [300, 390], 'common-practice'],
  ['infant-0.67', 0.67, [13, 15], [900, 900], [270, 300], 'common-practice'],
];

const inRange = (value: Fraction, [least, most]: Range): boolean =>
  compare(value, fraction(least)) >= 0 && compare(value, fraction(most)) <= 0;

test('[FE1] each class has its energy, and figures within what is published for it', () => {
  for (const [id, kcal, protein, water, osmolality, source] of CLASSES) {
    const one = feed(id);
    assert.deepEqual(one.energyKcalPerMl, fraction(Math.round(kcal * 100), 100), id);
    assert.ok(inRange(times(one.proteinGPerMl, fraction(1000)), protein), `${id} protein`);
    assert.ok(inRange(times(one.waterFraction, fraction(1000)), water), `${id} water`);
    if (osmolality === null) assert.equal(one.osmolalityMosmPerKg, null, id);
    else assert.ok(inRange(fraction(one.osmolalityMosmPerKg ?? 0), osmolality), `${id} osmolality`);
    assert.equal(one.source, source, id);
  }
});

test('[FE1] what was read in its source stands as read there', () => {
  // Textbook (S31): 850 mL of water a litre at 1 kcal/mL, 710 at 2. Teaching table (S95): 64 g and 76 % at 1.5,
  // 70 g, 70 % and 665 mOsm/kg at 2.0 for dialysis.
  assert.deepEqual(feed('standard-1.0').waterFraction, fraction(850, 1000));
  assert.deepEqual(feed('two-calorie-2.0').waterFraction, fraction(710, 1000));
  assert.deepEqual(feed('energy-1.5').proteinGPerMl, fraction(64, 1000));
  assert.deepEqual(feed('energy-1.5').waterFraction, fraction(76, 100));
  assert.deepEqual(feed('renal-2.0').proteinGPerMl, fraction(70, 1000));
  assert.equal(feed('renal-2.0').osmolalityMosmPerKg, 665);
});

test('[FE1] 1500 mL at 76 % hold 1140 mL of water; 1200 mL at 1.5 kcal/mL bring 1800 kcal and 76.8 g', () => {
  const energy = feed('energy-1.5');
  assert.deepEqual(times(fraction(1500), energy.waterFraction), fraction(1140));
  assert.deepEqual(times(fraction(1200), energy.energyKcalPerMl), fraction(1800));
  assert.deepEqual(times(fraction(1200), energy.proteinGPerMl), fraction(768, 10));
});

test('[FE1] nothing in the default list is impossible, and every way that feed comes is in it', () => {
  assert.deepEqual(judgeFeeds(DEFAULT_FEEDS), []);
  assert.deepEqual([...new Set(DEFAULT_FEEDS.feeds.map((one) => one.system))].toSorted(), [
    'blenderised',
    'closed',
    'concentrate',
    'human-milk',
    'open-liquid',
    'powder',
    'water',
  ]);
});

test('[FE1] the same class comes as cartons that are poured and as containers that are spiked', () => {
  const sizes = (id: string) => feed(id).packs.map((pack) => [pack.kind, pack.volume]);
  assert.deepEqual(sizes('standard-1.0'), [
    ['carton', ml(200)],
    ['carton', ml(250)],
    ['carton', ml(500)],
  ]);
  assert.deepEqual(sizes('standard-1.0-closed'), [
    ['container', ml(500)],
    ['container', ml(1000)],
    ['container', ml(1500)],
  ]);
  for (const closed of DEFAULT_FEEDS.feeds.filter((one) => one.system === 'closed')) {
    const open = feed(closed.id.replace(/-closed$/, ''));
    assert.equal(open.system, 'open-liquid');
    assert.deepEqual(
      [closed.energyKcalPerMl, closed.proteinGPerMl, closed.waterFraction, closed.allergens],
      [open.energyKcalPerMl, open.proteinGPerMl, open.waterFraction, open.allergens],
    );
  }
});

test('[FE11] human milk and blenderised food have no composition of their own, and say so', () => {
  const varying = DEFAULT_FEEDS.feeds.filter((one) => one.compositionVaries === true).map((one) => one.id);
  assert.deepEqual(varying, ['human-milk', 'blenderised']);
});

test('[FE1] water brings neither energy nor protein and is all water', () => {
  const water = feed('water');
  assert.equal(approximately(water.energyKcalPerMl), 0);
  assert.equal(approximately(water.proteinGPerMl), 0);
  assert.equal(approximately(water.waterFraction), 1);
});

test('[FE1] every source that the feed list names is in docs/sources.md', () => {
  const text = readFileSync(new URL('../../../docs/sources.md', import.meta.url), 'utf8');
  for (const id of DEFAULT_FEEDS.feeds.flatMap((one) => one.source.split(', '))) {
    assert.ok(Object.hasOwn(SOURCES, id), id);
    assert.ok(text.includes(`| ${id} |`) || text.includes(`- \`${id}\`:`), id);
  }
});
