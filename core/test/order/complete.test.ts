import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { OrderDocument } from '@feedwright/core/order/document';
import { DOCUMENT, judged, lines, ofRule, orderWith } from './example.ts';

const missing = (changes: Partial<OrderDocument>): readonly unknown[] =>
  ofRule('OR2', judged(orderWith(changes))).map((one) => one.data.what);

test('[OR2] a complete order lacks nothing, and nothing stops it', () => {
  assert.deepEqual(
    lines(judged(orderWith())).filter((line) => !line.startsWith('note')),
    [],
  );
});

/** The elements of a complete order: ASPEN 2009 order form (S2, read); ASPEN 2017 critical elements (S1, from memory). */
test('[OR2] each thing that is missing is named, one problem for each', () => {
  const one: readonly (readonly [Partial<OrderDocument>, string])[] = [
    [{ feed: null }, 'formula'],
    [{ access: null }, 'access-device'],
    [{ access: { ...DOCUMENT.access!, feedBy: null } }, 'feed-lumen'],
    [{ method: null }, 'method'],
    [{ regimen: null }, 'regimen'],
    [{ water: null }, 'water'],
    [{ water: { water: 'tap', given: [] } }, 'water-amount'],
    [{ prescriber: null }, 'prescriber'],
    [{ prescribedAt: null }, 'prescribed-at'],
    [{ regimen: { kind: 'cyclic', from: '20:00', until: '08:00' } }, 'rate-or-volume'],
    [{ regimen: { kind: 'intermittent', volumeMl: 200, minutes: 30, by: 'pump' } }, 'times'],
    [{ method: 'syringe', regimen: { kind: 'bolus', volumeMl: 200 } }, 'times'],
    [{ water: { water: 'tap', given: [{ kind: 'times', volumeMl: 30 }] } }, 'times'],
    [{ medicines: [{ name: 'a', volumeMl: 10 }] }, 'times'],
    [{ modules: [{ name: 'a', waterMl: 10, energyKcal: 0, proteinG: 6 }] }, 'times'],
  ];
  for (const [changes, what] of one) assert.deepEqual(missing(changes), [what], JSON.stringify(changes));
  assert.deepEqual(
    missing({ feed: null, access: null, method: null, regimen: null, water: null, prescriber: null }),
    ['formula', 'access-device', 'method', 'regimen', 'water', 'prescriber'],
  );
});

test('[OR2] a bolus that only depends on meals has its times', () => {
  const meals = [{ at: '12:30', ifEatenLessThan: '1/2' }];
  assert.deepEqual(missing({ method: 'syringe', regimen: { kind: 'bolus', volumeMl: 200, meals } }), []);
});

test('[OR2] two of name, date of birth and each number make the two identifiers', () => {
  const number = { kind: 'hospital-number', value: '1' };
  const of = (patient: OrderDocument['patient']) => missing({ patient });
  assert.deepEqual(of({ name: 'Ada', birthDate: '1950-03-01' }), []);
  assert.deepEqual(of({ name: 'Ada', identifiers: [number] }), []);
  assert.deepEqual(of({ identifiers: [number, { kind: 'national-number', value: '2' }] }), []);
  assert.deepEqual(of({ name: 'Ada' }), ['two-identifiers']);
  assert.deepEqual(of({}), ['two-identifiers']);
});

test('[OR2] the tip is asked of the lumen that is fed by, and of no other', () => {
  const lumens = (feedTip: 'gastric' | null, otherTip: 'jejunal' | null) => ({
    ...DOCUMENT.access!,
    lumens: [
      { name: 'other', tip: otherTip, uses: ['drain' as const] },
      { name: 'port', tip: feedTip, uses: ['feed' as const, 'medicine' as const] },
    ],
  });
  assert.deepEqual(missing({ access: lumens('gastric', null) }), []);
  const [problem] = ofRule('OR2', judged(orderWith({ access: lumens(null, 'jejunal') })));
  assert.deepEqual(problem?.path, ['access', 'lumens', 1, 'tip']);
  assert.deepEqual(problem?.data, { what: 'tip-site', lumen: 'port' });
});

test('[OR2] the lumen for medicines is asked for only where something goes down it', () => {
  const access = { ...DOCUMENT.access!, medicineBy: null };
  assert.deepEqual(missing({ access }), []);
  const medicines = [{ name: 'a', times: ['08:00'], volumeMl: 10 }];
  assert.deepEqual(missing({ access, medicines }), ['medicine-lumen']);
  const modules = [{ name: 'a', times: ['08:00'], waterMl: 60, energyKcal: 24, proteinG: 6 }];
  assert.deepEqual(missing({ access, modules }), ['medicine-lumen']);
});

test('[OR2] a child needs a dosing weight with its day, up to the day of the eighteenth birthday', () => {
  const of = (
    birthDate: string,
    dosingWeight: NonNullable<OrderDocument['patient']['dosingWeight']> | null,
  ) => missing({ patient: { ...DOCUMENT.patient, birthDate, dosingWeight } });
  assert.deepEqual(of('2024-05-01', null), ['dosing-weight']);
  assert.deepEqual(of('2024-05-01', { kg: 12 }), ['dosing-weight-date']);
  assert.deepEqual(of('2024-05-01', { kg: 12, on: '2026-11-20' }), []);
  assert.deepEqual(of('2008-11-26', null), ['dosing-weight'], 'eighteen tomorrow');
  assert.deepEqual(of('2008-11-25', null), [], 'eighteen today');
});
