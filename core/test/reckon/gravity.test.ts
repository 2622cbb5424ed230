/** Is the whole answer what can be worked by hand, refused where it must be, and said in words? */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { approximately } from '@feedwright/core/base/fraction';
import { minutes } from '@feedwright/core/base/instant';
import { GRAVITY_ASKS, GRAVITY_EXAMPLE } from '@feedwright/core/reckon/gravity/asks';
import { twoFigures } from '@feedwright/core/reckon/gravity/figures';
import type { Least } from '@feedwright/core/reckon/gravity/findings';
import { type GravityFlow, gravityOf } from '@feedwright/core/reckon/gravity/gravity';
import { HYDRAULICS } from '@feedwright/core/reckon/gravity/sources';
import { boreOf } from '@feedwright/core/reckon/gravity/tube-bore';
import {
  ASSUMPTIONS,
  BEDSIDE,
  FINDINGS,
  GRAVITY_ISSUES,
  YES_OR_NO,
} from '@feedwright/core/screen/gravity/english';
import { gravityJson } from '@feedwright/core/screen/gravity/json';
import { gravityLines } from '@feedwright/core/screen/gravity/text';
import fc from 'fast-check';
import {
  compared,
  errorOf,
  PAGE,
  page,
  SOURCES,
  sourcesWith,
  throughEightFr,
} from '../../../tools/gravity.ts';
import { runs } from '../runs.ts';

type Inputs = Readonly<Record<string, string>>;

const FIFTEEN: Least = { lasts: minutes(15), basis: { kind: 'arithmetic' } };
const NONE = (): Least => null;

function flow(inputs: Inputs, least: Least = null): GravityFlow {
  const found = gravityOf({ ...GRAVITY_EXAMPLE, ...inputs }, () => least);
  assert.ok(found.ok, JSON.stringify(found));
  assert.ok(found.value.kind === 'flow');
  return found.value;
}
function codes(inputs: Inputs, without: readonly string[] = []): readonly string[] {
  const given = Object.fromEntries(
    Object.entries({ ...GRAVITY_EXAMPLE, ...inputs }).filter(([key]) => !without.includes(key)),
  );
  const found = gravityOf(given, NONE);
  assert.ok(!found.ok);
  return found.issues.map((one) => one.code);
}
const number = (value: { n: number; d: number } | null): number =>
  value === null ? Number.POSITIVE_INFINITY : approximately(value);
const found = (of: GravityFlow): readonly string[] => of.findings.map(({ code }) => code);

test('[GR9] the flow is what Poiseuille and Hagenbach give by hand, to its two figures', () => {
  // No connector: one laminar tube, so a Q + b Q² = ρ g H − P has a closed form.
  const { flow: q } = flow({
    connector: 'none',
    feed: 'measured',
    bore: '2.9 mm',
    viscosity: '25 mPa.s',
    stomach: '10 cmH2O',
  });
  const [density, bore, length, viscosity] = [1050, 2.9e-3, 1.1, 0.025];
  const a = (128 * viscosity * length) / (Math.PI * bore ** 4);
  const b = (2.28 * density) / (2 * ((Math.PI / 4) * bore ** 2) ** 2);
  const p = density * 9.80665 * 0.45 - 980.665;
  const byHand = ((-a + Math.sqrt(a * a + 4 * b * p)) / (2 * b)) * 6e7;
  assert.equal(number(q.mid), Number(byHand.toPrecision(2)));
  assert.ok(number(q.low) < byHand && number(q.high) > byHand);
  assert.equal(q.working.result.is.kind === 'quantity' && q.working.result.is.value, q.mid);
});

test('[GR9] two figures, whatever the size', () => {
  for (const [value, shown] of [
    [12.49, 12],
    [0.0456, 0.046],
    [1234, 1200],
    [0, 0],
    [-3.14, -3.1],
  ] as const)
    assert.equal(number(twoFigures(value)), shown);
  assert.equal(twoFigures(Number.POSITIVE_INFINITY), null);
  assert.equal(twoFigures(Number.NaN), null);
});

test('[GR9] priming is the volume of the tubes; standing still is the stomach’s pressure as a height', () => {
  const one = flow({
    connector: 'none',
    feed: 'measured',
    bore: '3 mm',
    length: '150 cm',
    viscosity: '25 mPa.s',
    stomach: '10.5 cmH2O',
  });
  // 0.785 × 3² × 1.5 m = 10.6 mL, common practice; 10.5 cmH₂O under a feed of 1050 kg/m³ is 10 cm.
  assert.equal(number(one.priming.mid), 11);
  assert.equal(number(one.standsAt.mid), 10);
});

test('[GR9] the stomach’s pressure goes by position, is a band, and a measured one moves only with the breath', () => {
  const band = (inputs: Inputs) => {
    const { low, mid, high } = flow({ feed: 'measured', viscosity: '25', ...inputs }).standsAt;
    return [low, mid, high].map((value) => number(value) * 1.05);
  };
  const near = (values: readonly number[], expected: readonly number[]) => {
    for (const [at, value] of values.entries())
      assert.ok(Math.abs(value - (expected[at] ?? 0)) < 0.6, `${values}`);
  };
  // 4 cmH₂O as a deviation, 6.6 for 90 of 100; breathing 2 to 5 either way (common practice).
  near(band({ position: 'flat' }), [3.4, 10, 16.6]);
  near(band({ stomach: '10 cmH2O' }), [6, 10, 14]);
  near(band({ stomach: '10 mmHg' }), [9.6, 13.6, 17.6]);
  // Medians of H15: 2 cmH₂O more at 30°, 4.5 more at 45°.
  near(band({ position: '30' }).slice(1, 2), [12]);
  near(band({ position: '45' }).slice(1, 2), [14.5]);
});

test('[GR9] what the working says was put in gives, by hand, the flow it shows; after a timed pour too', () => {
  for (const timed of [{}, { timed: '8 min' }]) {
    const { working } = flow({ connector: 'none', ...timed }).flow;
    const put = new Map(
      working.inputs.map(({ symbol, is }) => [symbol, is.kind === 'quantity' ? number(is.value) : 0]),
    );
    const of = (symbol: string) => put.get(symbol) ?? Number.NaN;
    const [density, bore, length] = [of('ρ'), of('d tube') / 1e3, of('L tube') / 100];
    const a = (128 * (of('K') / 1e3) * length) / (Math.PI * bore ** 4);
    const b = (2.28 * density) / (2 * ((Math.PI / 4) * bore ** 2) ** 2);
    const p = density * 9.80665 * (of('H') / 100) - of('P') * 98.0665;
    const byHand = ((-a + Math.sqrt(a * a + 4 * b * p)) / (2 * b)) * 6e7 * (put.get('c') ?? 1);
    const shown = working.result.is.kind === 'quantity' ? number(working.result.is.value) : Number.NaN;
    assert.ok(Math.abs(byHand / shown - 1) < 0.051, `${byHand} against ${shown}`);
    assert.equal(put.has('c'), 'timed' in timed);
  }
});

test('[GR9] raising by 10 cm gains 10 over the height that drives, for a laminar feed', () => {
  const { higher } = flow({
    connector: 'none',
    viscosity: '80 mPa.s',
    stomach: '10.5 cmH2O',
    height: '30 cm',
  });
  assert.ok(Math.abs(number(higher.mid) - 50) < 0.6);
  assert.ok(number(higher.low) < 45 && number(higher.high) > 60);
});

test('[GR9] the height for a wanted time takes that time', () => {
  const wanted = flow({ feedMl: '240', wanted: '20 min' });
  const height = wanted.heightFor;
  assert.ok(height?.mid);
  const there = flow({ feedMl: '240', height: `${number(height.mid)} cm` });
  assert.ok(Math.abs(number(there.time.mid) / 20 - 1) < 0.06, `${number(there.time.mid)}`);
  assert.ok(number(height.low) < number(height.mid) && number(height.mid) < number(height.high));
  const never = flow({ feedMl: '240', wanted: '1 min' }).heightFor;
  assert.equal(never?.mid, null);
});

test('[GR9] a feed that does not fill the barrel stands at the height given, and needs the height that is said', () => {
  const half = flow({ feedMl: '30', wanted: '6 min' });
  // At one height the flow is one flow, however full the barrel.
  assert.deepEqual(half.flow.mid, flow({}).flow.mid);
  assert.ok(Math.abs((half.curve.mid[0]?.volume ?? 0) / 30e-6 - 1) < 1e-9);
  const there = flow({ feedMl: '30', height: `${number(half.heightFor?.mid ?? null)} cm` });
  assert.ok(Math.abs(number(there.time.mid) / 6 - 1) < 0.06, `${number(there.time.mid)}`);
});

test('[GR3] the flow against height rises from none, and is the flow at the height given', () => {
  const { byHeight, flow: q, useful } = flow({ height: '45 cm', feedMl: '240' }, FIFTEEN);
  assert.equal(byHeight[0]?.flow.high, 0);
  for (const [at, one] of byHeight.entries()) {
    const before = byHeight[at - 1]?.flow;
    assert.ok(
      !before || (one.flow.mid >= before.mid && one.flow.low >= before.low && one.flow.high >= before.high),
    );
  }
  assert.deepEqual(twoFigures(byHeight.find(({ cm }) => cm === 45)?.flow.mid ?? 0), q.mid);
  assert.ok(useful.to !== null && useful.to > useful.from);
  const top = flow({ height: `${useful.to.toFixed(2)} cm`, feedMl: '240' });
  assert.equal(number(top.time.mid), 15);
  assert.equal(flow({ feedMl: '240' }).useful.to, null);
});

test('[GR9] it is held against the least time of policy or order, and says that it is an estimate', () => {
  assert.ok(
    found(flow({ feedMl: '240', feed: '1.0', french: '16' }, FIFTEEN)).includes('faster-than-policy'),
  );
  assert.ok(found(flow({ feedMl: '240' }, FIFTEEN)).includes('may-be-faster-than-policy'));
  const slow = found(flow({ feedMl: '240', french: '8' }, FIFTEEN));
  assert.ok(!slow.some((code) => code.includes('faster')));
  assert.ok(found(flow({ feedMl: '240' })).includes('least-not-set'));
  assert.ok(found(flow({}, FIFTEEN)).includes('whole-feed-unsaid'));
  const data = { minutes: 15 };
  for (const code of ['faster-than-policy', 'may-be-faster-than-policy'])
    assert.match(FINDINGS[code]?.(data) ?? '', /15 min.*estimate/);
});

test('[GR3] below what the stomach holds up it runs back, near it it may stand', () => {
  assert.ok(found(flow({ height: '4 cm' })).includes('runs-back'));
  assert.ok(found(flow({ height: '9 cm' })).includes('stands-or-runs-back'));
  assert.ok(found(flow({ height: '15 cm' })).includes('may-stand'));
  assert.ok(!found(flow({ height: '45 cm' })).includes('may-stand'));
  assert.equal(number(flow({ height: '4 cm' }).flow.high), 0);
  assert.equal(flow({ height: '15 cm' }).time.mid, null);
});

test('[GR3] a dense feed through a thin tube is no method', () => {
  assert.ok(found(flow({ french: '8', feed: '2.0', height: '30 cm' })).includes('as-good-as-stopped'));
});

test('[GR3] plain water through the same tube runs far faster than the feed', () => {
  const one = flow({});
  assert.ok(number(one.water.mid) > 10 * number(one.flow.mid));
});

test('[GR5] a timed barrel narrows the flow, and one out of all proportion is remarked on', () => {
  const width = ({ flow: { low, high } }: GravityFlow) => number(high) / number(low);
  assert.ok(width(flow({ timed: '6 min' })) < 0.7 * width(flow({})));
  assert.ok(found(flow({ timed: '6 min' })).includes('timed'));
  assert.ok(found(flow({ timed: '90 min' })).includes('timed-slower'));
  assert.ok(found(flow({ timed: '6 s' })).includes('timed-faster'));
  assert.deepEqual(codes({ timed: '6 min', timedMl: '70' }), ['gravity/timed-too-much']);
});

test('[GR6] not offered to the newborn, nor past the stomach', () => {
  assert.deepEqual(codes({ age: '27 d' }), ['gravity/newborn']);
  assert.ok(found(flow({ age: '28 d' })).includes('infant'));
  assert.ok(!found(flow({})).includes('infant'));
  for (const tip of ['jejunal', 'duodenal', 'past-the-stomach'])
    assert.deepEqual(codes({ tip }), ['gravity/past-the-stomach']);
});

test('[GR6] a bore, a viscosity, a barrel nobody gave is asked for', () => {
  assert.deepEqual(codes({}, ['material']), ['gravity/bore-missing']);
  assert.deepEqual(codes({ french: '9' }), ['gravity/bore-unknown']);
  assert.deepEqual(codes({ feed: 'measured' }), ['gravity/viscosity-missing']);
  assert.deepEqual(codes({ feed: 'water', viscosity: '8' }), ['reckon/only-one-of']);
  assert.deepEqual(codes({ viscosity: '8', left: '2' }), ['reckon/only-one-of']);
  assert.deepEqual(codes({ viscosity: '-8' }), ['number/negative']);
  assert.deepEqual(codes({ volume: '100 mL' }), ['gravity/barrel-missing']);
  assert.deepEqual(codes({ container: 'bag', volume: '500', feedMl: '600' }), ['gravity/bag-too-small']);
  assert.deepEqual(codes({ feedMl: '240', topUp: '60' }), ['gravity/top-up-too-high']);
  assert.deepEqual(codes({}, ['age', 'height']), ['reckon/missing', 'reckon/missing']);
  assert.equal(boreOf(24, 'polyurethane'), null);
});

test('[GR6] of blended feed: perhaps, doubtful, no, or that it cannot be said', () => {
  const answer = (inputs: Inputs) => {
    const one = gravityOf({ ...GRAVITY_EXAMPLE, feed: 'blended', ...inputs }, NONE);
    assert.ok(one.ok && one.value.kind === 'yes-or-no');
    assert.doesNotMatch(
      gravityLines(one.value)
        .map(({ text }) => text)
        .join('\n'),
      /mL\/min/,
    );
    return one.value.answer;
  };
  assert.equal(answer({}), 'not-known');
  assert.equal(answer({ viscosity: '50' }), 'yes-maybe');
  assert.equal(answer({ viscosity: '300' }), 'doubtful');
  assert.equal(answer({ viscosity: '2000' }), 'no');
});

const text = fc.oneof(
  fc.constantFrom(
    '',
    '0',
    '12',
    '1.5',
    '70',
    'gastric',
    'blended',
    'water',
    '-3',
    '1,500',
    '45 cm',
    '1e9',
    'bag',
    'silicone',
    '5 cmH2O',
  ),
  fc.string({ maxLength: 12 }),
  fc.double({ min: 0, max: 3000, noNaN: true }).map((value) => value.toFixed(3)),
);
const anything = fc.dictionary(
  fc.oneof(fc.constantFrom(...Object.keys(GRAVITY_ASKS)), fc.string({ maxLength: 8 })),
  text,
);

test('[GR6] nothing put in makes it throw, and every answer can be said', () => {
  fc.assert(
    fc.property(anything, fc.boolean(), (inputs, alone) => {
      const one = gravityOf(alone ? inputs : { ...GRAVITY_EXAMPLE, ...inputs }, () => FIFTEEN);
      if (!one.ok) {
        assert.ok(one.issues.length > 0);
        return;
      }
      JSON.stringify(gravityJson(one.value));
      for (const { text: said } of gravityLines(one.value))
        assert.doesNotMatch(said, /NaN|undefined|Infinity/);
    }),
    runs(5000),
  );
});

const within = fc.record({
  french: fc.constantFrom('8', '10', '12', '14', '16'),
  material: fc.constantFrom('polyurethane', 'silicone', 'pvc'),
  length: fc.integer({ min: 2, max: 150 }).map((cm) => `${cm} cm`),
  feed: fc.constantFrom('1.0', '1.5', '2.0', 'water'),
  height: fc.integer({ min: 0, max: 150 }).map((cm) => `${cm} cm`),
  temperature: fc.integer({ min: 4, max: 38 }).map(String),
  position: fc.constantFrom('flat', '30', '45', 'raised'),
  feedMl: fc.integer({ min: 5, max: 500 }).map(String),
});

test('[GR5] low is never over the middle, nor the middle over high', () => {
  fc.assert(
    fc.property(within, (inputs) => {
      const one = flow(inputs);
      for (const { low, mid, high } of [one.flow, one.time, one.standsAt, one.priming]) {
        assert.ok(number(low) <= number(mid) && number(mid) <= number(high));
      }
    }),
    runs(2000),
  );
});

test('[GR8] the errors against what others measured are those of the page, set by set', () => {
  // Mean errors as the equations gave them when the sets were collected; a fit would make them smaller.
  const was = { D1: -7.1, D2: 24.4, D3: 38.4, D4: 2.1, D5: -6.8, D6: -5.3, D7: 3.7 };
  const sets = Map.groupBy(compared(), (row) => row.set);
  assert.deepEqual([...sets.keys()], Object.keys(was));
  for (const [name, mean] of Object.entries(was))
    assert.ok(Math.abs(errorOf(sets.get(name) ?? []).mean - mean) < 0.1, name);
  assert.equal(compared().length, 30);
});

test('[GR8] the bounds of the fibre feeds hold together for one viscosity a class', () => {
  // H23: 500 mL in over 4 h is under 2.1 mL/min, in under 2 h 5 min over 4 mL/min.
  assert.ok(throughEightFr(80, 60) < 2.1 && throughEightFr(80, 80) < 2.1);
  assert.ok(throughEightFr(15, 60) > 4 && throughEightFr(20, 80) > 4);
});

test('[GR8] docs/gravity.md and its section of docs/sources.md are current', () => {
  assert.equal(readFileSync(PAGE, 'utf8'), page(), 'run: node tools/gravity.ts');
  const sources = readFileSync(SOURCES, 'utf8');
  assert.equal(sources, sourcesWith(sources), 'run: node tools/gravity.ts');
  for (const [id, { provenance }] of Object.entries(HYDRAULICS))
    if (provenance === 'from-memory') assert.match(sources, new RegExp(`\\| ${id} \\|.*from memory`));
});

/** Every code written in the sources of this folder, so that a new one without words is seen. */
function written(pattern: RegExp): readonly string[] {
  const files = ['gravity', 'findings', 'setup', 'band', 'asks'].map((name) =>
    readFileSync(new URL(`../../src/reckon/gravity/${name}.ts`, import.meta.url), 'utf8'),
  );
  return [...new Set(files.flatMap((one) => [...one.matchAll(pattern)].map(([, code = '']) => code)))];
}

test('[GR11] whatever is found, assumed, answered or refused has words', () => {
  const findings = written(/code: '([a-z-]+)'/g);
  assert.ok(findings.length >= 9);
  for (const code of [...findings, 'timed-slower', 'timed-faster']) assert.ok(FINDINGS[code], code);
  const assumptions = written(/note\(\s*to,\s*'([a-z0-9-]+)'/g);
  assert.ok(assumptions.length >= 9);
  for (const code of [
    ...assumptions,
    'stomach-by-position',
    'stomach-given',
    'giving-set-usual',
    'extension-usual',
  ])
    assert.ok(ASSUMPTIONS[code], code);
  const issues = written(/'(gravity\/[a-z-]+)'/g);
  assert.ok(issues.length >= 9);
  for (const code of issues) assert.ok(GRAVITY_ISSUES[code], code);
  assert.equal(Object.keys(YES_OR_NO).length, 4);
});

test('[GR11] what never comes to an end is said once, without a unit', () => {
  const said = (inputs: Inputs) => gravityLines(flow(inputs)).map(({ text }) => text);
  assert.ok(said({ height: '10 cm' }).some((one) => /^ +time +stops before it is all in$/.test(one)));
  assert.ok(said({ height: '9 cm' }).some((one) => /10 cm higher +not to be said$/.test(one)));
});

test('[GR11] an answer carries its assumptions, its band and the bedside’s rules', () => {
  const said = gravityLines(flow({ setCm: '150', feedMl: '240', wanted: '20 min' }, FIFTEEN))
    .map((one) => one.text)
    .join('\n');
  for (const one of BEDSIDE) assert.ok(said.includes(one));
  assert.match(said, /flow at this height +about [\d.]+ \([\d.]+ to [\d.]+\) mL\/min/);
  assert.match(said, /guessed from its size/);
  assert.match(said, /the height is that of the surface/);
  assert.match(said, /from memory/);
  assert.match(said, /licensed practice decide/);
  assert.match(said, /ρ g H − P/);
});
