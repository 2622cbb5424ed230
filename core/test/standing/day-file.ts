/**
 * How is a golden day written? As a page that a nurse can read: a heading, the story, the day's entries one on a line, the
 * arithmetic by hand, and what must be true at which time. Only the fenced blocks are read here.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fraction, ONE } from '@feedwright/core/base/fraction';
import { type Instant, minutes } from '@feedwright/core/base/instant';
import { ml, mlPerHour, NOTHING } from '@feedwright/core/base/volume';
import { instantOf, parseTimeOfDay, type Zone } from '@feedwright/core/base/zone';
import type { AccessDevice } from '@feedwright/core/order/order';
import type { AnyEntry, Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { type OrderDocument, orderWith } from './day-order.ts';

const FOLDER = new URL('../../cases/days/', import.meta.url);
export const HERE = 'Europe/London' as Zone;

export type Expected = { readonly at: Instant; readonly lines: readonly string[] };
export type Day = {
  readonly title: string;
  readonly entries: readonly AnyEntry[];
  readonly expected: readonly Expected[];
};

const NASOGASTRIC: AccessDevice = {
  device: 'nasogastric',
  french: fraction(10),
  lumens: [{ name: 'port', tip: 'gastric', uses: ['feed', 'medicine'] }],
  feedBy: 'port',
  medicineBy: 'port',
  placedAt: null,
};

type Groups = readonly string[];
type Line = readonly [RegExp, (groups: Groups, at: Instant) => Fact];

const n = (text: string | undefined): number => Number(text);
const volumeOf = (text: string | undefined) => ml(Math.round(n(text) * 10) / 10);
const orNull = (text: string | undefined) => (text === undefined ? null : volumeOf(text));
const decimal = (text: string | undefined) => fraction(Math.round(n(text) * 100), 100);
const strengthOf = (text: string | undefined) =>
  text === undefined ? ONE : fraction(n(text.split('/')[0]), n(text.split('/')[1]));

const residual = (found: 'zero' | 'could-not-aspirate' | 'not-done'): Fact => ({
  kind: 'residual-checked/1',
  found,
  volume: null,
  look: null,
  returned: NOTHING,
  discarded: NOTHING,
});

const orderFact = (json: string | undefined): Fact => {
  const changes: Partial<OrderDocument> = JSON.parse(json ?? '{}');
  return { kind: 'order-placed/1', placed: orderWith(changes) };
};

/** What a line may say, in the order in which it is tried. */
const LINES: readonly Line[] = [
  [/^order (\{.*\})$/, ([json]) => orderFact(json)],
  [
    /^held (\S+) for (fast|procedure|intolerance) until (\d\d:\d\d)$/,
    ([id, why, until], from) => ({
      kind: 'order-held/1',
      hold: { id: id!, from, until: on(until!, from), why: why as 'fast', note: null },
    }),
  ],
  [/^step (\d) confirmed$/, ([step]) => ({ kind: 'step-confirmed/1', step: n(step) })],
  [
    /^tube placed at (\d+) cm$/,
    ([cm]) => ({ kind: 'tube-placed/1', access: NASOGASTRIC, markCm: decimal(cm) }),
  ],
  [
    /^tube checked, pH ([\d.]+), (not confirmed|confirmed)$/,
    ([ph, what]) => ({
      kind: 'tube-checked/1',
      method: 'ph',
      lumen: null,
      confirmed: what === 'confirmed',
      ph: decimal(ph),
      markCm: null,
      reader: null,
    }),
  ],
  [/^tube out$/, () => ({ kind: 'tube-out/1', how: null })],
  [/^tube moved to (\d+) cm$/, ([cm]) => ({ kind: 'tube-moved/1', markCm: decimal(cm) })],
  [
    /^up (\S+) with ([\d.]+) mL(?: of (\S+))?(?: at (\d\/\d))?(, new set)?$/,
    ([container, filled, feed, strength, set]) => ({
      kind: 'container-put-up/1',
      container: container!,
      holds: 'feed',
      feed: feed ?? 'standard-1.0',
      strength: strengthOf(strength),
      closed: false,
      filled: volumeOf(filled),
      newSet: set !== undefined,
      comesDownBy: null,
      lot: null,
      expires: null,
    }),
  ],
  [
    /^set primed, ([\d.]+) mL in the line, ([\d.]+) mL spilt$/,
    ([line, spilt]) => ({ kind: 'set-changed/1', line: volumeOf(line), spilt: volumeOf(spilt) }),
  ],
  [
    /^down (\S+?)(?:, ([\d.]+) mL left)?$/,
    ([container, left]) => ({
      kind: 'container-taken-down/1',
      container: container!,
      left: orNull(left),
      reason: null,
    }),
  ],
  [
    /^start at ([\d.]+) mL\/h$/,
    ([rate]) => ({ kind: 'pump-started/1', rate: mlPerHour(n(rate)), volumeToBeDelivered: null }),
  ],
  [/^rate ([\d.]+) mL\/h$/, ([rate]) => ({ kind: 'rate-changed/1', rate: mlPerHour(n(rate)) })],
  [
    /^pause for (procedure|care|medicine|intolerance|tube|equipment|fast|other)$/,
    ([reason]) => ({ kind: 'pump-paused/1', reason: reason as 'care', note: null }),
  ],
  [/^resume$/, () => ({ kind: 'pump-resumed/1' })],
  [/^stop, feed ended$/, () => ({ kind: 'pump-stopped/1', reason: 'feed-ended' })],
  [
    /^counter ([\d.]+) mL$/,
    ([shows]) => ({ kind: 'counter-read/1', counts: 'feed', volume: volumeOf(shows) }),
  ],
  [
    /^counter cleared(?: at ([\d.]+) mL| unread)$/,
    ([shows]) => ({ kind: 'counter-cleared/1', counts: 'feed', read: orNull(shows) }),
  ],
  [
    /^pump says ([\d.]+) mL\/h$/,
    ([rate]) => ({ kind: 'programme-read-back/1', rate: mlPerHour(n(rate)), volumeToBeDelivered: null }),
  ],
  [
    /^(syringe|gravity) feed ([\d.]+) mL(?: of (\S+))? over (\d+) min$/,
    ([by, volume, feed, lasted]) => ({
      kind: 'feed-given/1',
      by: by as 'syringe',
      feed: feed ?? 'standard-1.0',
      strength: ONE,
      volume: volumeOf(volume),
      lasted: minutes(n(lasted)),
      heightCm: null,
      timedBarrel: null,
    }),
  ],
  [
    /^(flush|free water) ([\d.]+) mL$/,
    ([why, volume]) => ({
      kind: 'water-given/1',
      water: 'tap',
      volume: volumeOf(volume),
      why: why === 'flush' ? 'flush' : 'free-water',
    }),
  ],
  [
    /^medicine (\S+) in ([\d.]+) mL$/,
    ([name, volume]) => ({ kind: 'medicine-given/1', name: name!, volume: volumeOf(volume), lumen: null }),
  ],
  [
    /^lost ([\d.]+) mL (before the patient|out of the tube)$/,
    ([volume, where]) => ({
      kind: 'feed-lost/1',
      where: where === 'out of the tube' ? 'out-of-tube' : 'before-patient',
      volume: volumeOf(volume),
    }),
  ],
  [
    /^(drank|drip) ([\d.]+) mL$/,
    ([how, volume]) => ({
      kind: 'intake-measured/1',
      route: how === 'drank' ? 'oral' : 'intravenous',
      volume: volumeOf(volume),
      energyKcal: null,
    }),
  ],
  [
    /^residual ([\d.]+) mL, ([\d.]+) mL returned$/,
    ([drawn, returned]) => ({
      kind: 'residual-checked/1',
      found: 'measured',
      volume: volumeOf(drawn),
      look: 'feed',
      returned: volumeOf(returned),
      discarded: ml(n(drawn) - n(returned)),
    }),
  ],
  [/^residual nothing there$/, () => residual('zero')],
  [/^residual could not be aspirated$/, () => residual('could-not-aspirate')],
  [/^residual not done$/, () => residual('not-done')],
  [/^vomited(?: ([\d.]+) mL|, not measured)$/, ([volume]) => ({ kind: 'vomited/1', volume: orNull(volume) })],
  [
    /^distension (none|mild|marked)$/,
    ([degree]) => ({ kind: 'distension-noted/1', degree: degree as 'none', girthCm: null }),
  ],
  [
    /^(urine|drain|stoma) ([\d.]+) mL$/,
    ([what, volume]) => ({ kind: 'output-measured/1', what: what as 'urine', volume: volumeOf(volume) }),
  ],
  [/^mouth care$/, () => ({ kind: 'mouth-care-done/1' })],
];

const ENTRY =
  /^(?:(\d{4}-\d\d-\d\d) )?(\d\d:\d\d) (.*?)(?: \((?:on ([a-z]+))?(?:, )?(?:written (\d\d:\d\d))?\))?(?: \[(\w+)\])?$/;
const DAY = '2026-11-25';

const moment = (day: string, time: string): Instant => instantOf(day, parseTimeOfDay(time) ?? 0, HERE);

/** The next such time after a moment, on the same day. */
const on = (time: string, _: Instant): Instant => moment(DAY, time);

function factOf(text: string, at: Instant): Fact {
  const wrong = /^(\w+) was entered in error$/.exec(text);
  if (wrong !== null) return { kind: 'entered-in-error/1', target: wrong[1]!, reason: 'wrong patient' };
  for (const [shape, make] of LINES) {
    const found = shape.exec(text);
    if (found !== null) return make(found.slice(1), at);
  }
  throw new Error(`a golden day says what nobody reads: ${text}`);
}

function entryOf(line: string, index: number): Entry {
  const found = ENTRY.exec(line);
  if (found === null) throw new Error(`no entry: ${line}`);
  const [, day = DAY, time, text, device = 'tablet', written, name] = found;
  const happenedAt = moment(day, time!);
  return {
    id: name ?? `line-${index + 1}`,
    course: 'day',
    happenedAt,
    recordedAt: written === undefined ? happenedAt : moment(day, written),
    by: 'nurse',
    device,
    number: index + 1,
    order: null,
    policy: null,
    task: null,
    corrects: null,
    fact: factOf(text!, happenedAt),
  };
}

const linesOf = (block: string): readonly string[] => block.split('\n').filter((line) => line.trim() !== '');

function expectedOf(block: string): readonly Expected[] {
  const found: { at: Instant; lines: string[] }[] = [];
  for (const line of linesOf(block)) {
    const at = /^at (?:(\d{4}-\d\d-\d\d) )?(\d\d:\d\d)$/.exec(line);
    if (at !== null) found.push({ at: moment(at[1] ?? DAY, at[2]!), lines: [] });
    else found.at(-1)?.lines.push(line.trim());
  }
  return found;
}

const blockOf = (text: string, name: string): string =>
  new RegExp(`\`\`\`${name}\\n([\\s\\S]*?)\`\`\``).exec(text)?.[1] ?? '';

function dayOf(text: string): Day {
  return {
    title: text.split('\n')[0]!,
    entries: linesOf(blockOf(text, 'entries')).map(entryOf),
    expected: expectedOf(blockOf(text, 'expect')),
  };
}

/** Every golden day, in the order of the files. */
export const readDays = (): readonly Day[] =>
  readdirSync(FOLDER)
    .filter((name) => /^\d/.test(name))
    .toSorted()
    .flatMap((name) => readFileSync(new URL(name, FOLDER), 'utf8').split(/^## /m).slice(1).map(dayOf));
