import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { instant } from '@feedwright/core/base/instant';
import type { Provenance } from '@feedwright/core/base/working';
import { daysOfYears } from '@feedwright/core/policy/age';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { explain } from '@feedwright/core/policy/explain';
import { POLICY_KEYS, type PolicyKey, policyKey } from '@feedwright/core/policy/keys';
import { ask, governingRow, type PolicyContext, rowsOf } from '@feedwright/core/policy/policy';
import { SOURCES } from '@feedwright/core/policy/sources';

const KEYS = Object.keys(POLICY_KEYS) as PolicyKey[];
const GROWN: PolicyContext = {
  ageDays: daysOfYears(40),
  setting: 'hospital',
  at: instant(Date.UTC(2026, 10, 25)),
};
const AGES = { adult: daysOfYears(40), child: daysOfYears(6), neonate: 10 } as const;

type Who = keyof typeof AGES;
const contextOf = (who: Who, setting: PolicyContext['setting'] = 'hospital'): PolicyContext => ({
  ...GROWN,
  ageDays: AGES[who],
  setting,
});

const explained = (key: PolicyKey, who: Who, setting: PolicyContext['setting'] = 'hospital') => {
  const { governing } = explain(DEFAULT_POLICY, key, contextOf(who, setting));
  assert.ok(governing !== null, `${key} for ${who}`);
  return governing;
};

test('[PO1] every key has a row for adults in every setting, with source, provenance and who set it', () => {
  for (const key of KEYS) {
    for (const setting of ['hospital', 'residential-care', 'home'] as const) {
      const row = governingRow(DEFAULT_POLICY, key, contextOf('adult', setting));
      assert.ok(row !== null, key);
      assert.equal(row.setBy, 'Feedwright default');
      assert.equal(row.setOn, '2026-11-25');
      assert.equal(row.isDefault, true);
      assert.equal(row.value === null, row.provenance === 'facility', key);
    }
  }
});

test('[PO1] every key has a row for children too, if only one that waits', () => {
  for (const key of KEYS) {
    for (const who of ['child', 'neonate'] as const) {
      assert.ok(governingRow(DEFAULT_POLICY, key, contextOf(who)) !== null, `${key} for ${who}`);
    }
  }
});

/** What must be set by the facility, for adults: nothing published, or bodies that contradict each other outright. */
const OPEN: readonly PolicyKey[] = [
  'water.gastric',
  'position.pause-when-flat',
  'ceiling.rate.per-kg',
  'ceiling.bolus.per-kg',
  'electrolyte.potassium.critical',
  'electrolyte.magnesium.critical',
  'electrolyte.phosphate.critical',
  'placement.pack',
  'residual.per-kg',
  'residual.share.alert',
  'residual.share.stop',
];

test('[PO1] for adults just these are left open for the facility', () => {
  assert.deepEqual(
    KEYS.filter((key) => !ask(DEFAULT_POLICY, key, GROWN).known),
    OPEN,
  );
});

test('[PO1] the placement pack has no default, at any age, and shows the bodies on both sides', () => {
  for (const who of ['adult', 'child', 'neonate'] as const) {
    const answer = ask(DEFAULT_POLICY, 'placement.pack', contextOf(who));
    assert.deepEqual(answer, { known: false, key: 'placement.pack', why: 'not-set' });
  }
  const said = explained('placement.pack', 'adult').alternatives.map((one) => one.value);
  assert.deepEqual([...new Set(said)], ['ph-first-then-radiograph', 'radiograph-first']);
});

type Expected = readonly [key: PolicyKey, value: string, from: Provenance, source: string, published: string];

/** Each default beside the figure as published. Where it says so, the figure is from memory of the source. */
const ADULT: readonly Expected[] = [
  ['hang.closed', '24 h', 'read', 'S19', 'NZ handbook 2007: unopened ready-to-hang 24–36 h'],
  ['hang.open-liquid', '8 h', 'from-memory', 'S2', 'ASPEN 2009: decanted sterile liquid 8 h'],
  ['hang.water-added', '4 h', 'derived', 'S19', 'as NZ handbook 2007: modular feed, infant or child, 4 h'],
  ['hang.powder', '4 h', 'from-memory', 'S2', 'ASPEN 2009: reconstituted 4 h'],
  ['hang.concentrate', '4 h', 'derived', 'S19', 'as NZ handbook 2007: powder feed 4 h'],
  ['hang.additives', '4 h', 'from-memory', 'S2', 'ASPEN 2009: with added modulars 4 h'],
  ['hang.human-milk', '4 h', 'read', 'S19', 'NZ handbook 2007: under 26 °C 4 h'],
  ['hang.blenderised', '2 h', 'read', 'S21', 'Lakananurak 2020: counts unacceptable at 4 h at 25 °C'],
  ['set.change.open', '24 h', 'from-memory', 'S2', 'ASPEN 2009: at least every 24 h'],
  ['set.with-each-closed-container', 'yes', 'from-memory', 'S1', 'ASPEN 2017: one set per container'],
  ['carton.keep-for', '24 h', 'read', 'S20', 'NZ handbook 2013: discard 24 h after preparation'],
  ['prepared.keep-for', '24 h', 'read', 'S20', 'NZ handbook 2013: discard 24 h after preparation'],
  ['flush.continuous.volume', '30 mL', 'from-memory', 'S2', 'ASPEN 2009: 30 mL every 4 h'],
  ['flush.continuous.every', '4 h', 'from-memory', 'S2', 'ASPEN 2009: 30 mL every 4 h'],
  ['flush.feed.before', '30 mL', 'from-memory', 'S2', 'ASPEN 2009: 30 mL before and after'],
  ['flush.feed.after', '30 mL', 'from-memory', 'S2', 'ASPEN 2009: 30 mL before and after'],
  ['flush.medicine.before', '15 mL', 'read', 'S59', 'AJHP 2008: 15–30 mL before and after'],
  ['flush.medicine.after', '15 mL', 'read', 'S59', 'AJHP 2008: 15–30 mL before and after'],
  ['flush.medicine.between', '15 mL', 'from-memory', 'S1', 'ASPEN 2017: at least 15 mL between'],
  ['flush.residual.after', '30 mL', 'from-memory', 'S2', 'ASPEN 2009: 30 mL after each residual'],
  ['water.jejunal', 'sterile', 'from-memory', 'S2', 'ASPEN 2009: sterile for jejunal tubes'],
  ['check.tube.every', '4 h', 'read', 'S16', 'Bourgault 2015: verify again every 4 h'],
  ['check.residual.routine', 'no', 'read', 'S4', 'SCCM/ASPEN 2016: do not use routinely'],
  ['check.residual.every', '6 h', 'read', 'S49', 'NUTRIREA-1: 6-hourly in the control arm'],
  ['check.weight.every', '72 h', 'derived', 'S76', 'BAPEN: twice a week'],
  ['check.glucose.every', '24 h', 'read', 'S76', 'BAPEN: daily at first'],
  ['check.bloods.every', '24 h', 'from-memory', 'S5', 'NICE CG32: daily until stable'],
  ['position.head-of-bed', '30 deg', 'read', 'S2', 'ASPEN 2009 order form: 30–45°'],
  ['position.head-of-bed.target', '45 deg', 'read', 'S2', 'ASPEN 2009 order form: 30–45°'],
  ['position.after-feed', '60 min', 'read', 'S30', 'professional manual 2024: 1–2 h after a bolus'],
  ['ceiling.rate.gastric', '150 mL/h', 'derived', 'S37', 'PEP uP: the rate is never over 150 mL/h'],
  ['ceiling.bolus', '480 mL', 'read', 'S31', 'pharmacotherapy textbook: 240–480 mL a feed'],
  ['ceiling.bolus.ask', '400 mL', 'from-memory', 'S108', 'BSG 2003: 200–400 mL'],
  ['bolus.least-duration', '15 min', 'read', 'S33', 'university tutorial: over 15 min'],
  ['jejunal.bolus-allowed', 'no', 'read', 'S30', 'professional manual 2024: by pump only'],
  ['catch-up.ceiling', '150 mL/h', 'read', 'S37', 'PEP uP: the rate is never over 150 mL/h'],
  ['catch-up.first-day', 'no', 'read', 'S37', 'PEP uP: no catching up on the first day'],
  ['catch-up.first-day.rate', '25 mL/h', 'read', 'S37', 'PEP uP: 25 mL/h on the first day'],
  ['advance.rate.start', '20 mL/h', 'read', 'S30', 'professional manual 2024: 20–30 mL/h'],
  ['advance.rate.step', '20 mL/h', 'read', 'S34', 'military guideline: 20 mL/h'],
  ['advance.rate.every', '8 h', 'read', 'S34', 'military guideline: every 6–8 h'],
  ['advance.bolus.start', '120 mL', 'secondary', 'S99', 'slide deck restating ASPEN: 60–120 mL'],
  ['refeeding.start.kcal-per-kg', '10 kcal/kg/d', 'read', 'S7', 'NICE: at most 10 kcal/kg a day'],
  ['refeeding.start.extreme.kcal-per-kg', '5 kcal/kg/d', 'read', 'S7', 'NICE: 5 in extreme cases'],
  ['refeeding.nice.one.bmi', '16 kg/m2', 'read', 'S6', 'NICE: BMI under 16'],
  ['refeeding.nice.one.loss', '0.15', 'read', 'S6', 'NICE: loss over 15 %'],
  ['refeeding.nice.one.little-intake', '10 d', 'read', 'S6', 'NICE: over 10 days'],
  ['refeeding.nice.two.bmi', '18.5 kg/m2', 'read', 'S6', 'NICE: BMI under 18.5'],
  ['refeeding.nice.two.loss', '0.1', 'read', 'S6', 'NICE: loss over 10 %'],
  ['refeeding.nice.two.little-intake', '5 d', 'read', 'S6', 'NICE: over 5 days'],
  ['refeeding.nice.extreme.bmi', '14 kg/m2', 'read', 'S7', 'NICE: BMI under 14'],
  ['refeeding.nice.extreme.little-intake', '15 d', 'read', 'S7', 'NICE: over 15 days'],
  ['refeeding.aspen.moderate.bmi', '18.5 kg/m2', 'read', 'S7', 'ASPEN 2020: 16–18.5'],
  ['refeeding.aspen.significant.bmi', '16 kg/m2', 'read', 'S7', 'ASPEN 2020: under 16'],
  ['refeeding.aspen.moderate.loss-in-month', '0.05', 'read', 'S7', 'ASPEN 2020: 5 % in a month'],
  ['refeeding.aspen.significant.loss-in-3-months', '0.0750', 'read', 'S7', 'ASPEN 2020: 7.5 % in 3 months'],
  ['refeeding.aspen.significant.loss-in-6-months', '0.1', 'read', 'S7', 'ASPEN 2020: over 10 % in 6 months'],
  ['refeeding.aspen.moderate.no-intake', '5 d', 'read', 'S7', 'ASPEN 2020: none for 5–6 days'],
  ['refeeding.aspen.significant.no-intake', '7 d', 'read', 'S7', 'ASPEN 2020: none for over 7 days'],
  ['refeeding.aspen.moderate.intake-share', '0.75', 'read', 'S7', 'ASPEN 2020: under 75 %'],
  ['refeeding.aspen.significant.intake-share', '0.5', 'read', 'S7', 'ASPEN 2020: under 50 %'],
  ['refeeding.aspen.moderate.low-intake-acute', '7 d', 'read', 'S7', 'ASPEN 2020: over 7 days, acute'],
  ['refeeding.aspen.significant.low-intake-acute', '5 d', 'read', 'S7', 'ASPEN 2020: over 5 days, acute'],
  ['refeeding.fall.mild', '0.1', 'read', 'S7', 'ASPEN 2020: 10–20 %'],
  ['refeeding.fall.moderate', '0.2', 'read', 'S7', 'ASPEN 2020: 20–30 %'],
  ['refeeding.fall.severe', '0.3', 'read', 'S7', 'ASPEN 2020: over 30 %'],
  ['refeeding.fall.within', '5 d', 'read', 'S7', 'ASPEN 2020: within 5 days'],
  ['refeeding.phosphate.low', '0.65 mmol/L', 'from-memory', 'S111', 'ESPEN: under 0.65 mmol/L'],
  ['refeeding.phosphate.fall', '0.16 mmol/L', 'from-memory', 'S111', 'ESPEN: a fall over 0.16'],
  ['refeeding.electrolytes.every', '12 h', 'read', 'S7', 'ASPEN 2020: every 12 h'],
  ['refeeding.electrolytes.for', '72 h', 'read', 'S7', 'ASPEN 2020: for 3 days'],
  ['placement.ph.limit', '5.5', 'read', 'S9', 'NPSA 2011: 1 to 5.5'],
  ['placement.ph.second-checker-from', '5', 'from-memory', 'S10', 'NPSA 2011: second checker from 5'],
  ['placement.new-stoma', '72 h', 'from-memory', 'S110', 'NPSA 2010: within 72 h'],
  ['placement.first-feed.stoma', '4 h', 'read', 'S78', 'NICE CG32: after 4 h'],
  ['stoma.tract.established', '84 d', 'read', 'S82', 'NHS Borders: over 12 weeks'],
  ['stoma.bumper.slack.least', '10 mm', 'read', 'S12', 'ESGE 2021: 1–2 cm'],
  ['stoma.bumper.slack.most', '20 mm', 'read', 'S12', 'ESGE 2021: 1–2 cm'],
  ['residual.compare', 'more-than', 'read', 'S49', 'NUTRIREA-1: over 250 mL'],
  ['residual.alert', '250 mL', 'read', 'S49', 'NUTRIREA-1: over 250 mL'],
  ['residual.stop', '500 mL', 'read', 'S4', 'SCCM/ASPEN 2016: do not hold under 500 mL'],
  ['residual.consecutive', '2', 'from-memory', 'S2', 'ASPEN 2009: 250 mL or more at a second check'],
  ['residual.return-most', '250 mL', 'read', 'S52', 'Juvé-Udina 2009: return up to 250 mL'],
  ['residual.jejunal-allowed', 'no', 'from-memory', 'S5', 'NICE CG32: not from a jejunal port'],
  ['residual.least-french', '10 Fr', 'from-memory', 'S1', 'ASPEN: not meaningful under 10 Fr'],
  ['account.tolerance.fraction', '0.1', 'derived', 'S89', 'Strack van Schijndel 2007: 90–110 %'],
  ['delivered.alert', '0.8', 'read', 'S40', 'PERFECT 2019: 80 % target'],
  ['set.change.closed', '24 h', 'from-memory', 'S1', 'ASPEN 2017: by its maker; a day taken'],
  ['flush.hold.before', '30 mL', 'derived', 'S2', 'as ASPEN 2009 around a feed'],
  ['flush.hold.after', '30 mL', 'derived', 'S2', 'as ASPEN 2009 around a feed'],
  ['check.tube.on-clock', 'no', 'from-memory', 'S1', 'ASPEN 2017: feed raises pH; mark and events instead'],
  ['check.residual.before-feed', 'no', 'read', 'S4', 'SCCM/ASPEN 2016: do not use routinely'],
  ['check.tolerance.every', '12 h', 'derived', 'S2', 'ASPEN 2009 order form: each shift or day'],
  ['advance.bolus.step', '60 mL', 'secondary', 'S99', 'slide deck restating ASPEN: 60–120 mL'],
  ['advance.bolus.every', '8 h', 'secondary', 'S99', 'slide deck restating ASPEN: every 8–12 h'],
  ['refeeding.aspen.low-intake-chronic', '30 d', 'derived', 'S7', 'ASPEN 2020: over 1 month'],
  ['refeeding.low-electrolytes', 'delay-if-severely-low', 'read', 'S7', 'ASPEN 2020: delay if severely low'],
  ['refeeding.thiamine.before-first-feed', 'yes', 'read', 'S7', 'ASPEN 2020: before feed or dextrose'],
  ['placement.ph.off-feed', '60 min', 'from-memory', 'S1', 'ASPEN 2017: about 1 h off feed'],
  ['stoma.rotation.from', '14 d', 'derived', 'S82', 'as NHS Borders: fixator left 14 days'],
  ['stoma.rotation.every', '168 h', 'from-memory', 'S5', 'NICE CG32: weekly'],
  ['stoma.balloon.every', '168 h', 'from-memory', 'S5', 'NICE CG32: weekly'],
  ['residual.recheck-after', '1 h', 'from-memory', 'S4', 'bedside ladder: after 1–2 h'],
  ['medicine.hold.empty-stomach.before', '30 min', 'read', 'S59', 'AJHP 2008: 30 min each side'],
  ['medicine.hold.empty-stomach.after', '30 min', 'read', 'S59', 'AJHP 2008: 30 min each side'],
  ['medicine.hold.phenytoin.before', '60 min', 'read', 'S31', 'pharmacotherapy textbook: 1–2 h'],
  ['medicine.hold.phenytoin.after', '60 min', 'read', 'S31', 'pharmacotherapy textbook: 1–2 h'],
  ['medicine.hold.levothyroxine.before', '60 min', 'read', 'S68', 'Pirola 2014, common practice: 1–2 h'],
  ['medicine.hold.levothyroxine.after', '60 min', 'read', 'S68', 'Pirola 2014, common practice: 1–2 h'],
  ['medicine.hold.ciprofloxacin.before', '60 min', 'read', 'S62', 'hospital pharmacists 2004: 1 h before'],
  ['medicine.hold.ciprofloxacin.after', '120 min', 'read', 'S62', 'hospital pharmacists 2004: 2 h after'],
  ['medicine.hold.tetracyclines.before', '60 min', 'from-memory', 'common-practice', 'texts: 1–2 h before'],
  ['medicine.hold.tetracyclines.after', '120 min', 'from-memory', 'common-practice', 'texts: 2 h after'],
  ['medicine.hold.warfarin.before', '60 min', 'read', 'S31', 'pharmacotherapy textbook: 1 h'],
  ['medicine.hold.warfarin.after', '60 min', 'read', 'S31', 'pharmacotherapy textbook: 1 h'],
  ['medicine.hold.levodopa.before', '60 min', 'secondary', 'S113', 'ESPEN neurology 2018: 1 h'],
  ['medicine.hold.levodopa.after', '30 min', 'secondary', 'S113', 'ESPEN neurology 2018: 30–40 min'],
  ['medicine.hold.sucralfate.before', '60 min', 'from-memory', 'common-practice', 'texts: 1 h'],
  ['medicine.hold.sucralfate.after', '60 min', 'from-memory', 'common-practice', 'texts: 1 h'],
  [
    'medicine.hold.carbamazepine.before',
    '60 min',
    'from-memory',
    'common-practice',
    'texts: about 1 h, varies',
  ],
  [
    'medicine.hold.carbamazepine.after',
    '120 min',
    'from-memory',
    'common-practice',
    'texts: about 2 h, varies',
  ],
];

test('[PO1] no default for adults is left unchecked', () => {
  const checked = [...ADULT.map(([key]) => key), ...COMMON.map(([key]) => key), ...OPEN];
  assert.deepEqual(
    KEYS.filter((key) => !checked.includes(key)),
    [],
  );
  assert.equal(new Set(checked).size, checked.length);
});

test('[PO1] each default for adults is the published figure, with its source and how it was come by', () => {
  for (const [key, value, provenance, source, published] of ADULT) {
    const row = explained(key, 'adult');
    assert.equal(row.value, value, `${key}: ${published}`);
    assert.equal(row.provenance, provenance, key);
    assert.deepEqual(
      row.sources.map((one) => one.id),
      [source],
      key,
    );
  }
});

/** No publication fixes these: habits of the trade and properties of devices, each to be set by the facility. */
const COMMON: readonly (readonly [PolicyKey, string])[] = [
  ['day.start', '08:00'],
  ['shift.length', '12 h'],
  ['hang.water', '24 h'],
  ['hang.margin', '0 min'],
  ['set.prime.line', '15 mL'],
  ['set.prime.spill', '5 mL'],
  ['bag.capacity', '1000 mL'],
  ['pour.step', '10 mL'],
  ['pour.per-feed', 'yes'],
  ['carton.keep', 'yes'],
  ['window.flush', '30 min'],
  ['window.check', '60 min'],
  ['window.medicine', '30 min'],
  ['window.feed', '30 min'],
  ['window.daily', '120 min'],
  ['check.position.every', '4 h'],
  ['care.mouth.every', '4 h'],
  ['ceiling.rate.jejunal', '125 mL/h'],
  ['ceiling.rate.cyclic', '150 mL/h'],
  ['pump.rate-step', '1 mL/h'],
  ['account.tolerance.volume', '50 mL'],
  ['account.discarded-residual-off-nutrition', 'no'],
  ['warn.dry-within', '15 min'],
  ['warn.paused-for', '30 min'],
  ['glucose.after-stop-within', '30 min'],
  ['duplicate.within', '10 min'],
];

test('[PO1] what is only common practice says so', () => {
  for (const [key, value] of COMMON) {
    const row = explained(key, 'adult');
    assert.equal(row.value, value, key);
    assert.equal(row.provenance, 'common-practice', key);
  }
  const marked = DEFAULT_POLICY.rows
    .filter((row) => row.provenance === 'common-practice')
    .map((row) => row.key);
  assert.deepEqual(new Set(marked), new Set(COMMON.map(([key]) => key)));
});

test('[PO1] at home an adult has the values that are published for home', () => {
  const cases: readonly Expected[] = [
    ['hang.open-liquid', '12 h', 'from-memory', 'S2', 'ASPEN 2009: 12 h at home'],
    ['flush.medicine.before', '30 mL', 'from-memory', 'S107', 'ESPEN home 2020: 30 mL'],
    ['flush.medicine.between', '30 mL', 'from-memory', 'S107', 'ESPEN home 2020: 30 mL'],
    ['flush.medicine.after', '30 mL', 'from-memory', 'S107', 'ESPEN home 2020: 30 mL'],
    ['check.weight.every', '720 h', 'derived', 'S76', 'BAPEN: monthly when stable at home'],
    ['water.jejunal', 'cooled-boiled', 'read', 'S83', 'Leeds: cooled boiled water'],
  ];
  for (const [key, value, provenance, source, published] of cases) {
    const row = explained(key, 'adult', 'home');
    assert.deepEqual([row.value, row.provenance, row.sources[0]?.id], [value, provenance, source], published);
    assert.equal(row.setting, 'home');
  }
  assert.equal(explained('hang.open-liquid', 'adult', 'residential-care').value, '8 h');
});

/** Where published bodies disagree: what must be shown beside the default, as `value` and source. */
const DISAGREEMENTS: readonly (readonly [PolicyKey, readonly (readonly [string, string])[]])[] = [
  [
    'hang.open-liquid',
    [
      ['4–8 h', 'S1'],
      ['12 h', 'S19'],
      ['12 h', 'S20'],
      ['12 h', 'S22'],
    ],
  ],
  [
    'hang.closed',
    [
      ['24–36 h', 'S20'],
      ['24–48 h', 'S1'],
      ['48 h', 'S24'],
      ['24 h at most', 'S101'],
    ],
  ],
  ['set.change.open', [['after each session', 'S79']]],
  [
    'flush.medicine.between',
    [
      ['5–10 mL', 'S59'],
      ['30 mL', 'S107'],
    ],
  ],
  ['placement.ph.limit', [['5', 'S1']]],
  [
    'placement.pack',
    [
      ['ph-first-then-radiograph', 'S9'],
      ['radiograph-first', 'S106'],
      ['radiograph-first', 'S17'],
      ['radiograph-first', 'S12'],
    ],
  ],
  [
    'residual.stop',
    [
      ['over 500 mL', 'S2'],
      ['over 500 mL in 6 h', 'S4'],
    ],
  ],
  [
    'residual.alert',
    [
      ['250–500 mL', 'S4'],
      ['200 mL', 'S108'],
    ],
  ],
  ['residual.compare', [['at-least', 'S2']]],
  ['residual.return-most', [['return or discard', 'S51']]],
  ['check.residual.routine', [['every 4–6 h', 'S4']]],
  [
    'position.after-feed',
    [
      ['1–2 h', 'S30'],
      ['30 min', 'S108'],
      ['30–60 min', 'common-practice'],
    ],
  ],
  [
    'position.head-of-bed',
    [
      ['20°', 'S57'],
      ['30° at most', 'S56'],
    ],
  ],
  [
    'position.head-of-bed.target',
    [
      ['45°', 'S56'],
      ['30° at most', 'S56'],
    ],
  ],
  [
    'advance.rate.start',
    [
      ['25–50 mL/h at half strength', 'S36'],
      ['10 mL/h', 'S35'],
    ],
  ],
  [
    'advance.rate.every',
    [
      ['6–8 h', 'S34'],
      ['4–8 h', 'S30'],
      ['8–12 h', 'S99'],
    ],
  ],
  [
    'bolus.least-duration',
    [
      ['10–20 min', 'S2'],
      ['under 10 min', 'S31'],
      ['4–10 min', 'S32'],
    ],
  ],
  ['ceiling.bolus', [['250–300 mL', 'S33']]],
  [
    'placement.first-feed.stoma',
    [
      ['3–4 h', 'S12'],
      ['2 h', 'S2'],
      ['2–4 h', 'S107'],
    ],
  ],
  [
    'stoma.rotation.every',
    [
      ['daily', 'S107'],
      ['pushed in daily', 'S12'],
    ],
  ],
  ['refeeding.start.kcal-per-kg', [['10–20 kcal/kg', 'S7']]],
  ['refeeding.low-electrolytes', [['start-and-replace', 'S7']]],
  [
    'refeeding.thiamine.before-first-feed',
    [
      ['200–300 mg a day for 10 days', 'S7'],
      ['2 mg/kg up to 100–200 mg a day', 'S7'],
    ],
  ],
  ['refeeding.phosphate.low', [['2.0 mg/dL or less', 'S112']]],
  ['catch-up.ceiling', [['120 mL/h', 'S109']]],
  [
    'delivered.alert',
    [
      ['90 %', 'S87'],
      ['90 %', 'S89'],
    ],
  ],
  [
    'medicine.hold.levothyroxine.before',
    [
      ['30 min each side', 'S68'],
      ['none before day 7', 'S60'],
    ],
  ],
  ['medicine.hold.ciprofloxacin.before', [['30–60 min or more each side', 'S31']]],
  [
    'medicine.hold.phenytoin.before',
    [
      ['1–2 h each side', 'S63'],
      ['2 h each side, 60 mL water', 'S100'],
      ['no interaction', 'S64'],
    ],
  ],
];

test('[PO20] where published bodies disagree, the others stand beside the default', () => {
  for (const [key, wanted] of DISAGREEMENTS) {
    const shown = explained(key, 'adult').alternatives.map((one) => `${one.value} ${one.sources[0]?.id}`);
    for (const [value, source] of wanted) {
      assert.ok(
        shown.includes(`${value} ${source}`),
        `${key}: ${value} (${source}) among ${shown.join('; ')}`,
      );
    }
  }
});

/** What a child has by default: read in its source, or a prohibition; anything else waits. */
const CHILD: readonly Expected[] = [
  ['hang.closed', '24 h', 'read', 'S19', 'NZ handbook 2007: unopened ready-to-hang 24–36 h'],
  ['hang.powder', '4 h', 'read', 'S19', 'NZ handbook 2007: infant feed from powder 4 h'],
  ['hang.additives', '4 h', 'read', 'S19', 'NZ handbook 2007: modular feed, infant or child, 4 h'],
  ['hang.human-milk', '4 h', 'read', 'S19', 'NZ handbook 2007: under 26 °C 4 h'],
  ['stoma.rotation.from', '14 d', 'read', 'S81', 'Newcastle: not turned for 14 days'],
  ['stoma.rotation.every', '168 h', 'read', 'S80', 'Great Ormond Street: weekly'],
];

test('[PO6] a child has just those defaults that were read, and the jejunal prohibitions', () => {
  for (const [key, value, provenance, source, published] of CHILD) {
    const row = explained(key, 'child');
    assert.deepEqual([row.value, row.provenance, row.sources[0]?.id], [value, provenance, source], published);
  }
  assert.equal(explained('jejunal.bolus-allowed', 'child').value, 'no');
  assert.equal(explained('residual.jejunal-allowed', 'child').value, 'no');
});

test('[PO6] nothing from memory or at second hand is a default for a child, but for prohibitions', () => {
  const stricter: readonly PolicyKey[] = ['residual.jejunal-allowed', 'set.with-each-closed-container'];
  for (const row of DEFAULT_POLICY.rows) {
    const forChildren = row.band === null || row.band.fromDays < daysOfYears(18);
    if (!forChildren || row.value === null || stricter.includes(row.key)) continue;
    assert.ok(
      ['read', 'derived', 'common-practice'].includes(row.provenance),
      `${row.key} ${row.provenance}`,
    );
  }
});

test('[PO6] tables that had to be put together again give a child no value, but are shown', () => {
  for (const key of [
    'ceiling.rate.gastric',
    'ceiling.rate.per-kg',
    'ceiling.bolus',
    'ceiling.bolus.per-kg',
  ] as const) {
    const row = explained(key, 'child');
    assert.equal(row.value, null, key);
    assert.ok(row.alternatives.length >= 3, key);
    assert.ok(
      row.alternatives.every((one) => one.provenance === 'secondary' && one.sources[0]?.id === 'S41'),
      key,
    );
  }
  for (const key of [
    'flush.feed.after',
    'flush.medicine.after',
    'hang.open-liquid',
    'residual.alert',
  ] as const) {
    const row = explained(key, 'child');
    assert.equal(row.value, null, key);
    assert.ok(row.alternatives.length > 0, key);
  }
});

test('[PO3] [PO6] the pH limit of a neonate ends with the 28th day, and an adult’s begins on the birthday', () => {
  const limit = (ageDays: number | null) => {
    const answer = ask(DEFAULT_POLICY, 'placement.ph.limit', { ...GROWN, ageDays });
    return answer.known ? answer.value : answer.why;
  };
  // New Zealand neonatal guideline (S18): 5 or less. NPSA 2011 (S9): up to 5.5.
  assert.deepEqual(limit(27), { n: 5, d: 1 });
  assert.equal(limit(28), 'not-set');
  assert.equal(limit(daysOfYears(18) - 1), 'not-set');
  assert.deepEqual(limit(daysOfYears(18)), { n: 11, d: 2 });
  assert.equal(limit(null), 'no-row');
});

const SOURCES_MD = readFileSync(new URL('../../../docs/sources.md', import.meta.url), 'utf8');

test('[PO20] every source that a default names is in docs/sources.md, with the citation that is shown', () => {
  const listed = new Map(
    [...SOURCES_MD.matchAll(/^\| (S\d+) \| (.*?) \|/gm)].map(([, id, citation]) => [id, citation]),
  );
  for (const [id, citation] of Object.entries(SOURCES)) {
    if (id.startsWith('S')) assert.equal(listed.get(id), citation, id);
    else assert.match(SOURCES_MD, new RegExp(`^- \`${id}\`: `, 'm'));
  }
  assert.equal(listed.size, Object.keys(SOURCES).filter((id) => id.startsWith('S')).length);
  for (const row of DEFAULT_POLICY.rows) {
    for (const { source } of [row, ...row.alternatives]) assert.ok(Object.hasOwn(SOURCES, source), source);
  }
});

test('[PO20] a key is explained by its governing row, all others, and what is behind each source’s number', () => {
  const said = explain(DEFAULT_POLICY, 'hang.open-liquid', contextOf('adult', 'home'));
  assert.equal(said.unit, 'h');
  assert.equal(said.governing?.value, '12 h');
  assert.deepEqual(
    said.rows.map((row) => [row.governs, row.value, row.ageFrom, row.ageBelow, row.setting]),
    [
      [false, '8 h', '18 years', null, null],
      [true, '12 h', '18 years', null, 'home'],
      [false, null, '0 days', '18 years', null],
    ],
  );
  assert.deepEqual(said.governing?.sources, [{ id: 'S2', citation: SOURCES.S2 }]);
  assert.equal(said.governing?.alternatives[0]?.sources[0]?.citation, SOURCES.S22);
  const unknown = explain(DEFAULT_POLICY, 'hang.open-liquid', { ...GROWN, ageDays: null });
  assert.equal(unknown.governing, null);
  assert.deepEqual(explain(DEFAULT_POLICY, 'residual.compare', GROWN).choices, ['more-than', 'at-least']);
  assert.equal(rowsOf(DEFAULT_POLICY, 'hang.open-liquid').length, said.rows.length);
});

test('[PO20] a key is found by its name and by no other', () => {
  assert.equal(policyKey('hang.closed'), 'hang.closed');
  for (const name of ['hang', 'toString', '__proto__', '']) assert.equal(policyKey(name), null, name);
});
