import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { mlPerHour, type Rate } from '@feedwright/core/base/volume';
import type { OrderDocument } from '@feedwright/core/order/document';
import type { Policy } from '@feedwright/core/policy/policy';
import { judged, lines, orderWith, policyOf, SILENT } from './example.ts';

type Regimen = NonNullable<OrderDocument['regimen']>;

const WHOLE_STEPS = policyOf({ 'pump.rate-step': mlPerHour(1) as Rate });

const found = (regimen: Regimen, policy: Policy = WHOLE_STEPS, more: Partial<OrderDocument> = {}) =>
  judged(orderWith({ regimen, ...more }), { policy }).filter((one) =>
    ['OR26', 'OR27', 'OR51'].includes(one.rule),
  );
const codes = (...args: Parameters<typeof found>) =>
  found(...args).map((one) => `${one.code.replace('order/', '')} ${one.data.what}`);

const cyclic = (rateMlPerHour: number, volumeMl: number, more: object = {}): Regimen => ({
  kind: 'cyclic',
  from: '20:00',
  until: '10:00',
  rateMlPerHour,
  volumeMl,
  ...more,
});

test('[OR26, OR51] cyclic with rate and volume: what the window gives beside what is to be given', () => {
  // 14 h. 1200 mL are 85.71 mL/h: a prescriber writes 85 or 86.
  assert.deepEqual(codes(cyclic(100, 1_400)), []);
  assert.deepEqual(codes(cyclic(86, 1_200)), [], '4 mL too many is the rounding of the rate');
  assert.deepEqual(codes(cyclic(85, 1_200)), ['short-by-rounding window']);
  assert.deepEqual(codes(cyclic(85, 1_204)), ['short-by-rounding window'], '14 mL: one step for 14 h');
  assert.deepEqual(codes(cyclic(85, 1_204.01)), ['amounts-contradict window']);
  assert.deepEqual(codes(cyclic(150, 1_200)), ['done-early window']);
  const [early] = found(cyclic(150, 1_200));
  assert.deepEqual(early?.data.earlyHours, fraction(6));
  const [short] = found(cyclic(50, 1_200));
  assert.deepEqual(
    [short?.level, short?.data.short, short?.data.value],
    ['stop', fraction(500), fraction(700)],
  );
});

test('[OR26] without local policy on the pump’s step no shortfall passes as rounding, and the key is named', () => {
  const problems = judged(orderWith({ regimen: cyclic(85, 1_200) }));
  assert.deepEqual(
    lines(problems).filter((line) => /OR26|pump/.test(line)),
    [
      'stop OR26 order/amounts-contradict regimen.rateMlPerHour',
      'note OR40 order/policy-silent policy.pump.rate-step',
    ],
  );
});

test('[OR26] a strength counts: rate of mixture beside volume of formula', () => {
  const feed = { id: 'standard', strength: '1/2' };
  // 100 mL/h of mixture for 14 h hold 700 mL of formula.
  assert.deepEqual(codes(cyclic(100, 700, { volumeOf: 'formula' }), WHOLE_STEPS, { feed }), []);
  assert.deepEqual(codes(cyclic(100, 715, { volumeOf: 'formula' }), WHOLE_STEPS, { feed }), [
    'amounts-contradict window',
  ]);
});

const targeted = (
  volumeMlPerDay: number,
  baseRateMlPerHour: number,
  mostRateMlPerHour?: number,
): Regimen => ({
  kind: 'volume-targeted',
  volumeMlPerDay,
  baseRateMlPerHour,
  ...(mostRateMlPerHour === undefined ? {} : { mostRateMlPerHour }),
});

/** S40 (read): 50 mL/h rewritten as 1200 mL/24 h. S37 (read): made up at no more than 150 mL/h. */
test('[OR26] volume-targeted: base rate, most and volume of the day fit each other', () => {
  assert.deepEqual(codes(targeted(1_200, 50, 150)), []);
  assert.deepEqual(codes(targeted(1_224, 50)), ['short-by-rounding base']);
  assert.deepEqual(codes(targeted(1_225, 50)), ['amounts-contradict base']);
  assert.deepEqual(codes(targeted(1_200, 52)), ['done-early base']);
  assert.deepEqual(codes(targeted(1_200, 50, 50)), []);
  assert.deepEqual(codes(targeted(1_200, 50, 49)), [
    'amounts-contradict base-over-most',
    'amounts-contradict most-too-slow',
  ]);
  assert.deepEqual(codes(targeted(1_220, 50.5, 50.6)), [
    'amounts-contradict most-too-slow',
    'short-by-rounding base',
  ]);
});

test('[OR26] while it steps up, the goal has to reach the volume, and the base rate need not yet', () => {
  const advance = (goalMlPerHour: number) => ({
    startMlPerHour: 25,
    stepMlPerHour: 25,
    everyHours: 8,
    goalMlPerHour,
  });
  const up = (goal: number): Regimen => ({ ...targeted(1_800, 25), advance: advance(goal) }) as Regimen;
  assert.deepEqual(codes(up(75)), []);
  assert.deepEqual(codes(up(73)), ['amounts-contradict goal']);
  assert.deepEqual(codes(cyclic(50, 1_400, { advance: advance(100) })), []);
  assert.deepEqual(codes(cyclic(50, 1_400, { advance: advance(98) })), ['amounts-contradict goal']);
});

test('[OR26] a daily maximum under what the regimen gives stops, for every regimen', () => {
  const regimens: readonly (readonly [Regimen, number, Partial<OrderDocument>])[] = [
    [{ kind: 'continuous', rateMlPerHour: 75 }, 1_800, {}],
    [{ kind: 'continuous', rateMlPerHour: 75, perDay: { from: '06:00', hours: 20 } }, 1_500, {}],
    [{ kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 80 }, 800, {}],
    [{ kind: 'cyclic', from: '20:00', until: '06:00', volumeMl: 750 }, 750, {}],
    [{ kind: 'intermittent', volumeMl: 250, times: ['08:00', '12:00'], minutes: 30, by: 'pump' }, 500, {}],
    [
      {
        kind: 'bolus',
        volumeMl: 250,
        times: ['08:00', '12:00'],
        minutes: 20,
        meals: [{ at: '18:00', ifEatenLessThan: '1/2' }],
      },
      750,
      { method: 'syringe' },
    ],
    [targeted(1_200, 50), 1_200, {}],
  ];
  for (const [regimen, gives, more] of regimens) {
    const most = (mostVolumeMlPerDay: number) => codes(regimen, WHOLE_STEPS, { ...more, mostVolumeMlPerDay });
    assert.deepEqual(most(gives), [], regimen.kind);
    assert.deepEqual(most(gives - 0.01), ['amounts-contradict over-day-most'], regimen.kind);
  }
});

test('[OR26] a daily maximum under the goal of the steps stops too', () => {
  const advance = { startMlPerHour: 25, stepMlPerHour: 25, everyHours: 8, goalMlPerHour: 75 };
  const regimen = { kind: 'continuous', rateMlPerHour: 25, advance } as const;
  assert.deepEqual(codes(regimen, SILENT, { mostVolumeMlPerDay: 1_800 }), []);
  assert.deepEqual(codes(regimen, SILENT, { mostVolumeMlPerDay: 1_799 }), [
    'amounts-contradict goal-over-day-most',
  ]);
});

test('[OR27] no rate of the order is over its own maximum: said, led to, making up, the goal of its steps', () => {
  const over = (regimen: Regimen, mostRateMlPerHour: number, more: Partial<OrderDocument> = {}) =>
    codes(regimen, WHOLE_STEPS, { mostRateMlPerHour, ...more }).filter((line) =>
      line.startsWith('over-own-rate'),
    );
  assert.deepEqual(over({ kind: 'continuous', rateMlPerHour: 75 }, 75), []);
  assert.deepEqual(over({ kind: 'continuous', rateMlPerHour: 75.01 }, 75), ['over-own-rate ordered']);
  const half = { feed: { id: 'standard', strength: '1/2' } };
  assert.deepEqual(over({ kind: 'continuous', rateMlPerHour: 40, of: 'formula' }, 80, half), []);
  assert.deepEqual(over({ kind: 'continuous', rateMlPerHour: 40, of: 'formula' }, 79, half), [
    'over-own-rate ordered',
  ]);
  const window = { kind: 'cyclic', from: '20:00', until: '06:00', volumeMl: 751 } as const;
  assert.deepEqual(over(window, 75), ['over-own-rate from-volume']);
  assert.deepEqual(over(targeted(1_200, 50, 150), 120), ['over-own-rate most']);
  const advance = { startMlPerHour: 25, stepMlPerHour: 25, everyHours: 8, goalMlPerHour: 80 };
  assert.deepEqual(over({ kind: 'continuous', rateMlPerHour: 25, advance }, 75), ['over-own-rate goal']);
  const portion: Regimen = { kind: 'intermittent', volumeMl: 101, times: ['08:00'], minutes: 60, by: 'pump' };
  assert.deepEqual(over(portion, 100), ['over-own-rate from-volume']);
  assert.deepEqual(over({ ...portion, by: 'gravity' }, 100, { method: 'gravity' }), []);
});

test('[OR58] a rate of formula that is no step of the pump as mixture is set down to one, and what that leaves is said', () => {
  // By hand: 50 mL/h of formula at ¾ strength are 66⅔ mL/h of mixture; set in whole mL/h that is 66, ⅔ less.
  const threeQuarters = { feed: { id: 'standard', strength: '3/4' } };
  const said = (rateMlPerHour: number, more: Partial<OrderDocument>, of: 'formula' | 'mixture' = 'mixture') =>
    judged(orderWith({ regimen: { kind: 'continuous', rateMlPerHour, of }, ...more }), {
      policy: WHOLE_STEPS,
    }).filter((one) => one.rule === 'OR58');
  const [note] = said(50, threeQuarters, 'formula');
  assert.equal(note?.level, 'note');
  assert.deepEqual(
    [note?.data.value, note?.data.limit, note?.data.less],
    [
      { n: 200, d: 3 },
      { n: 66, d: 1 },
      { n: 2, d: 3 },
    ],
  );
  assert.deepEqual(said(48, threeQuarters, 'formula'), [], '48 / ¾ is 64');
  assert.deepEqual(said(66.5, threeQuarters), [], 'what is ordered as mixture stays as it is ordered');
});
