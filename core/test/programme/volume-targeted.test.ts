import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR, hours, type Instant } from '@feedwright/core/base/instant';
import { ml, mlPerHour, rate } from '@feedwright/core/base/volume';
import type { Order } from '@feedwright/core/order/order';
import type { Standing } from '@feedwright/core/standing/standing';
import {
  accessWith,
  at,
  gapTable,
  hold,
  LORD_HOWE,
  lostTable,
  NEW_YORK,
  orderFor,
  PATIENT,
  policyWith,
  programmeFor,
  type Rows,
  span,
  table,
  totalMl,
  volumeTargeted,
} from './situation.ts';

const DAY = span('2026-11-25T06:00Z', '2026-11-26T06:00Z');

type Case = {
  readonly goal: number;
  readonly given: number;
  readonly left: number;
  readonly rate: number | null;
  readonly exact: number | null;
  readonly short: number;
};

/**
 * The bedside rule of the PEP uP ward sheet (Heyland 2010 and its bedside sheet, S37): rate = (24-h goal − received) /
 * hours left, never over 150 mL/h. The patients are this project's own; `rate` is to 1 mL/h, `exact` to 0.01 mL/h, both
 * down. What 66 mL/h leaves of 66.67 is the rounding's.
 */
const WARD_SHEET: Readonly<Record<string, Case>> = {
  'no loss': { goal: 1200, given: 400, left: 16, rate: 50, exact: 50, short: 0 },
  '4 h held': { goal: 1200, given: 400, left: 12, rate: 66, exact: 66.66, short: 8 },
  'at the ceiling': { goal: 1800, given: 400, left: 8, rate: 150, exact: 150, short: 200 },
  'at the ceiling, late': { goal: 1600, given: 300, left: 4, rate: 150, exact: 150, short: 700 },
  'goal met': { goal: 1200, given: 1200, left: 5, rate: null, exact: null, short: 0 },
  'over the goal': { goal: 1200, given: 1260, left: 5, rate: null, exact: null, short: 0 },
  'another day': { goal: 1680, given: 560, left: 10, rate: 112, exact: 112, short: 0 },
  'another ceiling': { goal: 1800, given: 300, left: 8, rate: 150, exact: 150, short: 300 },
};

const base = (goal: number): number => Math.floor(goal / 24);

function leftOfDay({ goal, given, left }: Case, rows: Rows, more: Partial<Order> = {}) {
  const seenAt = (DAY.until - left * HOUR) as Instant;
  return programmeFor(
    orderFor(volumeTargeted(goal, base(goal)), more),
    { from: seenAt, until: DAY.until },
    { standing: { receivedToday: ml(given) }, policy: policyWith(rows) },
  );
}

test('[PR10] [PR11] the ward sheet of volume-based feeding (S37), to the pump’s step and down', () => {
  for (const [name, one] of Object.entries(WARD_SHEET)) {
    const programme = leftOfDay(one, {});
    const rates = programme.pieces.map(({ gives }) => (gives.kind === 'rate' ? gives.rate / 100 : null));
    assert.deepEqual(rates, one.rate === null ? [] : [one.rate], name);
    assert.equal(programme.shortfall, ml(one.short), name);
    const fine = leftOfDay(one, { 'pump.rate-step': rate(1) });
    const exact = fine.pieces.map(({ gives }) => (gives.kind === 'rate' ? gives.rate / 100 : null));
    assert.deepEqual(exact, one.exact === null ? [] : [one.exact], name);
  }
});

test('[PR10] the ward sheet: a planned hold is left out of the hours', () => {
  const holds = [hold('scan', '2026-11-25T14:00Z', '2026-11-25T16:00Z')];
  const one: Case = { goal: 1200, given: 400, left: 16, rate: 57, exact: 57.14, short: 2 };
  const programme = leftOfDay(one, {}, { holds });
  assert.deepEqual(table(programme), ['11-25 16:00 – 11-26 06:00  57']);
  assert.deepEqual(lostTable(programme), ['rounding 2']);
  const fine = leftOfDay(one, { 'pump.rate-step': rate(1) }, { holds });
  assert.deepEqual(table(fine), ['11-25 16:00 – 11-26 06:00  57.14']);
});

test('[PR13] the ward sheet: no hours left gives no rate, only the shortfall', () => {
  const holds = [hold('theatre', '2026-11-25T22:00Z', '2026-11-26T06:00Z')];
  const one: Case = { goal: 1200, given: 1000, left: 8, rate: null, exact: null, short: 200 };
  const programme = leftOfDay(one, {}, { holds });
  assert.deepEqual(table(programme), []);
  assert.deepEqual(lostTable(programme), ['no-time-left 200']);
  assert.deepEqual(gapTable(programme), ['11-25 22:00 – 11-26 06:00  hold theatre']);
});

test('[PR3] [PR10] before a fast whose end nobody knows the goal is reached first (S37), or the shortfall is said', () => {
  const order = (goal: number) =>
    orderFor(volumeTargeted(goal, base(goal)), { holds: [hold('fast', '2026-11-26T00:00Z', null)] });
  const whole = programmeFor(order(1200), DAY);
  assert.deepEqual(table(whole), ['11-25 06:00 – 11-26 00:00  66']);
  assert.deepEqual(gapTable(whole), ['11-26 00:00 – 11-26 06:00  hold-end-unknown fast …']);
  assert.deepEqual(lostTable(whole), ['rounding 12']);
  const tooMuch = programmeFor(order(3000), DAY);
  assert.deepEqual(table(tooMuch), ['11-25 06:00 – 11-26 00:00  150']);
  assert.deepEqual(lostTable(tooMuch), ['ceiling 300']);
});

test('[PR14] on a day of 23, 24, 24½ or 25 hours the volume stays: the rate rises, or feed stops at the volume', () => {
  const days = [
    ['Europe/London', '2026-03-28T06:00Z', '2026-03-29T05:00Z', ['03-28 06:00 – 03-29 06:00  52'], 1196],
    ['Europe/London', '2026-10-24T05:00Z', '2026-10-25T06:00Z', ['10-24 06:00 – 10-25 05:00  50'], 1200],
    ['America/New_York', '2026-03-07T11:00Z', '2026-03-08T10:00Z', ['03-07 06:00 – 03-08 06:00  52'], 1196],
    ['America/New_York', '2026-10-31T10:00Z', '2026-11-01T11:00Z', ['10-31 06:00 – 11-01 05:00  50'], 1200],
    [
      'Australia/Lord_Howe',
      '2026-04-03T19:00Z',
      '2026-04-04T19:30Z',
      ['04-04 06:00 – 04-05 05:30  50'],
      1200,
    ],
    [
      'Australia/Lord_Howe',
      '2026-10-02T19:30Z',
      '2026-10-03T19:00Z',
      ['10-03 06:00 – 10-04 06:00  51'],
      1198.5,
    ],
    ['Europe/London', '2026-06-01T05:00Z', '2026-06-02T05:00Z', ['06-01 06:00 – 06-02 06:00  50'], 1200],
  ] as const;
  for (const [name, from, until, expected, total] of days) {
    const zone =
      name === 'America/New_York' ? NEW_YORK : name === 'Australia/Lord_Howe' ? LORD_HOWE : undefined;
    const order = orderFor(volumeTargeted(1200, 50), zone === undefined ? {} : { zone });
    const programme = programmeFor(order, span(from, until));
    assert.deepEqual(table(programme, order.zone), expected, `${name} ${from}`);
    assert.equal(totalMl(programme), total);
    assert.equal(programme.shortfall, ml(1200 - total));
  }
});

test('[PR10] at the base rate feed stops at the volume, at the first ms that reaches it', () => {
  const programme = programmeFor(orderFor(volumeTargeted(1000, 70)), DAY);
  const [piece] = programme.pieces;
  assert.ok(piece !== undefined && piece.gives.kind === 'rate');
  assert.equal(piece.gives.rate, mlPerHour(70));
  // 1000 mL at 70 mL/h is 14 h 17 min 8.571… s.
  assert.equal(piece.until - piece.from, Math.ceil((1000 / 70) * HOUR));
  assert.deepEqual(gapTable(programme), ['11-25 20:17 – 11-26 06:00  volume-reached']);
  assert.equal(programme.shortfall, 0);
});

test('[PR14] on the day on which feeding began, or the order ends, the day’s share of the volume is wanted', () => {
  const began = programmeFor(
    orderFor(volumeTargeted(1200, 50)),
    { from: at('2026-11-25T14:00Z'), until: DAY.until },
    { standing: { feedingSince: null } },
  );
  assert.deepEqual(table(began), ['11-25 14:00 – 11-26 06:00  50']);
  assert.equal(began.shortfall, 0);
  const ending = orderFor(volumeTargeted(1200, 50), { endsAt: at('2026-11-25T18:00Z') });
  assert.deepEqual(table(programmeFor(ending, DAY)), ['11-25 06:00 – 11-25 18:00  50']);
  assert.equal(programmeFor(ending, DAY).shortfall, 0);
});

type Bar = {
  why: string;
  order?: Partial<Order>;
  standing?: Partial<Standing>;
  rows?: { [key: string]: unknown };
};

const WEIGHT_NEEDED = { 'ceiling.rate.per-kg': fraction(2) };
const NO_CEILING = {
  'catch-up.ceiling': undefined,
  'ceiling.rate.gastric': undefined,
};

const BARS: readonly Bar[] = [
  { why: 'first-day', standing: { feedingSince: at('2026-11-25T06:00Z') } },
  { why: 'open-intolerance', standing: { openIntolerance: true } },
  { why: 'refeeding-caution', order: { refeedingCaution: true } },
  { why: 'over-fluid-limit', order: { fluidLimitPerDay: ml(1199) } },
  { why: 'over-fluid-limit', order: { fluidLimitPerDay: ml(1300), intravenousPerDay: ml(101) } },
  { why: 'over-fluid-limit', order: { fluidLimitPerDay: ml(1300) }, standing: { waterToday: ml(101) } },
  { why: 'child', order: { patient: { ...PATIENT, birthDate: '2008-11-26' } } },
  { why: 'age-not-known', order: { patient: { ...PATIENT, birthDate: null } } },
  { why: 'post-pyloric', order: { access: accessWith('jejunal') } },
  { why: 'post-pyloric', order: { access: accessWith('duodenal') } },
  { why: 'tip-not-known', order: { access: accessWith(null) } },
  { why: 'tip-not-known', order: { access: null } },
  { why: 'ceiling-not-known', rows: NO_CEILING },
  { why: 'ceiling-not-known', rows: WEIGHT_NEEDED },
];

const behind = (bar: Omit<Bar, 'why'>) =>
  programmeFor(
    orderFor(volumeTargeted(1200, 50), bar.order),
    { from: at('2026-11-25T18:00Z'), until: DAY.until },
    { standing: { receivedToday: ml(400), ...bar.standing }, policy: policyWith(bar.rows as never) },
  );

test('[PR12] nothing is made up where something speaks against it: the base rate stays, and the reason is said', () => {
  assert.deepEqual(table(behind({})), ['11-25 18:00 – 11-26 06:00  66'], 'with nothing against it');
  for (const bar of BARS) {
    const programme = behind(bar);
    assert.deepEqual(table(programme), ['11-25 18:00 – 11-26 06:00  50'], bar.why);
    const [lost] = programme.lost ?? [];
    assert.equal(lost?.why, bar.why);
    assert.ok(programme.shortfall > 0, bar.why);
  }
});

test('[PR12] nothing is made up while advancing; once the goal is confirmed it is', () => {
  const regimen = volumeTargeted(1200, 50);
  assert.ok(regimen.kind === 'volume-targeted');
  const advance = { start: mlPerHour(30), step: mlPerHour(10), every: hours(8), goal: mlPerHour(50) };
  const order = { regimen: { ...regimen, advance } };
  const confirmed = (stepsConfirmed: number) =>
    behind({ order, standing: { advancement: { stepsConfirmed, since: at('2026-11-25T12:00Z') } } });
  assert.deepEqual(table(confirmed(1)), ['11-25 18:00 – 11-26 06:00  40']);
  assert.equal(confirmed(1).lost?.[0]?.why, 'advancing');
  assert.deepEqual(table(confirmed(2)), ['11-25 18:00 – 11-26 06:00  66']);
});

test('[PR12] a named protocol allows what an order for a child or a post-pyloric tip otherwise must not', () => {
  const catchUpProtocol = 'the unit’s own';
  const child = { patient: { ...PATIENT, birthDate: '2020-01-01' }, catchUpProtocol };
  const jejunal = { access: accessWith('jejunal'), catchUpProtocol };
  assert.deepEqual(table(behind({ order: child })), ['11-25 18:00 – 11-26 06:00  66']);
  assert.deepEqual(table(behind({ order: jejunal })), ['11-25 18:00 – 11-26 06:00  66']);
});

test('[PR12] eighteen is grown up on the birthday itself', () => {
  const born = (birthDate: string) => behind({ order: { patient: { ...PATIENT, birthDate } } });
  assert.deepEqual(table(born('2008-11-25')), ['11-25 18:00 – 11-26 06:00  66']);
  assert.equal(born('2008-11-26').lost?.[0]?.why, 'child');
});

test('[PR12] the first day is the one on which the order begins, if nobody was fed before', () => {
  const order = orderFor(volumeTargeted(1200, 40), { startsAt: at('2026-11-26T06:00Z') });
  const standing = { feedingSince: null };
  const first = span('2026-11-26T06:00Z', '2026-11-27T06:00Z');
  const second = span('2026-11-27T06:00Z', '2026-11-28T06:00Z');
  const seenAt = at('2026-11-25T12:00Z');
  assert.deepEqual(table(programmeFor(order, first, { standing, seenAt })), [
    '11-26 06:00 – 11-27 06:00  40',
  ]);
  assert.deepEqual(table(programmeFor(order, second, { standing, seenAt })), [
    '11-27 06:00 – 11-28 06:00  50',
  ]);
});

test('[PR12] where policy allows it, lost volume is made up on the first day too', () => {
  const standing = { feedingSince: at('2026-11-25T06:00Z') };
  assert.deepEqual(table(behind({ standing, rows: { 'catch-up.first-day': true } })), [
    '11-25 18:00 – 11-26 06:00  66',
  ]);
});

test('[PR11] the ceiling is the least of policy, order, regimen and weight', () => {
  const kg = (weight: number): Order['patient'] => ({
    ...PATIENT,
    dosingWeight: { kg: fraction(weight), on: null },
  });
  const behindBy = (order: Partial<Order>, rows: Rows = {}) =>
    programmeFor(
      orderFor(order.regimen ?? volumeTargeted(1800, 75), order),
      { from: at('2026-11-25T18:00Z'), until: DAY.until },
      { standing: { receivedToday: ml(0) }, policy: policyWith(rows) },
    );
  const runs = (rateSet: number) => [`11-25 18:00 – 11-26 06:00  ${rateSet}`];
  assert.deepEqual(table(behindBy({})), runs(150));
  assert.deepEqual(table(behindBy({}, { 'catch-up.ceiling': mlPerHour(120) })), runs(120));
  assert.deepEqual(table(behindBy({}, { 'ceiling.rate.gastric': mlPerHour(125) })), runs(125));
  assert.deepEqual(table(behindBy({ mostRate: mlPerHour(110) })), runs(110));
  assert.deepEqual(table(behindBy({ regimen: volumeTargeted(1800, 75, 105) })), runs(105));
  assert.deepEqual(table(behindBy({ patient: kg(50) }, { 'ceiling.rate.per-kg': fraction(2) })), runs(100));
  const jejunal = { access: accessWith('jejunal'), catchUpProtocol: 'the unit’s own' };
  assert.deepEqual(table(behindBy(jejunal)), runs(125));
  // 2.05 mL/kg/h × 50 kg is 102.5 mL/h: down to the pump's step.
  assert.deepEqual(
    table(behindBy({ patient: kg(50) }, { 'ceiling.rate.per-kg': fraction(205, 100) })),
    runs(102),
  );
  assert.deepEqual(lostTable(behindBy({})), []);
  assert.deepEqual(lostTable(behindBy({ mostRate: mlPerHour(110) })), ['ceiling 480']);
});

test('[PR10] a raised rate shows its working: the numbers put in, where each came from, how it was rounded', () => {
  const [piece] = behind({}).pieces;
  const working = piece?.working;
  assert.equal(working?.equation, 'r = min((V − V_received) / t_left, r_most)');
  assert.deepEqual(working?.result, {
    symbol: 'r',
    is: { kind: 'quantity', value: fraction(66), unit: 'mL/h' },
  });
  assert.deepEqual(working?.rounded, { way: 'down', step: fraction(1) });
  assert.equal(working?.rule, 'PR10');
  const found = Object.fromEntries((working?.inputs ?? []).map((one) => [one.symbol, one]));
  assert.deepEqual(found.V?.is, { kind: 'quantity', value: fraction(1200), unit: 'mL' });
  assert.deepEqual(found.V_received?.is, { kind: 'quantity', value: fraction(400), unit: 'mL' });
  assert.deepEqual(found.t_left?.is, { kind: 'duration', lasts: 12 * HOUR });
  assert.deepEqual(found.r_most?.is, { kind: 'quantity', value: fraction(150), unit: 'mL/h' });
  assert.ok(found.r_step?.basis.kind === 'policy' && found.r_step.basis.key === 'pump.rate-step');
  const most = found.r_most?.basis;
  assert.ok(most?.kind === 'working' && most.working.inputs.some((one) => one.basis.kind === 'policy'));
});

test('[PR19] a rate that was raised and followed stays when it is worked again', () => {
  // 2100 mL in 23 h is 91.3 mL/h: 91 leaves 7 mL, and two hours before the end those would be 3.5 mL/h more.
  const order = orderFor(volumeTargeted(2400, 50));
  const look = (when: string, received: number, running: Standing['running']) =>
    programmeFor(
      order,
      { from: at(when), until: DAY.until },
      { standing: { receivedToday: ml(received), running } },
    );
  assert.deepEqual(table(look('2026-11-25T07:00Z', 300, null)), ['11-25 07:00 – 11-26 06:00  91']);
  const running = { rate: mlPerHour(91), since: at('2026-11-25T07:00Z') };
  assert.deepEqual(table(look('2026-11-26T04:00Z', 300 + 21 * 91, running)), [
    '11-26 04:00 – 11-26 06:00  91',
  ]);
  assert.deepEqual(table(look('2026-11-26T04:00Z', 300 + 21 * 91, null)), ['11-26 04:00 – 11-26 06:00  94']);
});

test('[PR19] the day’s plan stays while it is followed, also while nothing runs', () => {
  // 1000 mL in 23 h: 43 mL/h. At 02:30, in the hold, 140 mL in 3 h would be 46 mL/h.
  const holds = [hold('scan', '2026-11-26T02:00Z', '2026-11-26T03:00Z')];
  const order = orderFor(volumeTargeted(1000, 40), { holds });
  const rest = { from: at('2026-11-26T02:30Z'), until: DAY.until };
  const look = (received: number) =>
    table(programmeFor(order, rest, { standing: { receivedToday: ml(received) } }));
  assert.deepEqual(look(20 * 43), ['11-26 03:00 – 11-26 06:00  43']);
  assert.deepEqual(look(20 * 43 - 1), ['11-26 03:00 – 11-26 06:00  47']);
});

test('[PR19] a rate that runs is kept only if it is the one that was worked when it was set', () => {
  // By steps of 5 mL/h 1565 mL a day are 65 mL/h, which leaves 5; worked anew an hour before the end it were 70.
  const order = orderFor(volumeTargeted(1565, 10));
  const rest = { from: at('2026-11-26T05:00Z'), until: DAY.until };
  const policy = policyWith({ 'pump.rate-step': mlPerHour(5) });
  const running = { rate: mlPerHour(65), since: rest.from };
  for (const one of [null, running]) {
    const standing = { receivedToday: ml(23 * 65), running: one };
    assert.deepEqual(table(programmeFor(order, rest, { standing, policy })), [
      '11-26 05:00 – 11-26 06:00  65',
    ]);
  }
});

test('[PR14] where policy does not say when the day begins, a volume a day cannot be planned, and that is said', () => {
  const programme = programmeFor(orderFor(volumeTargeted(1200, 50)), DAY, {
    policy: policyWith({ 'day.start': undefined }),
  });
  assert.deepEqual(table(programme), []);
  assert.deepEqual(gapTable(programme), ['11-25 06:00 – 11-26 06:00  day-start-not-known']);
});
