import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour } from '@feedwright/core/base/volume';
import type { OrderDocument } from '@feedwright/core/order/document';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import type { Policy } from '@feedwright/core/policy/policy';
import { DOCUMENT, judged, moment, ofRule, orderWith, policyOf, SILENT } from './example.ts';

type Regimen = NonNullable<OrderDocument['regimen']>;
const JEJUNAL: NonNullable<OrderDocument['access']> = {
  device: 'nasojejunal',
  lumens: [{ name: 'port', tip: 'jejunal', uses: ['feed', 'medicine'] }],
  feedBy: 'port',
  medicineBy: 'port',
};

const found = (rule: string, regimen: Regimen, policy: Policy, more: Partial<OrderDocument> = {}) =>
  ofRule(rule, judged(orderWith({ regimen, ...more }), { policy }));
const keys = (...args: Parameters<typeof found>) => found(...args).map((one) => one.data.key);

const RATES = policyOf({
  'ceiling.rate.gastric': mlPerHour(150),
  'ceiling.rate.jejunal': mlPerHour(125),
  'ceiling.rate.cyclic': mlPerHour(140),
});
const continuous = (rateMlPerHour: number): Regimen => ({ kind: 'continuous', rateMlPerHour });

test('[OR31] a rate over the ceiling of the tip is asked about, one at it is not', () => {
  assert.deepEqual(keys('OR31', continuous(150), RATES), []);
  assert.deepEqual(keys('OR31', continuous(150.01), RATES), ['ceiling.rate.gastric']);
  assert.deepEqual(keys('OR31', continuous(125), RATES, { access: JEJUNAL }), []);
  assert.deepEqual(keys('OR31', continuous(125.01), RATES, { access: JEJUNAL }), ['ceiling.rate.jejunal']);
  const [asked] = found('OR31', continuous(175), RATES);
  assert.equal(asked?.level, 'ask');
  assert.deepEqual(asked?.path, ['regimen', 'rateMlPerHour']);
  assert.deepEqual(
    [asked?.data.value, asked?.data.limit, asked?.data.unit, asked?.data.confirm],
    [fraction(175), fraction(150), 'mL/h', 'OR31'],
  );
  assert.equal((asked!.data.basis as { setBy: string }).setBy, 'A. Tester');
});

test('[OR31] a cyclic feed has a ceiling of its own besides, by rate or by volume over its window', () => {
  const cyclic = (amount: object): Regimen =>
    ({ kind: 'cyclic', from: '20:00', until: '06:00', ...amount }) as Regimen;
  assert.deepEqual(keys('OR31', cyclic({ rateMlPerHour: 140 }), RATES), []);
  assert.deepEqual(keys('OR31', cyclic({ rateMlPerHour: 141 }), RATES), ['ceiling.rate.cyclic']);
  assert.deepEqual(keys('OR31', cyclic({ rateMlPerHour: 151 }), RATES), [
    'ceiling.rate.gastric',
    'ceiling.rate.cyclic',
  ]);
  assert.deepEqual(keys('OR31', cyclic({ volumeMl: 1_400 }), RATES), []);
  assert.deepEqual(keys('OR31', cyclic({ volumeMl: 1_401 }), RATES), ['ceiling.rate.cyclic']);
});

test('[OR31] the base rate, the most, and the goal of the steps are all held to it', () => {
  const targeted: Regimen = {
    kind: 'volume-targeted',
    volumeMlPerDay: 1_200,
    baseRateMlPerHour: 50,
    mostRateMlPerHour: 151,
  };
  assert.deepEqual(
    found('OR31', targeted, RATES).map((one) => one.data.what),
    ['most'],
  );
  const advance = { startMlPerHour: 100, stepMlPerHour: 20, everyHours: 6, goalMlPerHour: 180 };
  const [goal] = found('OR31', { kind: 'continuous', rateMlPerHour: 100, advance }, RATES);
  assert.equal(goal?.data.what, 'goal');
  // 100, 120, 140, then 160: the third step passes 150, and it may be taken after 18 h.
  assert.equal(goal?.data.passesAt, moment('2026-11-26T02:00:00Z'));
});

test('[OR31] a strength counts: a rate of formula is more of mixture', () => {
  const feed = { id: 'standard', strength: '1/2' };
  const ofFormula = (rateMlPerHour: number): Regimen => ({
    kind: 'continuous',
    rateMlPerHour,
    of: 'formula',
  });
  assert.deepEqual(keys('OR31', ofFormula(75), RATES, { feed }), []);
  assert.deepEqual(keys('OR31', ofFormula(75.01), RATES, { feed }), ['ceiling.rate.gastric']);
});

test('[OR31] a feed in portions by pump is held to the rate only beyond the stomach', () => {
  const portion: Regimen = { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'pump' };
  assert.deepEqual(keys('OR31', portion, RATES), []);
  assert.deepEqual(keys('OR31', portion, RATES, { access: JEJUNAL }), ['ceiling.rate.jejunal']);
});

test('[OR32] per kg of dosing weight', () => {
  const policy = policyOf({ 'ceiling.rate.per-kg': fraction(6) });
  const infant = (kg: number) => ({
    patient: { ...DOCUMENT.patient, dosingWeight: { kg, on: '2026-11-20' } },
  });
  assert.deepEqual(keys('OR32', continuous(25.8), policy, infant(4.3)), []);
  assert.deepEqual(keys('OR32', continuous(25.81), policy, infant(4.3)), ['ceiling.rate.per-kg']);
  const [asked] = found('OR32', continuous(30), policy, infant(4.3));
  assert.deepEqual(
    [asked?.data.limit, asked?.data.perKg, asked?.data.weightKg],
    [fraction(129, 5), fraction(6), fraction(43, 10)],
  );
});

test('[OR55] a ceiling per kg without a weight cannot be checked, and neither can age bands without a birth date', () => {
  const patient = { ...DOCUMENT.patient, dosingWeight: null };
  const [note] = found('OR55', continuous(75), policyOf({ 'ceiling.rate.per-kg': fraction(6) }), { patient });
  assert.deepEqual([note?.data.lacks, note?.data.key], ['dosing-weight', 'ceiling.rate.per-kg']);
  assert.deepEqual(found('OR55', continuous(75), RATES, { patient }), []);
  const unborn = { ...DOCUMENT.patient, birthDate: null };
  assert.deepEqual(found('OR55', continuous(75), RATES, { patient: unborn })[0]?.data.lacks, 'age');
});

const FEEDS = policyOf({ 'ceiling.bolus': ml(480), 'ceiling.bolus.ask': ml(400) });
const bolus = (volumeMl: number, lasts = 20): Regimen => ({
  kind: 'bolus',
  volumeMl,
  times: ['08:00'],
  minutes: lasts,
});
const bySyringe = { method: 'syringe' } as const;

/** S31 (read): 240–480 mL a feed. S108 (from memory): 200–400 mL. */
test('[OR33, OR34] a bolus over the usual is asked about, one over the most by another rule, never by both', () => {
  const rules = (volumeMl: number) =>
    judged(orderWith({ regimen: bolus(volumeMl), ...bySyringe }), { policy: FEEDS })
      .filter((one) => ['OR33', 'OR34'].includes(one.rule))
      .map((one) => `${one.level} ${one.rule} ${one.data.key}`);
  assert.deepEqual(rules(400), []);
  assert.deepEqual(rules(400.01), ['ask OR34 ceiling.bolus.ask']);
  assert.deepEqual(rules(480), ['ask OR34 ceiling.bolus.ask']);
  assert.deepEqual(rules(480.01), ['ask OR33 ceiling.bolus']);
});

test('[OR33] an intermittent feed and the goal of the steps are held to it as well', () => {
  const portion: Regimen = { kind: 'intermittent', volumeMl: 481, times: ['08:00'], minutes: 60, by: 'pump' };
  assert.deepEqual(keys('OR33', portion, FEEDS), ['ceiling.bolus']);
  const advance = { startMl: 120, stepMl: 120, everyHours: 8, goalMl: 500 };
  const [goal] = found('OR33', { ...bolus(120), advance } as Regimen, FEEDS, bySyringe);
  assert.equal(goal?.data.what, 'goal');
  // 120, 240, 360, 480, then 500: the fourth step, after 32 h.
  assert.equal(goal?.data.passesAt, moment('2026-11-26T16:00:00Z'));
});

test('[OR35] a bolus per kg', () => {
  const policy = policyOf({ 'ceiling.bolus.per-kg': fraction(20) });
  const infant = {
    ...bySyringe,
    patient: { ...DOCUMENT.patient, dosingWeight: { kg: 4.3, on: '2026-11-20' } },
  };
  assert.deepEqual(keys('OR35', bolus(86), policy, infant), []);
  assert.deepEqual(keys('OR35', bolus(86.01), policy, infant), ['ceiling.bolus.per-kg']);
});

/** S33 (read): 250–300 mL over 15 min. */
test('[OR36] a feed in less than the least duration is asked about, to the millisecond', () => {
  const policy = policyOf({ 'bolus.least-duration': minutes(15) });
  const fast = (lasts: number | string) =>
    keys('OR36', { ...bolus(250), minutes: lasts } as Regimen, policy, bySyringe);
  assert.deepEqual(fast(15), []);
  assert.deepEqual(fast('899999/60000'), ['bolus.least-duration']);
  assert.deepEqual(keys('OR36', { ...bolus(250), minutes: null } as Regimen, policy, bySyringe), []);
  const portion: Regimen = { kind: 'intermittent', volumeMl: 250, times: ['08:00'], minutes: 14, by: 'pump' };
  assert.deepEqual(keys('OR36', portion, policy), ['bolus.least-duration']);
});

test('[OR40] where nothing limits a rate or a feed, each key that could have is named, and none where one does', () => {
  const silent = (regimen: Regimen, policy: Policy, more: Partial<OrderDocument> = {}) =>
    found('OR40', regimen, policy, more)
      .filter((one) => /ceiling|least/.test(String(one.data.key)))
      .map((one) => `${one.data.key} ${one.data.why}`);
  assert.deepEqual(silent(continuous(75), SILENT), [
    'ceiling.rate.gastric no-row',
    'ceiling.rate.per-kg no-row',
  ]);
  assert.deepEqual(silent(continuous(75), policyOf({ 'ceiling.rate.gastric': null })), [
    'ceiling.rate.gastric not-set',
    'ceiling.rate.per-kg no-row',
  ]);
  assert.deepEqual(silent(continuous(75), RATES), []);
  assert.deepEqual(silent(continuous(75), policyOf({ 'ceiling.rate.per-kg': fraction(4) })), []);
  assert.deepEqual(silent(bolus(200), SILENT, bySyringe), [
    'ceiling.bolus no-row',
    'ceiling.bolus.ask no-row',
    'ceiling.bolus.per-kg no-row',
    'bolus.least-duration no-row',
  ]);
});

test('[OR31, OR33, OR34, OR36] the default policy for adults asks where its sources draw the line', () => {
  const rules = (regimen: Regimen, more: Partial<OrderDocument> = {}) =>
    judged(orderWith({ regimen, ...more }), { policy: DEFAULT_POLICY })
      .filter((one) => one.level === 'ask')
      .map((one) => one.rule);
  // S37: 150 mL/h. S31: 480 mL. S33: 15 min.
  assert.deepEqual(rules(continuous(150)), []);
  assert.deepEqual(rules(continuous(151)), ['OR31']);
  assert.deepEqual(rules(bolus(480, 15), bySyringe), ['OR34']);
  assert.deepEqual(rules(bolus(481, 15), bySyringe), ['OR33']);
  assert.deepEqual(rules(bolus(240, 14), bySyringe), ['OR36']);
  assert.deepEqual(rules(bolus(240, 15), bySyringe), []);
});

test('[OR40] the default policy has no ceilings for a child: they are named, not borrowed from adults', () => {
  const child = {
    patient: { ...DOCUMENT.patient, birthDate: '2024-05-01', dosingWeight: { kg: 12, on: '2026-11-20' } },
  };
  const problems = judged(orderWith({ regimen: continuous(150), ...child }), { policy: DEFAULT_POLICY });
  assert.deepEqual(ofRule('OR31', problems), []);
  const named = ofRule('OR40', problems).map((one) => one.data.key);
  assert.ok(named.includes('ceiling.rate.gastric') && named.includes('ceiling.rate.per-kg'), String(named));
});
