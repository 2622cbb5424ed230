import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { ml } from '@feedwright/core/base/volume';
import type { OrderDocument } from '@feedwright/core/order/document';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import type { Policy } from '@feedwright/core/policy/policy';
import { DOCUMENT, judged, ofRule, orderWith, policyOf, SILENT } from './example.ts';

const found = (rule: string, changes: Partial<OrderDocument>, policy: Policy = SILENT) =>
  ofRule(rule, judged(orderWith(changes), { policy }));

/** 1800 mL of feed and 6 × 30 mL of water: 1980 mL. */
test('[OR37] feed and water over the fluid limit are asked about, at the limit they are not', () => {
  assert.deepEqual(found('OR37', { fluidLimitMlPerDay: 1_980 }), []);
  const [asked] = found('OR37', { fluidLimitMlPerDay: 1_979.99 });
  assert.equal(asked?.level, 'ask');
  assert.deepEqual(asked?.data, {
    what: 'ordered',
    value: fraction(1_980),
    limit: fraction(197_999, 100),
    unit: 'mL',
    parts: {
      mixture: fraction(1_800),
      flushes: fraction(180),
      medicines: fraction(0),
      medicineWater: fraction(0),
      moduleWater: fraction(0),
      intravenous: fraction(0),
    },
    unset: [],
    confirm: 'OR37',
  });
});

test('[OR37] medicines with their water, modules and intravenous fluid count, as whole liquid volumes', () => {
  const changes: Partial<OrderDocument> = {
    feed: { id: 'standard', strength: '1/2' },
    medicines: [{ name: 'a', times: ['08:00', '20:00'], volumeMl: 10, waterBeforeMl: 15, waterAfterMl: 15 }],
    modules: [{ name: 'b', times: ['10:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }],
    intravenousMlPerDay: 500,
  };
  // 1800 + 180 + 2 × (10 + 30) + 60 + 500, whatever the strength.
  assert.deepEqual(found('OR37', { ...changes, fluidLimitMlPerDay: 2_620 }), []);
  assert.deepEqual(found('OR37', { ...changes, fluidLimitMlPerDay: 2_619 })[0]?.data.value, fraction(2_620));
});

test('[OR37] an order within the limit as written is asked about if the goal of its steps is not', () => {
  const advance = { startMlPerHour: 25, stepMlPerHour: 25, everyHours: 8, goalMlPerHour: 75 };
  const regimen = { kind: 'continuous', rateMlPerHour: 25, advance } as const;
  assert.deepEqual(found('OR37', { regimen, fluidLimitMlPerDay: 1_980 }), []);
  assert.equal(found('OR37', { regimen, fluidLimitMlPerDay: 1_979 })[0]?.data.what, 'goal');
});

test('[OR40] water around medicines that neither order nor policy says is named, for the totals lack it', () => {
  const medicines = [{ name: 'a', times: ['08:00'], volumeMl: 10 }];
  const named = (policy: Policy, more: object = {}) =>
    found('OR40', { medicines: [{ ...medicines[0]!, ...more }] }, policy)
      .map((one) => one.data.key)
      .filter((key) => String(key).startsWith('flush'));
  assert.deepEqual(named(SILENT), ['flush.medicine.before', 'flush.medicine.after']);
  assert.deepEqual(named(SILENT, { waterBeforeMl: 15, waterAfterMl: 15 }), []);
  assert.deepEqual(named(policyOf({ 'flush.medicine.before': ml(15), 'flush.medicine.after': ml(15) })), []);
});

const START = policyOf({
  'refeeding.start.kcal-per-kg': fraction(10),
  'refeeding.start.extreme.kcal-per-kg': fraction(5),
});
const caution = (changes: Partial<OrderDocument>): Partial<OrderDocument> => ({
  refeedingCaution: true,
  ...changes,
});
const atRate = (rateMlPerHour: number): Partial<OrderDocument> => ({
  regimen: { kind: 'continuous', rateMlPerHour },
});

/** S7 (read): NICE starts at no more than 10 kcal/kg/d, 5 in extreme risk. 60 kg: 600 kcal, 25 mL/h of 1 kcal/mL. */
test('[OR38] under refeeding caution the energy of the first day is held to the start per kg', () => {
  const patient = { ...DOCUMENT.patient, dosingWeight: { kg: 60, on: '2026-11-20' } };
  const over = (changes: Partial<OrderDocument>) => found('OR38', caution({ patient, ...changes }), START);
  assert.deepEqual(over(atRate(25)), []);
  const [asked] = over(atRate(25.01));
  assert.deepEqual(
    [asked?.data.value, asked?.data.limit, asked?.data.perKg, asked?.data.extremePerKg],
    [fraction(60_024, 100), fraction(600), fraction(10), fraction(5)],
  );
  assert.deepEqual(found('OR38', { patient, ...atRate(75) }, START), [], 'without caution nothing is asked');
  const defaults = judged(orderWith(caution({ patient, ...atRate(26) })), { policy: DEFAULT_POLICY });
  assert.equal(ofRule('OR38', defaults).length, 1);
});

test('[OR38] all energy that is running counts: modules, drips, lipid in sedation', () => {
  const patient = { ...DOCUMENT.patient, dosingWeight: { kg: 60, on: '2026-11-20' } };
  const more = (kcalPerDay: number): Partial<OrderDocument> =>
    caution({
      patient,
      ...atRate(20),
      modules: [{ name: 'protein', times: ['08:00', '20:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }],
      otherEnergy: [{ name: 'glucose 5 %', kcalPerDay }],
    });
  // 480 + 2 × 24 + 72 = 600.
  assert.deepEqual(found('OR38', more(72), START), []);
  const [asked] = found('OR38', more(73), START);
  assert.deepEqual(asked?.data.parts, { feed: fraction(480), modules: fraction(48), other: fraction(73) });
});

test('[OR38] while the order steps up, its first step is what counts; a strength counts too', () => {
  const patient = { ...DOCUMENT.patient, dosingWeight: { kg: 60, on: '2026-11-20' } };
  const advance = { startMlPerHour: 25, stepMlPerHour: 25, everyHours: 24, goalMlPerHour: 75 };
  assert.deepEqual(
    found('OR38', caution({ patient, regimen: { kind: 'continuous', rateMlPerHour: 75, advance } }), START),
    [],
  );
  const half = { feed: { id: 'standard', strength: '1/2' } };
  assert.deepEqual(found('OR38', caution({ patient, ...atRate(50), ...half }), START), []);
  assert.equal(found('OR38', caution({ patient, ...atRate(50.01), ...half }), START).length, 1);
});

test('[OR39] a caution that cannot be checked is asked about, with what it lacks', () => {
  const lacks = (changes: Partial<OrderDocument>, policy: Policy) =>
    found('OR39', caution(changes), policy).map((one) => `${one.level} ${one.data.lacks}`);
  assert.deepEqual(lacks({}, START), []);
  assert.deepEqual(lacks({}, SILENT), ['ask policy']);
  assert.deepEqual(lacks({ patient: { ...DOCUMENT.patient, dosingWeight: null } }, START), [
    'ask dosing-weight',
  ]);
  assert.deepEqual(found('OR39', {}, SILENT), []);
});

const TOLERANCE = policyOf({ 'account.tolerance.fraction': fraction(1, 10) });

test('[OR45] energy and protein further from the need than the tolerance are said, both ways, to the last kcal', () => {
  // 1800 kcal and 72 g a day.
  const says = (energyKcalPerDay: number | string, proteinGPerDay: number | string = 72) =>
    found('OR45', { needs: { energyKcalPerDay, proteinGPerDay } }, TOLERANCE).map(
      (one) => `${one.data.what} ${one.data.direction}`,
    );
  assert.deepEqual(says(1_800), []);
  assert.deepEqual(says(2_000), [], 'exactly a tenth below');
  assert.deepEqual(says(2_000.01), ['energy below']);
  assert.deepEqual(says('18000/11'), [], 'exactly a tenth above');
  assert.deepEqual(says(1_636), ['energy above']);
  assert.deepEqual(says(1_800, 80), []);
  assert.deepEqual(says(1_800, 81), ['protein below']);
  assert.deepEqual(found('OR45', { needs: {} }, TOLERANCE), []);
  const silent = found('OR40', { needs: { energyKcalPerDay: 1 } }).map((one) => one.data.key);
  assert.ok(silent.includes('account.tolerance.fraction'));
});

/** S31 (read): 850 mL of water in a litre at 1 kcal/mL. 1800 mL hold 1530; with 6 × 30 mL of flushes 1710. */
test('[OR46] water under the need is said, with what it comes from', () => {
  assert.deepEqual(found('OR46', { needs: { waterMlPerDay: 1_710 } }), []);
  const [note] = found('OR46', { needs: { waterMlPerDay: 1_710.01 } });
  assert.deepEqual([note?.data.value, note?.level], [fraction(1_710), 'note']);
  const half: Partial<OrderDocument> = {
    feed: { id: 'standard', strength: '1/2' },
    needs: { waterMlPerDay: 3_000 },
  };
  assert.deepEqual(found('OR46', half)[0]?.data.parts, {
    feed: fraction(765),
    dilution: fraction(900),
    flushes: fraction(180),
    medicineWater: fraction(0),
    moduleWater: fraction(0),
    intravenous: fraction(0),
  });
});
