import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { HOUR } from '@feedwright/core/base/instant';
import { ml, mlPerHour, rate, volume } from '@feedwright/core/base/volume';
import {
  at,
  cyclic,
  gapTable,
  hold,
  LORD_HOWE,
  lostTable,
  NEW_YORK,
  orderFor,
  policyWith,
  programmeFor,
  span,
  table,
  totalMl,
} from './situation.ts';

const NIGHT = span('2026-11-25T20:00Z', '2026-11-26T08:00Z');

test('[PR4] the rate for a volume is the volume over the hours of the cycle, down to the pump’s step', () => {
  // The rule: volume / hours of the cycle (MSD Manual 2024, S30; Ichimaru 2018, S32).
  const cases = [
    [720, '20:00', '08:00', 60, 0],
    [1000, '20:00', '08:00', 83, 4],
    [1500, '18:00', '06:00', 125, 0],
    [1200, '22:00', '06:00', 150, 0],
    // 1542 mL in 22 h is printed as 70 mL/h, and 70 mL/h is worked again as 1540 mL (a dietetics course handout).
    [1542, '10:00', '08:00', 70, 2],
  ] as const;
  for (const [goal, from, until, expected, short] of cases) {
    const window = span(`2026-11-25T${from}Z`, `2026-11-26T${until}Z`);
    const programme = programmeFor(orderFor(cyclic(from, until, { volume: goal })), window);
    assert.deepEqual(table(programme), [`11-25 ${from} – 11-26 ${until}  ${expected}`]);
    assert.equal(totalMl(programme), goal - short);
    assert.deepEqual(lostTable(programme), short === 0 ? [] : [`rounding ${short}`]);
  }
});

test('[PR4] a planned hold is left out of the hours: overlaps once, and all is worked from the rounded rate', () => {
  const holds = [
    hold('scan', '2026-11-25T22:00Z', '2026-11-25T23:30Z'),
    hold('fast', '2026-11-25T23:00Z', '2026-11-26T00:00Z'),
  ];
  const programme = programmeFor(orderFor(cyclic('20:00', '08:00', { volume: 1000 }), { holds }), NIGHT);
  assert.deepEqual(table(programme), ['11-25 20:00 – 11-25 22:00  100', '11-26 00:00 – 11-26 08:00  100']);
  assert.deepEqual(gapTable(programme), ['11-25 22:00 – 11-26 00:00  hold scan fast']);
  assert.equal(programme.shortfall, 0);
});

test('[PR11] fewer hours do not take the rate over the ceiling: the shortfall is said', () => {
  const holds = [hold('theatre', '2026-11-25T20:00Z', '2026-11-26T03:00Z')];
  const programme = programmeFor(orderFor(cyclic('20:00', '08:00', { volume: 1000 }), { holds }), NIGHT);
  assert.deepEqual(table(programme), ['11-26 03:00 – 11-26 08:00  150']);
  assert.deepEqual(lostTable(programme), ['ceiling 250']);
});

test('[PR11] what the order itself comes to is for its own rules to judge, and is not raised further', () => {
  const order = orderFor(cyclic('22:00', '06:00', { volume: 1600 }));
  const window = span('2026-11-25T22:00Z', '2026-11-26T06:00Z');
  assert.deepEqual(table(programmeFor(order, window)), ['11-25 22:00 – 11-26 06:00  200']);
  const held = { ...order, holds: [hold('scan', '2026-11-26T00:00Z', '2026-11-26T02:00Z')] };
  const programme = programmeFor(held, window);
  assert.deepEqual(table(programme), ['11-25 22:00 – 11-26 00:00  200', '11-26 02:00 – 11-26 06:00  200']);
  assert.deepEqual(lostTable(programme), ['ceiling 400']);
});

test('[PR11] where nobody states a ceiling nothing is raised over what the order comes to', () => {
  const holds = [hold('scan', '2026-11-25T22:00Z', '2026-11-26T00:00Z')];
  const policy = policyWith({ 'ceiling.rate.gastric': undefined, 'ceiling.rate.cyclic': undefined });
  const order = orderFor(cyclic('20:00', '08:00', { volume: 1200 }), { holds });
  const programme = programmeFor(order, NIGHT, { policy });
  assert.deepEqual(table(programme), ['11-25 20:00 – 11-25 22:00  100', '11-26 00:00 – 11-26 08:00  100']);
  assert.deepEqual(lostTable(programme), ['ceiling 200']);
});

test('[PR3] a volume is reached before a hold without a known end, or the shortfall is said', () => {
  const holds = [hold('theatre', '2026-11-26T06:00Z', null)];
  const order = orderFor(cyclic('20:00', '08:00', { volume: 1000 }), { holds });
  const programme = programmeFor(order, NIGHT);
  assert.deepEqual(table(programme), ['11-25 20:00 – 11-26 06:00  100']);
  assert.deepEqual(gapTable(programme), ['11-26 06:00 – 11-26 08:00  hold-end-unknown theatre …']);
  assert.equal(programme.shortfall, 0);
  const next = programmeFor(order, span('2026-11-26T20:00Z', '2026-11-27T08:00Z'));
  assert.deepEqual(table(next), []);
  assert.deepEqual(lostTable(next), ['no-time-left 1000']);
});

const NIGHTS = [
  ['London, clocks forward', undefined, '2026-03-28T20:00Z', '2026-03-29T07:00Z', 11],
  ['London, clocks back', undefined, '2026-10-24T19:00Z', '2026-10-25T08:00Z', 13],
  ['New York, clocks forward', NEW_YORK, '2026-03-08T01:00Z', '2026-03-08T12:00Z', 11],
  ['New York, clocks back', NEW_YORK, '2026-11-01T00:00Z', '2026-11-01T13:00Z', 13],
  ['Lord Howe, half an hour back', LORD_HOWE, '2026-04-04T09:00Z', '2026-04-04T21:30Z', 12.5],
  ['Lord Howe, half an hour forward', LORD_HOWE, '2026-10-03T09:30Z', '2026-10-03T21:00Z', 11.5],
] as const;

test('[PR5] over a clock change a volume keeps its volume and the rate changes', () => {
  for (const [name, zone, from, until, lasts] of NIGHTS) {
    const order = orderFor(cyclic('20:00', '08:00', { volume: 900 }), zone === undefined ? {} : { zone });
    const [programme, exact] = [rate(100), rate(1)].map((step) =>
      programmeFor(order, span(from, until), { policy: policyWith({ 'pump.rate-step': step }) }),
    );
    const [piece] = programme?.pieces ?? [];
    assert.ok(piece?.gives.kind === 'rate', name);
    assert.equal(piece.until - piece.from, lasts * HOUR, name);
    assert.equal(piece.gives.rate, Math.floor(900 / lasts) * 100, name);
    assert.equal(totalMl(programme as never), Math.floor(900 / lasts) * lasts, name);
    assert.ok((exact?.shortfall ?? 0) < ml(lasts * 0.01), name);
  }
});

test('[PR5] over a clock change a rate keeps its rate and the volume changes', () => {
  for (const [name, zone, from, until, lasts] of NIGHTS) {
    const order = orderFor(cyclic('20:00', '08:00', { rate: 75 }), zone === undefined ? {} : { zone });
    const programme = programmeFor(order, span(from, until));
    assert.equal(totalMl(programme), 75 * lasts, name);
    assert.equal(programme.shortfall, 0, name);
  }
});

test('[PR5] with a rate and a volume it runs at the rate and stops at the volume', () => {
  for (const [name, zone, from, until, lasts] of NIGHTS) {
    const order = orderFor(
      cyclic('20:00', '08:00', { rate: 75, volume: 900 }),
      zone === undefined ? {} : { zone },
    );
    const programme = programmeFor(order, span(from, until));
    assert.equal(totalMl(programme), Math.min(900, 75 * lasts), name);
    assert.deepEqual(lostTable(programme), lasts < 12 ? [`no-time-left ${900 - 75 * lasts}`] : [], name);
    assert.equal(programme.gaps.length, lasts > 12 ? 1 : 0, name);
  }
});

test('[PR5] it stops at the first ms that reaches the volume', () => {
  // 1000 mL at 65 mL/h from 19:30 end at 10:53 (15 h 23.08 min; arithmetic, this project’s own numbers).
  const order = orderFor(cyclic('19:30', '12:00', { rate: 65, volume: 1000 }));
  const programme = programmeFor(order, span('2026-11-25T19:30Z', '2026-11-26T12:00Z'));
  assert.deepEqual(table(programme), ['11-25 19:30 – 11-26 10:53  65']);
  assert.equal((programme.pieces[0]?.until ?? 0) - at('2026-11-25T19:30Z'), Math.ceil((1000 / 65) * HOUR));
  assert.deepEqual(gapTable(programme), ['11-26 10:53 – 11-26 12:00  volume-reached']);
});

test('[PR5] a window that the clock jumps over takes no feed, and its volume is said to be lost', () => {
  const order = orderFor(cyclic('01:15', '01:45', { volume: 50 }));
  const programme = programmeFor(order, span('2026-03-28T06:00Z', '2026-03-29T05:00Z'));
  // 01:15 and 01:45 do not come on that night: they are taken as 02:15 and 02:45 summer time, half an hour all the same.
  assert.deepEqual(table(programme), ['03-29 02:15 – 03-29 02:45  100']);
  const gone = orderFor(cyclic('01:30', '02:30', { volume: 100 }));
  const short = programmeFor(gone, span('2026-03-28T06:00Z', '2026-03-29T05:00Z'));
  assert.deepEqual(table(short), []);
  assert.deepEqual(lostTable(short), ['no-time-left 100']);
});

test('[PR20] [PR13] a window that ends when it begins takes no feed, and says so', () => {
  const programme = programmeFor(orderFor(cyclic('20:00', '20:00', { volume: 100 })), NIGHT);
  assert.deepEqual(table(programme), []);
  assert.equal(programme.shortfall, 0);
  const before = span('2026-11-25T12:00Z', '2026-11-25T21:00Z');
  assert.deepEqual(lostTable(programmeFor(orderFor(cyclic('20:00', '20:00', { volume: 100 })), before)), [
    'no-time-left 100',
  ]);
});

test('[PR9] at a fixed rate the hold’s volume is lost; with a volume too the run goes on to its end for it', () => {
  const holds = [hold('scan', '2026-11-25T22:00Z', '2026-11-26T00:00Z')];
  const fixed = programmeFor(orderFor(cyclic('20:00', '08:00', { rate: 75 }), { holds }), NIGHT);
  assert.equal(totalMl(fixed), 750);
  assert.deepEqual(lostTable(fixed), ['hold 150']);
  const both = programmeFor(orderFor(cyclic('20:00', '08:00', { rate: 100, volume: 800 }), { holds }), NIGHT);
  assert.deepEqual(table(both), ['11-25 20:00 – 11-25 22:00  100', '11-26 00:00 – 11-26 06:00  100']);
  assert.equal(both.shortfall, 0);
});

test('[PR9] what was not received in the window is said, not made up, unless a protocol is named', () => {
  const seenAt = at('2026-11-26T02:00Z');
  const rest = { from: seenAt, until: NIGHT.until };
  const policy = policyWith({ 'day.start': 8 * 60 });
  const order = orderFor(cyclic('20:00', '08:00', { volume: 1200 }));
  const standing = { receivedToday: ml(400) };
  const said = programmeFor(order, rest, { standing, policy });
  assert.deepEqual(table(said), ['11-26 02:00 – 11-26 08:00  100']);
  assert.deepEqual(lostTable(said), ['no-protocol 200']);
  const named = programmeFor({ ...order, catchUpProtocol: 'the unit’s own' }, rest, { standing, policy });
  assert.deepEqual(table(named), ['11-26 02:00 – 11-26 08:00  133']);
  assert.deepEqual(lostTable(named), ['rounding 2']);
});

test('[PR5] with more received than planned it still stops at the volume', () => {
  const standing = { receivedToday: ml(900) };
  const programme = programmeFor(
    orderFor(cyclic('20:00', '08:00', { volume: 1200 })),
    { from: at('2026-11-26T02:00Z'), until: NIGHT.until },
    { standing, policy: policyWith({ 'day.start': 8 * 60 }) },
  );
  assert.deepEqual(table(programme), ['11-26 02:00 – 11-26 05:00  100']);
  assert.deepEqual(gapTable(programme), ['11-26 05:00 – 11-26 08:00  volume-reached']);
});

test('[PR5] where another night’s feed is in the day’s count, the window runs as planned', () => {
  // The day begins at 06:00, so at 02:00 the count holds the end of the last night as well.
  const programme = programmeFor(
    orderFor(cyclic('20:00', '08:00', { volume: 1200 })),
    { from: at('2026-11-26T02:00Z'), until: NIGHT.until },
    { standing: { receivedToday: ml(1100) } },
  );
  assert.deepEqual(table(programme), ['11-26 02:00 – 11-26 08:00  100']);
  assert.equal(programme.shortfall, 0);
  // At 07:00 the count has begun anew, and holds only the last hour of this night.
  const later = programmeFor(
    orderFor(cyclic('20:00', '08:00', { volume: 1200 })),
    { from: at('2026-11-26T07:00Z'), until: NIGHT.until },
    { standing: { receivedToday: ml(100) } },
  );
  assert.deepEqual(table(later), ['11-26 07:00 – 11-26 08:00  100']);
  assert.equal(later.shortfall, 0);
});

test('[PR17] what counts as received in a window does not depend on where the span begins', () => {
  // The day begins at midnight: at 23:30 its count holds the end of the last night, wherever one looks from.
  const seenAt = at('2026-11-25T23:30Z');
  const policy = policyWith({ 'day.start': 0 });
  const standing = { receivedToday: ml(1000) };
  const order = orderFor(cyclic('20:00', '08:00', { rate: 100, volume: 1200 }));
  for (const from of ['2026-11-25T23:30Z', '2026-11-26T00:30Z'] as const) {
    const programme = programmeFor(
      order,
      { from: at(from), until: NIGHT.until },
      { seenAt, standing, policy },
    );
    assert.equal(programme.pieces[0]?.until, NIGHT.until);
    assert.equal(programme.shortfall, 0);
  }
});

test('[PR4] an order that begins or ends inside a window wants that part of its volume, at the same rate', () => {
  const order = orderFor(cyclic('20:00', '08:00', { volume: 1200 }));
  const begun = programmeFor({ ...order, startsAt: at('2026-11-25T23:00Z') }, NIGHT);
  assert.deepEqual(table(begun), ['11-25 23:00 – 11-26 08:00  100']);
  const ended = programmeFor({ ...order, endsAt: at('2026-11-25T23:00Z') }, NIGHT);
  assert.deepEqual(table(ended), ['11-25 20:00 – 11-25 23:00  100']);
  assert.equal(begun.shortfall + ended.shortfall, 0);
});

test('[PR16] a volume of formula at a strength is the mixture that holds it', () => {
  const regimen = cyclic('20:00', '08:00', { volume: 900 });
  assert.ok(regimen.kind === 'cyclic');
  const order = orderFor({ ...regimen, volume: { volume: ml(900), of: 'formula' } });
  const feed = order.feed === null ? null : { ...order.feed, strength: fraction(3, 4) };
  const programme = programmeFor({ ...order, feed }, NIGHT);
  assert.deepEqual(table(programme), ['11-25 20:00 – 11-26 08:00  100']);
  const V = programme.pieces[0]?.working.inputs.find((one) => one.symbol === 'V');
  assert.deepEqual(V?.is, { kind: 'quantity', value: fraction(1200), unit: 'mL' });
});

test('[PR16] a rate of formula goes down to the pump’s step, a volume down to the unit; no strength, no programme', () => {
  const regimen = cyclic('20:00', '08:00', { rate: 50 });
  assert.ok(regimen.kind === 'cyclic');
  const at = (strength: { n: number; d: number }) => {
    const order = orderFor({ ...regimen, rate: { rate: mlPerHour(50), of: 'formula' } });
    return programmeFor({ ...order, feed: order.feed === null ? null : { ...order.feed, strength } }, NIGHT);
  };
  assert.deepEqual(table(at(fraction(3, 4))), ['11-25 20:00 – 11-26 08:00  66']);
  // Of nothing, or of next to nothing, no mixture can have been meant.
  for (const strength of [fraction(0), fraction(1, 1_000_000)]) {
    assert.deepEqual(gapTable(at(strength)), ['11-25 20:00 – 11-26 08:00  amount-not-known']);
  }
  const third = orderFor({
    ...cyclic('20:00', '08:00', { rate: 150, volume: 1 }),
    volume: { volume: volume(1000), of: 'formula' },
  } as never);
  const programme = programmeFor(
    { ...third, feed: third.feed === null ? null : { ...third.feed, strength: fraction(2, 3) } },
    NIGHT,
  );
  assert.equal((programme.pieces[0]?.until ?? 0) - NIGHT.from, 1);
});
