import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import type { OrderDocument } from '@feedwright/core/order/document';
import { DOCUMENT, judged, ofRule, orderWith } from './example.ts';

type Feed = NonNullable<OrderDocument['feed']>;

const problems = (rule: string, feed: Partial<Feed>, more: Partial<OrderDocument> = {}) =>
  ofRule(rule, judged(orderWith({ feed: { id: 'standard', strength: 'full', ...feed }, ...more })));
const codes = (rule: string, feed: Partial<Feed>, more: Partial<OrderDocument> = {}) =>
  problems(rule, feed, more).map((one) => one.code);

test('[OR12] a feed that is not listed stops, with the listed one that it is nearest to', () => {
  const [problem] = problems('OR12', { id: 'standrad' });
  assert.equal(problem?.level, 'stop');
  assert.deepEqual(problem?.data, { feed: 'standrad', nearest: 'standard' });
  assert.deepEqual(codes('OR12', {}), []);
});

const allergic = (to: string, feed = 'standard', more: Partial<OrderDocument> = {}) => {
  const patient = { ...DOCUMENT.patient, allergies: [to] };
  const order = orderWith({ patient, feed: { id: feed, strength: 'full' }, ...more });
  return judged(order)
    .filter((one) => ['OR13', 'OR14', 'OR41'].includes(one.rule))
    .map((one) => `${one.rule} ${one.data.allergen ?? ''}`.trim());
};

test('[OR13] an allergen by a whole word stops, whatever its case, number and company', () => {
  assert.deepEqual(allergic('milk'), ['OR13 milk']);
  assert.deepEqual(allergic('Cow’s MILK protein'), ['OR13 milk']);
  assert.deepEqual(allergic('Eggs', 'dense'), ['OR13 egg']);
  assert.deepEqual(allergic('milk and soya'), ['OR13 milk', 'OR13 soya']);
});

test('[OR13] the same thing under another name stops: dairy and casein are milk, soy is soya', () => {
  assert.deepEqual(allergic('dairy'), ['OR13 milk']);
  assert.deepEqual(allergic('Casein'), ['OR13 milk']);
  assert.deepEqual(allergic('soy'), ['OR13 soya']);
});

test('[OR41] none known is an answer; nothing written is not', () => {
  for (const none of ['none known', 'NKDA', 'No known allergies']) assert.deepEqual(allergic(none), []);
  assert.deepEqual(allergic('none known to penicillin'), ['OR41']);
});

test('[OR14] a part of a word is asked about, and a silkworm’s silk is not milk', () => {
  assert.deepEqual(allergic('buttermilk'), ['OR14 milk']);
  assert.deepEqual(allergic('silk'), ['OR41']);
});

test('[OR14] where the recipe varies, what it may contain is asked about, not stopped', () => {
  assert.deepEqual(allergic('wheat', 'kitchen'), ['OR14 wheat']);
});

test('[OR14] names of additives, modules and medicines are asked about', () => {
  const feed = { id: 'human-milk', strength: 'full', additives: [{ name: 'peach fibre' }] };
  assert.deepEqual(allergic('peach', 'human-milk', { feed }), ['OR14 peach fibre']);
  const medicines = [{ name: 'penicillin 250 mg', times: ['08:00'], volumeMl: 5 }];
  assert.deepEqual(allergic('penicillin', 'standard', { medicines }), ['OR14 penicillin 250 mg']);
});

test('[OR41] what matches nothing is shown beside the contents, and no allergies written is not none', () => {
  const [beside] = problems('OR41', {}, { patient: { ...DOCUMENT.patient, allergies: ['pollen', 'milk'] } });
  assert.deepEqual(beside?.data, { allergies: ['pollen'], allergens: ['milk', 'soya'] });
  const [none] = problems('OR41', {}, { patient: { ...DOCUMENT.patient, allergies: [] } });
  assert.deepEqual(none?.data, { allergies: [], allergens: ['milk', 'soya'] });
  assert.deepEqual(codes('OR41', {}, { patient: { ...DOCUMENT.patient, allergies: ['milk'] } }), []);
});

test('[OR15] a density in another unit or with a lost mark stops: 1000 and 10 times, both ways', () => {
  const factor = (stated: number | string, id = 'standard') =>
    problems('OR15', { id, statedKcalPerMl: stated })[0]?.data.factor;
  assert.equal(factor('1/1000'), '1/1000', 'kcal/mL written in kcal/L: calories 1000 times too small');
  assert.equal(factor(1_000), '1000');
  assert.equal(factor(0.0015, 'dense'), '1/1000');
  assert.equal(factor(10), '10');
  assert.equal(factor(0.1), '1/10');
  assert.equal(factor(150, 'dense'), '100');
  assert.equal(factor(4.999), undefined);
  assert.equal(factor(5), '10');
  assert.equal(factor(0.2), '1/10');
  assert.equal(factor(0.201), undefined);
});

test('[OR15] no two listed feeds of the default list are so far apart that one could be taken for a slip of the other', () => {
  const densities = DEFAULT_FEEDS.feeds
    .filter((feed) => feed.system !== 'water' && feed.feedClass !== 'modular-protein')
    .map((feed) => feed.energyKcalPerMl.n / feed.energyKcalPerMl.d);
  assert.ok(Math.max(...densities) / Math.min(...densities) < 5);
});

test('[OR16] any other difference in density is asked about', () => {
  assert.deepEqual(codes('OR16', { statedKcalPerMl: 1.5 }), ['order/density-differs']);
  assert.deepEqual(codes('OR16', { statedKcalPerMl: '1.0' }), []);
  assert.deepEqual(codes('OR16', { id: 'water', statedKcalPerMl: 1 }), ['order/density-differs']);
  assert.deepEqual(problems('OR16', { statedKcalPerMl: 1.2 })[0]?.data, {
    value: fraction(6, 5),
    listed: fraction(1),
    unit: 'kcal/mL',
    feed: 'standard',
    confirm: 'OR16',
  });
});

test('[OR17] a strength is more than nothing and not more than full', () => {
  assert.deepEqual(codes('OR17', { strength: 'full' }), []);
  assert.deepEqual(codes('OR17', { strength: '1/10' }), []);
  assert.deepEqual(codes('OR17', { strength: '101/100' }), ['order/strength-impossible']);
  assert.deepEqual(codes('OR17', { strength: 75 }), ['order/strength-impossible']);
  const order = orderWith();
  const none = { ...order, feed: { ...order.feed!, strength: fraction(0) } };
  assert.equal(ofRule('OR17', judged(none)).length, 1);
});

test('[OR18, OR19] nothing can be mixed into a closed container; the same feed from cartons can be, and is asked about', () => {
  const both = (feed: Partial<Feed>) => [...codes('OR18', feed), ...codes('OR19', feed)];
  assert.deepEqual(both({ id: 'closed' }), []);
  assert.deepEqual(both({ id: 'closed', strength: '3/4' }), ['order/closed-mixed']);
  assert.deepEqual(both({ id: 'closed', additives: [{ name: 'fibre' }] }), ['order/closed-mixed']);
  assert.deepEqual(both({ id: 'either', strength: '3/4' }), ['order/closed-poured']);
  assert.deepEqual(both({ id: 'standard', strength: '3/4' }), []);
  assert.deepEqual(
    problems('OR18', { id: 'closed', strength: '3/4', additives: [{ name: 'fibre' }] })[0]?.data.mixed,
    ['water', 'fibre'],
  );
});

test('[OR20] human milk is matched with a number', () => {
  const named = { ...DOCUMENT.patient, identifiers: [] };
  assert.deepEqual(codes('OR20', { id: 'human-milk' }, { patient: named }), ['order/human-milk-no-number']);
  assert.deepEqual(codes('OR20', { id: 'human-milk' }), []);
  assert.deepEqual(codes('OR20', {}, { patient: named }), []);
});

test('[OR42] a diluted feed is said', () => {
  assert.deepEqual(codes('OR42', { strength: '1/2' }), ['order/diluted']);
  assert.deepEqual(codes('OR42', {}), []);
});

test('[OR43] a feed from powder is said', () => {
  assert.deepEqual(codes('OR43', { id: 'powder' }), ['order/powder']);
  assert.deepEqual(codes('OR43', {}), []);
});
