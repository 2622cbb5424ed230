/** How much feed went in, from where? Against arithmetic that a nurse can do in her head. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bag, give, inMl, pump, said, seenAt } from './bedside.ts';

const receivedMl = (...[when, entries]: Parameters<typeof seenAt>): number =>
  inMl(seenAt(when, entries).receivedToday);

test('[ST2] a pump at a rate has given rate × time; a pause gives nothing', () => {
  const entries = [
    said('08:00', bag.up('a', 1000)),
    said('08:00', pump.start(75)),
    said('10:00', pump.pause()),
    said('10:30', pump.resume()),
    said('12:30', pump.rate(50)),
  ];
  assert.equal(receivedMl('10:00', entries.slice(0, 2)), 150);
  assert.equal(receivedMl('10:20', entries.slice(0, 3)), 150);
  assert.equal(receivedMl('12:30', entries.slice(0, 4)), 300);
  assert.equal(receivedMl('13:30', entries), 350);
});

test('[ST3] between two readings the counter is what was delivered, in proportion to rate × time there', () => {
  const entries = [
    said('08:00', bag.up('a', 1000)),
    said('08:00', pump.clear(0)),
    said('08:00', pump.start(60)),
    said('10:00', pump.rate(120)),
    said('11:00', pump.read(200)),
  ];
  const standing = seenAt('11:00', entries);
  assert.equal(inMl(standing.receivedToday), 200);
  assert.equal(inMl(standing.today?.byRate as never), 240);
  assert.equal(inMl(standing.container?.remaining as never), 800);
  // Half of rate × time before ten, so half of the 200 mL.
  const [first] = seenAt('11:00', entries).today?.byContainer ?? [];
  assert.deepEqual([first?.name, inMl(first?.volume as never)], ['a', 200]);
});

test('[ST4] an estimate is never more than what the container held; it runs dry at the first ms that reaches it', () => {
  const entries = [
    said('08:00', bag.up('a', 500)),
    said('08:00', bag.set(20, 5)),
    said('08:00', pump.start(100)),
  ];
  const before = seenAt('12:00', entries);
  assert.equal(inMl(before.container?.remaining as never), 75);
  assert.equal(before.runsDryAt, before.at + 45 * 60_000);
  assert.equal(inMl(seenAt('15:00', entries).receivedToday), 475);
  assert.equal(seenAt('15:00', entries).container?.remaining, 0);
});

test('[ST5] a counter cleared unread leaves the estimate; one that fell is asked about and takes nothing away', () => {
  const run = [said('08:00', bag.up('a', 1000)), said('08:00', pump.start(75))];
  const unread = [...run, said('10:00', pump.clear(null)), said('12:00', pump.read(140))];
  assert.equal(receivedMl('12:00', unread), 290);
  const fell = [...run, said('10:00', pump.read(150)), said('12:00', pump.read(20))];
  const standing = seenAt('12:00', fell);
  assert.equal(inMl(standing.receivedToday), 300);
  assert.deepEqual(
    standing.contradictions.map((one) => one.code),
    ['counter-fell'],
  );
});

test('[ST6] a feed by syringe goes in over its minutes, from when it began', () => {
  const entries = [said('09:00', give.feed(200, 20))];
  assert.equal(receivedMl('09:05', entries), 50);
  assert.equal(receivedMl('10:00', entries), 200);
  assert.equal(receivedMl('09:00', [said('09:00', give.feed(200))]), 200);
});

test('[ST7] feed lost before the patient was never received, the latest delivery first', () => {
  const entries = [
    said('08:00', bag.up('a', 1000)),
    said('08:00', pump.start(100)),
    said('10:00', give.lost(30, 'before-patient')),
  ];
  const standing = seenAt('11:00', entries);
  assert.equal(inMl(standing.receivedToday), 270);
  assert.equal(inMl(standing.container?.remaining as never), 700);
  assert.equal(standing.today?.liquids.totalOut.value, 0);
});

test('[ST8] feed lost out of the tube is output once, and off nutrition by what went in last', () => {
  const entries = [
    said('09:00', give.feed(200, 20)),
    said('09:20', give.water(30)),
    said('09:30', give.lost(100, 'out-of-tube')),
  ];
  const { today, receivedToday, waterToday } = seenAt('10:00', entries);
  assert.equal(inMl(receivedToday), 200);
  assert.equal(inMl(waterToday), 30);
  assert.equal(inMl(today?.liquids.totalOut.value as never), 100);
  assert.equal(inMl(today?.liquids.balance.value as never), 130);
  // The last 100 mL were 30 of water and 70 of feed at 1 kcal/mL, 85 % water.
  assert.deepEqual(today?.nutrition.energyKcal.value, { n: 130, d: 1 });
  assert.equal(inMl(today?.nutrition.freeWater.total.value as never), 110.5);
});
