/** Is the time to empty what closed forms and a general integrator say, and what does topping up change? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  curve,
  driving,
  flowWith,
  lasts,
  lastsInPours,
  pours,
  type Run,
  type Vessel,
} from '@feedwright/core/reckon/gravity/emptying';
import { flowUnder, GRAVITY } from '@feedwright/core/reckon/gravity/flow';
import { type Fluid, water } from '@feedwright/core/reckon/gravity/fluid';
import { lineOf, type Reach } from '@feedwright/core/reckon/gravity/loss';
import fc from 'fast-check';
import { rk45 } from '../../../bench/gravity/rk45.ts';
import { runs } from '../runs.ts';

const near = (found: number, expected: number, share: number, what = ''): void =>
  assert.ok(
    Math.abs(found / expected - 1) <= share,
    `${what} ${found}, expected ${expected} within ${share}`,
  );

const BARREL: Vessel = { volume: 60e-6, area: (Math.PI / 4) * 0.0267 ** 2, height: 0.4 };

const run = (fluid: Fluid, reaches: readonly Reach[], back = 980): Run => ({
  reaches,
  line: lineOf(fluid, reaches),
  back,
  factor: 1,
});

function seconds(of: Run, vessel: Vessel, from = vessel.volume, to = 0): number {
  const found = lasts(of, vessel, from, to);
  assert.ok(found.ends);
  assert.ok(found.error >= 0 && found.error <= 1e-5 * found.seconds, `${found.error}`);
  return found.seconds;
}

const TUBE = { bore: 2.9e-3, length: 1.1 };

test('[GR4] a thick feed falls away exponentially', () => {
  // τ = 128 μ L A / (π ρ g d⁴), the ends left out: 2 Pa·s makes them a millionth.
  const [viscosity, density] = [2, 1095];
  const tau = (128 * viscosity * TUBE.length * BARREL.area) / (Math.PI * density * GRAVITY * TUBE.bore ** 4);
  const one = run({ density, consistency: viscosity, index: 1 }, [TUBE]);
  const top = BARREL.height - one.back / (density * GRAVITY);
  near(seconds(one, BARREL), tau * Math.log(top / (top - BARREL.volume / BARREL.area)), 1e-5);
});

test('[GR4] a laminar feed with its ends empties as the closed form says, within 0.5 %', () => {
  // a Q + b Q² = ρ g H_eff; t = A/(ρg) [a ln(Q₀/Q₁) + 2b (Q₀ − Q₁)].
  for (const mPas of [80, 25, 8, 4]) {
    const [viscosity, density] = [mPas * 1e-3, 1050];
    const area = (Math.PI / 4) * TUBE.bore ** 2;
    const a = (128 * viscosity * TUBE.length) / (Math.PI * TUBE.bore ** 4);
    const b = (2.28 * density) / (2 * area ** 2);
    const one = run({ density, consistency: viscosity, index: 1 }, [TUBE]);
    const q = (volume: number) => {
      const p = density * GRAVITY * (BARREL.height - (BARREL.volume - volume) / BARREL.area) - one.back;
      return (-a + Math.sqrt(a * a + 4 * b * p)) / (2 * b);
    };
    const [q0, q1] = [q(BARREL.volume), q(0)];
    const t = (BARREL.area / (density * GRAVITY)) * (a * Math.log(q0 / q1) + 2 * b * (q0 - q1));
    near(seconds(one, BARREL), t, 0.005, `${mPas} mPa·s`);
    near(seconds(one, BARREL), t, 1e-5, `${mPas} mPa·s, sharper`);
  }
});

const setups: readonly (readonly [string, Run, Vessel])[] = [
  ['feed', run({ density: 1035, consistency: 0.008, index: 1 }, [TUBE]), BARREL],
  ['water, which is not laminar', run(water(20), [{ bore: 4e-3, length: 0.25 }], 500), BARREL],
  [
    'a feed that thins',
    run({ density: 1045, consistency: 2, index: 0.45 }, [{ bore: 4.2e-3, length: 0.25 }]),
    BARREL,
  ],
  [
    'a bag through set and tube',
    run({ density: 1065, consistency: 0.025, index: 1 }, [{ bore: 3.5e-3, length: 1.8 }, TUBE]),
    { volume: 500e-6, area: 500e-6 / 0.15, height: 0.9 },
  ],
];

test('[GR4] a general integrator comes to the same time', () => {
  for (const [what, one, vessel] of setups) {
    const t = seconds(one, vessel, vessel.volume, vessel.volume / 10);
    const left = rk45(
      (_, volume) => -flowUnder(one.line, driving(one, vessel, volume)) * one.factor,
      [0, t],
      vessel.volume,
      1e-9,
    );
    near(left, vessel.volume / 10, 2e-5, what);
  }
});

test('[GR4] the level’s curve ends where and when the sum does, and never rises', () => {
  for (const [what, one, vessel] of setups) {
    const points = curve(one, vessel, vessel.volume, 12);
    assert.equal(points.length, 13, what);
    near(points.at(-1)?.seconds ?? 0, seconds(one, vessel), 1e-6, what);
    for (const [at, point] of points.entries()) {
      const before = points[at - 1];
      assert.ok(before === undefined || (before.volume > point.volume && before.flow >= point.flow));
    }
  }
});

test('[GR4] what stops by itself says how much stays, where drive and stomach balance', () => {
  const low: Vessel = { ...BARREL, height: 0.15 };
  const one = run({ density: 1035, consistency: 0.008, index: 1 }, [TUBE]);
  const found = lasts(one, low, low.volume, 0);
  assert.ok(!found.ends);
  assert.ok(found.left > 0 && found.left < low.volume);
  assert.ok(Math.abs(driving(one, low, found.left)) < 1e-6);
  assert.equal(flowWith(one, low, found.left * 0.99), 0);
  assert.ok(curve(one, low, low.volume, 12).length < 13);
  const under = lasts(one, { ...BARREL, height: 0.05 }, BARREL.volume, 0);
  assert.deepEqual(under, { ends: false, left: BARREL.volume });
});

test('[GR4] parts of a pour last as long as the whole', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-6, max: 59e-6, noNaN: true }),
      fc.nat(setups.length - 2),
      (cut, which) => {
        const [, one, vessel] = setups[which] ?? setups[0]!;
        near(
          seconds(one, vessel, vessel.volume, cut) + seconds(one, vessel, cut, 0),
          seconds(one, vessel),
          2e-6,
        );
      },
    ),
    runs(1000),
  );
});

test('[GR7] topping up pours in all of the feed and nothing more', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 2000 }), fc.integer({ min: 0, max: 59 }), (totalMl, topUpMl) => {
      const stretches = pours(totalMl * 1e-6, BARREL, topUpMl * 1e-6);
      const ran = stretches.reduce((sum, { from, to }) => sum + from - to, 0);
      near(ran, totalMl * 1e-6, 1e-9);
      for (const { from, to } of stretches)
        assert.ok(from <= BARREL.volume * (1 + 1e-12) && to >= 0 && to <= from);
      assert.equal(stretches.at(-1)?.to, 0);
    }),
    runs(2000),
  );
});

test('[GR7] topping up early keeps the rate: sooner done than pour by pour', () => {
  const one = run({ density: 1065, consistency: 0.025, index: 1 }, [TUBE]);
  const time = (topUp: number): number => {
    const found = lastsInPours(one, BARREL, pours(240e-6, BARREL, topUp));
    assert.ok(found.ends);
    return found.seconds;
  };
  near(time(0), 4 * seconds(one, BARREL), 1e-9);
  assert.ok(time(40e-6) < time(20e-6) && time(20e-6) < time(0));
  // Never faster than the full barrel runs.
  assert.ok(time(40e-6) > 240e-6 / flowWith(one, BARREL, BARREL.volume));
});

test('[GR7] where it stops between two fillings, what waits is counted as left', () => {
  const low: Vessel = { ...BARREL, height: 0.15 };
  const one = run({ density: 1035, consistency: 0.008, index: 1 }, [TUBE]);
  const alone = lasts(one, low, low.volume, 0);
  const found = lastsInPours(one, low, pours(240e-6, low, 0));
  assert.ok(!found.ends && !alone.ends);
  near(found.left, alone.left + 180e-6, 1e-9);
});
