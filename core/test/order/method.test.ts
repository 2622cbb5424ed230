import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { OrderDocument } from '@feedwright/core/order/document';
import { judged, orderWith } from './example.ts';

const REGIMENS: readonly (readonly [string, NonNullable<OrderDocument['regimen']>, string])[] = [
  // by pump, gravity, syringe
  ['continuous', { kind: 'continuous', rateMlPerHour: 50 }, 'yes ask stop'],
  ['cyclic', { kind: 'cyclic', from: '20:00', until: '08:00', rateMlPerHour: 50 }, 'yes ask stop'],
  [
    'volume-targeted',
    { kind: 'volume-targeted', volumeMlPerDay: 1_200, baseRateMlPerHour: 50 },
    'yes ask stop',
  ],
  [
    'intermittent by pump',
    { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'pump' },
    'yes stop stop',
  ],
  [
    'intermittent by gravity',
    { kind: 'intermittent', volumeMl: 200, times: ['08:00'], minutes: 60, by: 'gravity' },
    'stop yes stop',
  ],
  ['bolus', { kind: 'bolus', volumeMl: 200, times: ['08:00'], minutes: 20 }, 'ask yes yes'],
];

test('[OR22, OR23] which method gives which regimen', () => {
  for (const [name, regimen, expected] of REGIMENS) {
    const verdicts = (['pump', 'gravity', 'syringe'] as const).map((method) => {
      const rules = judged(orderWith({ method, regimen })).map((one) => one.rule);
      return rules.includes('OR22') ? 'stop' : rules.includes('OR23') ? 'ask' : 'yes';
    });
    assert.equal(verdicts.join(' '), expected, name);
  }
});
