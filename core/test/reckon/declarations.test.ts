import assert from 'node:assert/strict';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { ACCEPTED, readAmount, wanting } from '@feedwright/core/reckon/asking/quantity-input';
import { USUAL } from '@feedwright/core/reckon/asking/units';
import {
  CALCULATIONS,
  calculationNamed,
  nearestCalculation,
  SUBJECTS,
} from '@feedwright/core/reckon/catalogue';
import type { Ask, Calculation } from '@feedwright/core/reckon/declare';
import { compare, decimalText, minus, of, plus, toDouble } from '@feedwright/core/reckon/exact';
import { GRAVITY_ASKS } from '@feedwright/core/reckon/gravity/asks';
import { reckon } from '@feedwright/core/reckon/reckon';
import { SOURCES } from '@feedwright/core/reckon/sources';
import { CAUTIONS, SUBJECT_TITLES, TITLES } from '@feedwright/core/screen/calculations/english';
import { CALCULATION_ISSUES } from '@feedwright/core/screen/calculations/english-issues';
import { PAGE, page, SOURCES as SOURCES_MD, sourcesWith } from '../../../tools/calculations.ts';

/** What a key ends with, for each unit that a number may have. */
const SUFFIX: Readonly<Record<string, RegExp>> = {
  mL: /Ml$/,
  'mL/h': /MlPerHour$/,
  h: /([hH]ours(Left|Held|ToRun|ToGoal|ADay)?)$/,
  kcal: /Kcal$/,
  'kcal/mL': /KcalPerMl$/,
  'kcal/[foz_us]': /KcalPerOz$/,
  'kcal/kg': /KcalPerKg$/,
  'kcal/g': /Kcal(PerG)$|kcalPerG$/,
  'kcal/{can}': /KcalPerContainer$/,
  'kcal/{scoop}': /KcalPerScoop$/,
  g: /G(PerDay)?$/,
  mg: /Mg$/,
  'g/L': /GPerL$/,
  'g/dL': /GPerDl$/,
  'g/kg': /GPerKg$|highGPerKg$/,
  'g/{can}': /GPerContainer$/,
  kg: /Kg$/,
  '[lb_av]': /Lb$/,
  '[foz_us]': /Oz$/,
  'kg/m2': /KgPerM2$/,
  cm: /Cm$/,
  mm: /Mm$/,
  m2: /M2$/,
  a: /Years$/,
  mo: /Months$/,
  d: /[dD]ays?|day$/,
  min: /Minutes$/,
  'mL/kg': /MlPerKg$/,
  'mL/kg/h': /MlPerKgPerHour$/,
  'mL/m2': /MlPerM2$/,
  'mL/kcal': /mlPerKcal$/,
  'mL/g': /MlPerG$/,
  'mL/mL': /Fraction$/,
  'mL/{can}': /MlPerContainer$/,
  'mL/{scoop}': /MlPerScoop$/,
  L: /L$/,
  'L/min': /LPerMin$/,
  Cel: /Cel$/,
  '[Ch]': /size$/,
  '{gtt}/mL': /GttPerMl$/,
  '{gtt}/min': /[dD]ropsPerMinute$/,
  'mmol/L': /MmolPerL$|^before$|^after$|^value$/,
  'mg/dL': /MgPerDl$/,
  'meq/L': /MeqPerL$/,
  mmol: /Mmol$/,
  mosm: /Mosm$/,
  'mosm/kg': /MosmPerKg$/,
  '%': /[pP]ercent/,
  '%/mo': /PercentPerMonth$/,
};

const asksOf = (calculation: Calculation): readonly (readonly [string, Ask<unknown>])[] =>
  Object.entries(calculation.asks);
const given = (calculation: Calculation): Record<string, string> => ({ ...calculation.example });

test('[RK1] every name is one calculation’s only, and every calculation has its words', () => {
  const names = CALCULATIONS.map((one) => one.name);
  assert.equal(new Set(names).size, names.length);
  assert.ok(names.length >= 80);
  for (const one of CALCULATIONS) {
    assert.equal(calculationNamed(one.name), one);
    assert.ok(TITLES[one.name], `${one.name} has no title`);
    for (const also of one.also) {
      const other = CALCULATIONS.find((it) => it !== one && (it.name === also || it.also.includes(also)));
      assert.equal(other, undefined, `${also} is ${one.name} and ${other?.name}`);
    }
  }
  assert.deepEqual(Object.keys(SUBJECT_TITLES), Object.keys(SUBJECTS));
  assert.deepEqual(Object.keys(TITLES).toSorted(), names.toSorted());
});

test('[RK1] a key carries its unit, asked or given', () => {
  for (const { name, asks, gives } of CALCULATIONS) {
    for (const [key, { unit }] of [...Object.entries(asks), ...Object.entries(gives)]) {
      if (unit === '' || unit === '1') continue;
      if (/^(quantities|entries)$/.test(asks[key]?.kind ?? '') && unit === 'mL') continue;
      assert.match(key, SUFFIX[unit] ?? /never/, `${name}.${key} is in ${unit}`);
    }
  }
});

test('[RK1] every calculation works its own example and gives only what it declares', () => {
  for (const one of CALCULATIONS) {
    const found = reckon(one, one.example);
    assert.ok(found.ok, `${one.name}: ${found.ok ? '' : JSON.stringify(found.issues)}`);
    const { result, working } = found.value;
    assert.ok(working.length > 0);
    assert.equal(working.length, Object.keys(result).length);
    for (const key of Object.keys(result)) assert.ok(one.gives[key], `${one.name} gives ${key}`);
    for (const line of working) assert.equal(line.rule, one.rule);
  }
});

test('[RK1] everything that is declared as given can come out', () => {
  const seen = new Map<string, Set<string>>();
  const note = (calculation: Calculation, inputs: Record<string, string>) => {
    const found = reckon(calculation, inputs);
    const keys = seen.get(calculation.name) ?? new Set();
    if (found.ok) for (const key of Object.keys(found.value.result)) keys.add(key);
    seen.set(calculation.name, keys);
  };
  for (const [name, inputs] of WAYS) {
    const calculation = calculationNamed(name);
    assert.ok(calculation, name);
    note(calculation, inputs);
  }
  for (const one of CALCULATIONS) {
    note(one, given(one));
    const never = Object.keys(one.gives).filter((key) => !seen.get(one.name)?.has(key));
    assert.deepEqual(never, [], `${one.name} never gives`);
  }
});

/** Other ways in, for what an example does not bring out. */
const WAYS: readonly (readonly [string, Record<string, string>])[] = [
  [
    'volume-for-energy',
    { goal: '1850', density: '1.2', hours: '22', protein: '50 g/L', water: '80%', fibre: '10 g/L' },
  ],
  ['volume-for-protein', { goal: '80 g', protein: '56 g/L', hours: '20', fibre: '10 g/L' }],
  [
    'delivered',
    {
      volume: '1500',
      density: '1',
      protein: '40',
      water: '0.85',
      fibre: '15',
      weight: '70',
      energy_kcal_per_mL: '1',
    },
  ],
  ['delivered', { volume: '1500', density: '1', protein: '40', water: '0.85', fibre: '15', weight: '70' }],
  [
    'containers-a-day',
    { volume: '1500', canMl: '237', water_mL_per_can: '200', kcal_per_can: '250', protein_g_per_can: '9' },
  ],
  ['delivered-by-containers', { cans: '2', canMl: '237', water_mL_per_can: '200' }],
  [
    'bolus',
    {
      volume: '1500',
      every: '4 h',
      ceiling: '200 mL',
      density: '1',
      protein: '40',
      water: '0.85',
      fibre: '1',
    },
  ],
  [
    'cyclic',
    {
      volume: '1500',
      start: '20:00',
      until: '08:00',
      density: '1',
      protein: '40',
      water: '0.85',
      fibre: '1',
    },
  ],
  ['volume-for-energy', { weight: '70', perKg: '25', density: '1.2' }],
  ['catch-up', { goal: '1200', received: '400', now: '16:00', until: '06:00' }],
  ['bolus', { goal: '1422 kcal', energyKcalPerMl: '1', feeds: '4', can: '237 mL' }],
  ['grams-from-percent', { energy: '1714', grams: '62 g' }],
  ['formula-water', { rate: '80', hours: '24', water: '81%', flushes: '6 x 100 mL' }],
  ['hold-adjusted-rate', { rate: '60', held: '4' }],
  ['run-out', { volume: '500', rate: '50', start: '08:00' }],
  ['flushes', { goal: '2000', formulaWater: '2100', every: '4 h', hours: '24' }],
  ['flushes', { goal: '2000', formulaWater: '1100', flushMl: '100 mL' }],
  ['total-fluid', { limit: '1000', feed: '1500' }],
  ['dilution', { strength: '1/2', can: '237 mL', rate: '60', density: '1', protein: '40' }],
  ['osmolality', { osmolality: '600', volume: '100', water: '100' }],
  ['powder-for', { total: '300', wanted: '0.8', kcalPerG: '5', displacementPerG: '0.7' }],
  [
    'mifflin-st-jeor',
    { sex: 'm', weight: '70', height: '170', age: '50', factor: '1.2', stressFactor: '1.1' },
  ],
  ['harris-benedict', { sex: 'm', weight: '70', height: '170', age: '50', factor: '1.2' }],
  ['schofield', { sex: 'm', weight: '70', age: '50', factor: '1.2' }],
  ['who-basal', { sex: 'm', weight: '70', age: '50', factor: '1.2' }],
  ['energy-per-kg', { weight: '70', low: '25', high: '30' }],
  ['protein-per-kg', { weight: '70', low: '1', high: '1.5' }],
  ['intake-per-kg', { weight: '70', energy: '1800', protein: '70', volume: '2000' }],
  ['weight-loss', { usual: '80', now: '70', months: '3' }],
  ['adult-fluid', { weight: '70' }],
  ['infant-feed', { weight: '2', mlPerKg: '150', feeds: '8', milk: '20 kcal/oz' }],
  ['infant-per-kg', { weight: '2', volume: '300', feeds: '8' }],
  ['per-day-to-per-hour', { mlPerKgPerHour: '6.25' }],
  ['infant-advance', { weight: '1', start: '20', step: '20', day: '2', ceiling: '150', every: '2 h' }],
  ['refeeding-risk', { weight: '45', height: '170' }],
  ['electrolyte-fall', { of: 'k', before: '4', after: '3.6', days: '2' }],
  ['electrolyte-units', { of: 'k', value: '4' }],
  ['percentage', { part: '5', percent: '10' }],
  ['percentage', { whole: '5', percent: '10' }],
  ['nitrogen', { nitrogen: '10' }],
  ['renal-solute-load', { protein: '15', na: '8', k: '18', cl: '12', phosphorusMmol: '10', gain: '20' }],
];

test('[RK1] a unit that is said to be accepted is accepted, and comes to the asked one', () => {
  const asks = [
    ...CALCULATIONS.flatMap((one) => asksOf(one).map(([, ask]) => ask)),
    ...Object.values(GRAVITY_ASKS),
  ];
  const units = new Set(asks.map(({ unit }) => unit));
  for (const unit of Object.keys(ACCEPTED)) assert.ok(units.has(unit), `nothing asks for ${unit}`);
  for (const [unit, accepted] of Object.entries(ACCEPTED)) {
    if (unit === 'mmol/L' || unit === 'mmol') continue;
    for (const one of accepted) {
      const text = / /.test(one) ? `1 ${one.replace(' ', ' 1 ')}` : `1 ${one}`;
      const found = readAmount(text, wanting(unit), { conventions: USUAL });
      assert.ok(found.ok, `${text} for ${unit}: ${found.ok ? '' : JSON.stringify(found.issues)}`);
      assert.ok(toDouble(found.value.value) !== 0);
    }
  }
});

test('[RK4] every band refuses what lies just beyond it, at both ends, and names itself', () => {
  const [little, one] = [of('0.000001'), of(1)];
  for (const calculation of CALCULATIONS) {
    for (const [key, ask] of asksOf(calculation)) {
      if (ask.band === null || ask.kind === 'concentration') continue;
      const { least, most } = ask.band;
      assert.ok(compare(least, most) < 0);
      const beyond = [plus(most, one), ...(compare(least, of(0)) > 0 ? [minus(least, little)] : [])];
      for (const value of beyond) {
        const text = `${decimalText(value)} ${ask.unit === '%' ? '%' : ''}`.trim();
        const found = reckon(calculation, { [key]: text });
        assert.ok(!found.ok);
        const own = found.issues.find(
          (issue) => issue.path[0] === key && issue.code === 'reckon/outside-band',
        );
        assert.ok(own, `${calculation.name}.${key} takes ${text}`);
        assert.deepEqual([own.data.least, own.data.most], [decimalText(least), decimalText(most)]);
        assert.ok(own.data.because);
      }
    }
  }
});

test('[RK4] all that is wrong is named at once: unknown with the nearest, missing with its unit', () => {
  const rate = calculationNamed('rate');
  assert.ok(rate);
  const found = reckon(rate, { volum: '500', hors: '3 parsec' });
  assert.ok(!found.ok);
  assert.deepEqual(
    found.issues.map(({ code, path, data }) => [code, path[0], data.nearest ?? data.unit]),
    [
      ['reckon/unknown-input', 'volum', 'volumeMl'],
      ['reckon/unknown-input', 'hors', 'hours'],
      ['reckon/missing', 'volumeMl', 'mL'],
      ['reckon/missing', 'hours', 'h'],
    ],
  );
  assert.equal(nearestCalculation('raet'), 'rate');
  assert.equal(nearestCalculation('miflin'), 'mifflin');
  assert.equal(nearestCalculation('qqqqqqqqqqq'), null);
});

test('[RK4] a group of alternatives takes one of them, no fewer and no more', () => {
  const dilution = calculationNamed('dilution');
  assert.ok(dilution);
  const codes = (inputs: Record<string, string>) => {
    const found = reckon(dilution, { strength: '1/2', ...inputs });
    return found.ok ? [] : found.issues.map((one) => one.code);
  };
  assert.deepEqual(codes({}), ['reckon/one-of']);
  assert.deepEqual(codes({ total: '500', formula: '250' }), ['reckon/only-one-of']);
  assert.deepEqual(codes({ total: '500' }), []);
  assert.deepEqual(codes({ rate: '60', hours: '4' }), []);
});

const SOURCE_FILES = globSync('core/src/reckon/**/*.ts', { cwd: join(import.meta.dirname, '../../..') });

test('[RK4] every code that a calculation refuses or warns with has its words', () => {
  const text = SOURCE_FILES.map((file) =>
    readFileSync(join(import.meta.dirname, '../../..', file), 'utf8'),
  ).join('\n');
  const codes = [...text.matchAll(/'(reckon\/[a-z0-9-]+)'/g)].map(([, code = '']) => code);
  assert.ok(codes.length > 40);
  for (const code of codes) {
    const words = CALCULATION_ISSUES[code];
    assert.ok(words, `${code} has no words`);
    const { says, remedy } = words({});
    assert.ok(says.length > 5 && remedy.length > 5, code);
  }
  const cautions = [...text.matchAll(/caution\('([a-z0-9-]+)'\)/g)].map(([, code = '']) => code);
  const declared = CALCULATIONS.flatMap((one) => one.cautions);
  for (const code of [...cautions, ...declared, 'clock-shows-it-twice', 'clock-skips-it'])
    assert.ok(CAUTIONS[code], `${code} has no words`);
});

test('[RK12] every source is used, and a line from memory says so', () => {
  const text = SOURCE_FILES.map((file) =>
    readFileSync(join(import.meta.dirname, '../../..', file), 'utf8'),
  ).join('\n');
  for (const id of Object.keys(SOURCES))
    assert.ok(text.split(`'${id}'`).length > 1, `${id} is named nowhere`);
  const fromMemory = ([name, inputs]: readonly [string, Record<string, string>], key: string) => {
    const calculation = calculationNamed(name);
    assert.ok(calculation);
    const found = reckon(calculation, inputs);
    assert.ok(found.ok, name);
    const symbol = calculation.gives[key]?.symbol;
    const line = found.value.working.find(
      (one) => one.result.symbol === symbol && one.basis.kind === 'published',
    );
    assert.ok(line, `${name} has no line for ${key}`);
    assert.equal(line.basis.kind === 'published' && line.basis.provenance, 'from-memory', `${name}.${key}`);
  };
  const old = { sex: 'm', weight: '110', height: '170', age: '68', ve: '10', tmax: '38' };
  fromMemory(['penn-state', old], 'energyKcal');
  fromMemory(['who-basal', { sex: 'f', age: '70', weight: '60' }], 'restingKcal');
  fromMemory(['guideline-needs', { sex: 'm', weight: '70', height: '175' }], 'lowProteinG');
  fromMemory(['adult-fluid', { weight: '70', by: 'age', age: '50' }], 'fluidMl');
  fromMemory(['starter-feed', { weight: '5' }], 'bolusMl');
  fromMemory(['refeeding-start', { weight: '48', goal: '1440' }], 'niceHalfOfNeedsKcal');
  fromMemory(['osmolality', { osmolality: '600', strength: '1/2' }], 'osmolalityMosmPerKg');
  fromMemory(['intake-output', { urine: '300', discarded: '100' }], 'outputMl');
});

test('[RK12] what is from memory is marked in the page and in the sources', () => {
  const [calculations, sources] = [page(), readFileSync(SOURCES_MD, 'utf8')];
  for (const [id, { provenance }] of Object.entries(SOURCES)) {
    if (provenance !== 'from-memory') continue;
    assert.match(calculations, new RegExp(`- ${id}: .*from memory`), `${id} in docs/calculations.md`);
    assert.match(sources, new RegExp(`\\| ${id} \\|.*from memory`), `${id} in docs/sources.md`);
  }
});

test('[RK1] docs/calculations.md and its sections of docs/sources.md are current', () => {
  const text = page();
  assert.equal(readFileSync(PAGE, 'utf8'), text, 'run: node tools/calculations.ts');
  const sources = readFileSync(SOURCES_MD, 'utf8');
  assert.equal(sources, sourcesWith(sources), 'run: node tools/calculations.ts');
  for (const { name, equations } of CALCULATIONS) {
    assert.ok(text.includes(`### ${name}\n`));
    for (const equation of equations) assert.ok(text.includes(equation));
  }
});
