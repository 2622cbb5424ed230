import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Fraction } from '@feedwright/core/base/fraction';
import type { Raw } from '@feedwright/core/reckon/asking/quantity-input';
import { CALCULATIONS } from '@feedwright/core/reckon/catalogue';
import type { Ask } from '@feedwright/core/reckon/declare';
import {
  compare,
  type Exact,
  less,
  of,
  plus,
  times,
  toDouble,
  toFraction,
} from '@feedwright/core/reckon/exact';
import { reckon } from '@feedwright/core/reckon/reckon';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { exactly, shows } from './worked.ts';

/** Hundredths between two numbers, as a fraction. */
const between = (least: number, most: number): fc.Arbitrary<Fraction> =>
  fc
    .integer({ min: Math.ceil(least * 100), max: Math.floor(most * 100) })
    .map((n) => toFraction({ n: BigInt(n), d: 100n }));

const same = (a: Exact, b: Exact, what = ''): void =>
  assert.equal(compare(a, b), 0, `${what}: ${toDouble(a)} is not ${toDouble(b)}`);

const raw = (value: Exact): Raw => toFraction(value);
const exact = ({ n, d }: Fraction): Exact => ({ n: BigInt(n), d: BigInt(d) });

const NUMBERS = fc.oneof(
  fc.double().map(String),
  fc.integer().map(String),
  fc.constantFrom(
    '0',
    '-0',
    '1e9',
    '999999999999999',
    '0.000000000000001',
    '1/3',
    '0/0',
    '7 1/0',
    '１２',
    '1,5',
    '1.5.5',
  ),
);
const UNITS = fc.constantFrom(
  'mL',
  'L',
  'oz',
  'lb',
  'mL/h',
  'kcal/oz',
  'g/237mL',
  '%',
  'ft 2in',
  'h 30',
  '°F',
  'mg/dL',
  '/',
  'per',
  'm2',
  '!',
);
const TEXTS = fc.oneof(
  NUMBERS,
  fc.tuple(NUMBERS, UNITS).map(([number, unit]) => `${number} ${unit}`),
  fc.string(),
  fc.string({ unit: 'binary' }),
  fc.constantFrom(
    '08:00',
    '24:00',
    '2026-02-30T08:00',
    '2026-10-25T01:30',
    '99:99 50',
    '6 x 30 mL',
    '99 x 99 x 9',
    'male',
    'yes',
    'Europe/London',
    'Nowhere/Land',
    '10:00-12:00; 11:00',
    'constructor',
    '__proto__',
  ),
);
const RAWS: fc.Arbitrary<Raw | readonly Raw[]> = fc.oneof(
  TEXTS,
  fc.double(),
  fc.array(TEXTS, { maxLength: 4 }),
);

test('[RK8] arbitrary inputs under arbitrary keys never throw', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...CALCULATIONS),
      fc.infiniteStream(RAWS),
      fc.array(fc.tuple(fc.string(), RAWS), { maxLength: 3 }),
      (calculation, stream, junk) => {
        const inputs: Record<string, Raw | readonly Raw[]> = Object.fromEntries(junk);
        for (const [index, key] of Object.keys(calculation.asks).entries()) {
          const { value } = stream.next();
          if ((index + String(value).length) % 3 > 0) inputs[key] = value;
        }
        reckon(calculation, inputs);
      },
    ),
    runs(20_000),
  );
});

/** Something within what the input takes. */
function within(ask: Ask<unknown>): fc.Arbitrary<Raw> {
  if (ask.choices.length > 0) return fc.constantFrom(...ask.choices);
  if (ask.kind === 'moment')
    return fc.constantFrom('08:00', '23:59', '2026-10-25T01:30+01:00', '2026-03-29T01:30');
  if (ask.kind === 'zone') return fc.constantFrom('Europe/London', 'Australia/Lord_Howe');
  if (ask.kind === 'entries')
    return fc.constantFrom('10:00-12:00; 11:00-13:00', '08:00; 12:00', '08:00 120 mL; 200', '300');
  if (ask.band === null) return fc.constantFrom('8 oz', 'kg', '3 lb');
  const { least, most } = ask.band;
  const part = fc.oneof(fc.constantFrom(0n, 1n, 1000n), fc.bigInt({ min: 0n, max: 1000n }));
  return part.map((k) =>
    toFraction(plus(times({ n: 1000n - k, d: 1000n }, least), times({ n: k, d: 1000n }, most))),
  );
}

test('[RK8] inputs anywhere in their bands, the ends too, never throw', () => {
  for (const calculation of CALCULATIONS) {
    const asks = Object.entries(calculation.asks);
    const inputs = fc.tuple(...asks.map(([, ask]) => fc.option(within(ask), { freq: 4 })));
    fc.assert(
      fc.property(inputs, fc.constantFrom('none', 'whole', '0.01', 'down 5'), (values, round) => {
        const given = values.flatMap((value, index) =>
          value === null ? [] : [[asks[index]?.[0] ?? '', value] as const],
        );
        const found = reckon(calculation, { ...Object.fromEntries(given), round });
        if (found.ok)
          for (const line of found.value.working)
            assert.ok(line.result.is.kind !== 'quantity' || line.result.is.value.d > 0);
      }),
      runs(600),
    );
  }
});

test('[RK8] an input of a million digits is refused, not worked', () => {
  const long = '9'.repeat(1_000_000);
  for (const calculation of CALCULATIONS.slice(0, 8)) {
    const [key = ''] = Object.keys(calculation.asks);
    const found = reckon(calculation, { [key]: long, [long.slice(0, 10_000)]: '1' });
    assert.ok(!found.ok);
  }
});

test('[RK9] rate and volume invert each other, and a volume lasts its time', () => {
  fc.assert(
    fc.property(between(1, 150), between(1, 24), (r, t) => {
      const V = exactly('volume', { rate: r, hours: t }, 'volumeMl');
      same(exactly('rate', { volume: raw(V), hours: t }, 'rateMlPerHour'), exact(r), 'rate');
      same(exactly('run-out', { volume: raw(V), rate: r }, 'hours'), exact(t), 'run-out');
    }),
    runs(2000),
  );
});

test('[RK9] the volume for a goal delivers the goal', () => {
  fc.assert(
    fc.property(between(800, 3000), between(1, 2), between(30, 90), (E, e, p) => {
      const V = exactly('volume-for-energy', { goal: E, energyKcalPerMl: e }, 'volumeMl');
      same(exactly('delivered', { volume: raw(V), energyKcalPerMl: e }, 'energyKcal'), exact(E), 'energy');
      const P = exactly('delivered', { volume: raw(V), proteinGPerL: p }, 'proteinG');
      same(exactly('volume-for-protein', { proteinG: raw(P), proteinGPerL: p }, 'volumeMl'), V, 'protein');
    }),
    runs(1000),
  );
});

test('[RK9] formula and water make the total, from whichever is given, and the strength comes back', () => {
  const strengths = fc.constantFrom('1/4', '1/3', '1/2', '2/3', '3/4', '0.8', '99 %');
  fc.assert(
    fc.property(between(10, 5000), strengths, (T, strength) => {
      const give = (from: Record<string, Raw>, key: string) =>
        exactly('dilution', { strength, ...from }, key);
      const [F, W] = [give({ total: T }, 'formulaMl'), give({ total: T }, 'waterMl')];
      same(plus(F, W), exact(T), 'parts');
      same(give({ formula: raw(F) }, 'totalMl'), exact(T), 'from formula');
      same(give({ waterMl: raw(W) }, 'totalMl'), exact(T), 'from water');
      same(give({ cans: 2, canMl: raw(times(F, { n: 1n, d: 2n })) }, 'totalMl'), exact(T), 'from cans');
      const percent = exactly('strength-of', { formula: raw(F), water: raw(W) }, 'strengthPercent');
      same(times(percent, exact(T)), times(F, of(100)), 'strength');
    }),
    runs(1000),
  );
});

test('[RK9] a recipe that is asked for comes to what was asked', () => {
  fc.assert(
    fc.property(between(50, 1000), between(0.5, 1), between(4, 6), between(0.5, 0.8), (T, e, k, d) => {
      const asked = { total: T, wanted: e, energyKcalPerG: k, displacementMlPerG: d };
      const [G, W] = [exactly('powder-for', asked, 'powderG'), exactly('powder-for', asked, 'waterMl')];
      const made = { water: raw(W), powderG: raw(G), energyKcalPerG: k, displacementMlPerG: d };
      same(exactly('powder', made, 'totalMl'), exact(T), 'powder volume');
      same(exactly('powder', made, 'energyKcalPerMl'), exact(e), 'powder density');
      const from = { density: '40 kcal/oz', wanted: e, total: T };
      const [C, water] = [
        exactly('concentrate-for', from, 'concentrateMl'),
        exactly('concentrate-for', from, 'waterMl'),
      ];
      const mixed = { concentrateMl: raw(C), waterMl: raw(water), energyKcalPerMl: '40 kcal/oz' };
      same(exactly('concentrate', mixed, 'energyKcalPerMl'), exact(e), 'concentrate');
    }),
    runs(500),
  );
});

test('[RK9] further pairs invert: drops, per kg, nitrogen, percentages, osmolality', () => {
  fc.assert(
    fc.property(between(5, 300), between(1, 4), (a, W) => {
      const drops = exactly('drip-rate', { rate: a, dropFactor: 20 }, 'exactDropsPerMinute');
      same(
        exactly('rate-from-drops', { drops: raw(drops), dropFactor: 20 }, 'rateMlPerHour'),
        exact(a),
        'drops',
      );
      const hourly = exactly('per-day-to-per-hour', { mlPerKgPerDay: a }, 'rateMlPerKgPerHour');
      same(
        exactly('per-day-to-per-hour', { mlPerKgPerHour: raw(hourly) }, 'volumeMlPerKg'),
        exact(a),
        'per kg',
      );
      const V = exactly('infant-feed', { weight: W, mlPerKg: a }, 'volumeMl');
      same(exactly('infant-per-kg', { weight: W, volume: raw(V) }, 'volumeMlPerKg'), exact(a), 'infant');
      const N = exactly('nitrogen', { proteinG: a }, 'nitrogenG');
      same(exactly('nitrogen', { nitrogenG: raw(N) }, 'proteinG'), exact(a), 'nitrogen');
      const p = exactly('percentage', { part: a, of: 400 }, 'percent');
      same(exactly('percentage', { of: 400, percent: raw(p) }, 'part'), exact(a), 'part');
      same(exactly('percentage', { part: a, percent: raw(p) }, 'whole'), of(400), 'whole');
      const water = exactly('water-for-osmolality', { volume: W, osmolality: 3000, wanted: a }, 'waterMl');
      same(
        exactly('osmolality', { osmolality: 3000, volume: W, water: raw(water) }, 'osmolalityMosmPerKg'),
        exact(a),
        'osmolality',
      );
    }),
    runs(1000),
  );
});

/** Twice the input is twice the result. */
const SCALES: readonly (readonly [name: string, key: string, input: string, rest: Record<string, Raw>])[] = [
  ['rate', 'rateMlPerHour', 'volume', { hours: 20 }],
  ['delivered', 'energyKcal', 'volume', { energyKcalPerMl: '1.2' }],
  ['delivered', 'energyKcal', 'energyKcalPerMl', { volume: 1000 }],
  ['volume-for-energy', 'volumeMl', 'goal', { energyKcalPerMl: '1.2' }],
  ['bolus', 'bolusMl', 'volume', { feeds: 5 }],
  ['delivered-by-containers', 'energyKcal', 'cans', { kcal_per_can: 250 }],
  ['energy-per-kg', 'energyKcal', 'weight', { kcal_per_kg: 25 }],
  ['protein-per-kg', 'proteinG', 'weight', { g_per_kg: '1.2' }],
  ['fluid-per-kg', 'lowMl', 'weight', { fluidMlPerKg: 30 }],
  ['fluid-per-area', 'lowMl', 'bsa', {}],
  ['refeeding-start', 'niceCeilingKcal', 'weight', {}],
  ['bmi', 'bmiKgPerM2', 'weight', { height: 170 }],
  ['drip-rate', 'exactDropsPerMinute', 'rate', { dropFactor: 20 }],
  ['infant-feed', 'volumeMl', 'mlPerKg', { weight: '2.2' }],
  ['nitrogen', 'nitrogenG', 'proteinG', {}],
];

test('[RK9] what is proportional scales', () => {
  for (const [name, key, input, rest] of SCALES) {
    const [least, most] =
      input === 'bsa'
        ? [0.2, 1.5]
        : input === 'energyKcalPerMl'
          ? [0.2, 1.9]
          : input === 'cans'
            ? [0.5, 20]
            : [20, 100];
    fc.assert(
      fc.property(between(least, most), (a) => {
        const once = exactly(name, { ...rest, [input]: a }, key);
        const twice = exactly(name, { ...rest, [input]: raw(times(of(2), exact(a))) }, key);
        same(times(of(2), once), twice, `${name}.${key} in ${input}`);
      }),
      runs(200),
    );
  }
});

const PERSON = { sex: 'female', weight: 70, height: 165, age: 50 };
/** More of the input is more of the result, or less of it. */
const GROWS: readonly (readonly [
  name: string,
  key: string,
  input: string,
  sign: 1 | -1,
  rest: Record<string, Raw>,
  range: readonly [number, number],
])[] = [
  ['mifflin-st-jeor', 'restingKcal', 'weight', 1, PERSON, [40, 150]],
  ['mifflin-st-jeor', 'restingKcal', 'height', 1, PERSON, [140, 200]],
  ['mifflin-st-jeor', 'restingKcal', 'age', -1, PERSON, [18, 100]],
  ['harris-benedict', 'restingKcal', 'weight', 1, PERSON, [40, 150]],
  ['harris-benedict', 'restingKcal', 'age', -1, PERSON, [18, 100]],
  ['penn-state', 'energyKcal', 've', 1, { ...PERSON, tmax: 38 }, [4, 30]],
  ['penn-state', 'energyKcal', 'tmax', 1, { ...PERSON, ve: 9 }, [36, 42]],
  ['schofield', 'restingKcal', 'weight', 1, { sex: 'male', age: 5 }, [10, 40]],
  ['who-basal', 'restingKcal', 'weight', 1, { sex: 'female', age: 70 }, [40, 100]],
  ['fao-who-unu', 'energyKcal', 'weight', 1, { sex: 'female' }, [8, 60]],
  ['holliday-segar', 'fluidMl', 'weight', 1, {}, [3, 70]],
  ['holliday-segar', 'rateMlPerHour', 'weight', 1, {}, [3, 70]],
  ['body-surface', 'surfaceM2', 'weight', 1, { height: 120 }, [10, 80]],
  ['ideal-weight', 'idealWeightKg', 'height', 1, { sex: 'male' }, [153, 200]],
  ['adjusted-weight', 'adjustedWeightKg', 'weight', 1, { sex: 'male', height: 170 }, [70, 200]],
  ['bmi', 'bmiKgPerM2', 'height', -1, { weight: 70 }, [120, 200]],
  ['run-out', 'hours', 'rate', -1, { volume: 1000 }, [10, 150]],
  ['catch-up', 'neededRateMlPerHour', 'received', -1, { goal: 2000, hoursLeft: 10 }, [0, 1900]],
  ['free-water-deficit', 'deficitL', 'na', 1, { weight: 70, sex: 'male' }, [141, 180]],
  ['nitrogen-balance', 'balanceG', 'uun', -1, { protein: 90 }, [1, 30]],
  ['renal-solute-load', 'loadMosm', 'protein', 1, { na: 8, k: 18, cl: 12, phosphorus: 310 }, [5, 50]],
];

test('[RK9] what must grow grows, and what must fall falls', () => {
  for (const [name, key, input, sign, rest, [least, most]] of GROWS) {
    fc.assert(
      fc.property(between(least, most), between(least, most), (a, b) => {
        fc.pre(less(exact(a), exact(b)));
        const [low, high] = [a, b].map((one) => exactly(name, { ...rest, [input]: one }, key));
        assert.equal(
          compare(high as Exact, low as Exact),
          sign,
          `${name}.${key} in ${input}: ${toDouble(exact(a))} and ${toDouble(exact(b))}`,
        );
      }),
      runs(300),
    );
  }
});

test('[RK9] the steps of Holliday and Segar meet at 10 and 20 kg', () => {
  const at = (weight: string) => shows('holliday-segar', { weight, round: '0.01' });
  assert.deepEqual([at('10').fluidMl, at('20').fluidMl], [1000, 1500]);
  assert.deepEqual([at('10').rateMlPerHour, at('20').rateMlPerHour], [40, 60]);
  assert.deepEqual([at('10.01').fluidMl, at('20.01').fluidMl], [1000.5, 1500.2]);
});
