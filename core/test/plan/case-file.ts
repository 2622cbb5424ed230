/**
 * How is a golden case written? As a page that a nurse can read: a heading, the story, what is ordered, what is true now,
 * the arithmetic by hand, and what the plan must say. Only the fenced blocks are read here; the rest is for people.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Instant, Span } from '@feedwright/core/base/instant';
import { ml, mlPerHour, type Volume } from '@feedwright/core/base/volume';
import { instantOf, parseTimeOfDay, type Zone } from '@feedwright/core/base/zone';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import { parseOrder } from '@feedwright/core/order/document';
import type { Order } from '@feedwright/core/order/order';
import type { PlanRequest } from '@feedwright/core/plan/plan';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { policyKey } from '@feedwright/core/policy/keys';
import type { Policy } from '@feedwright/core/policy/policy';
import { parseValue } from '@feedwright/core/policy/value-text';
import { blankStanding, type Standing } from '@feedwright/core/standing/standing';

const FOLDER = new URL('../../cases/', import.meta.url);

export type Case = {
  readonly title: string;
  readonly request: PlanRequest;
  readonly expected: readonly string[];
};

type Json = { readonly [field: string]: unknown };

/** An adult with everything that an order must have; a case writes only what is different. */
const ADULT: Json = {
  document: 'feedwright-order/1',
  id: 'case',
  zone: 'Europe/London',
  setting: 'hospital',
  patient: {
    name: 'Ada',
    birthDate: '1950-02-28',
    identifiers: [{ kind: 'hospital-number', value: '000111' }],
    dosingWeight: { kg: 60, on: '2026-03-20' },
  },
  prescriber: { name: 'a prescriber' },
  feed: { id: 'standard-1.0', strength: 1 },
  access: {
    device: 'nasogastric',
    french: 10,
    lumens: [{ name: 'feeding port', tip: 'gastric', uses: ['feed', 'medicine'] }],
    feedBy: 'feeding port',
    medicineBy: 'feeding port',
  },
  method: 'pump',
  water: { water: 'tap', given: [{ kind: 'interval', volumeMl: 30, everyHours: 4 }] },
};

const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Fields are laid over each other; a regimen and lists are replaced whole. */
function laidOver(base: Json, own: Json): Json {
  const fields = Object.entries(own).map(([field, value]) => {
    const under = base[field];
    return [field, isObject(under) && isObject(value) ? laidOver(under, value) : value] as const;
  });
  return { ...base, ...Object.fromEntries(fields) };
}

const fail = (what: string): never => {
  throw new Error(`golden case: ${what}`);
};

/** `2026-11-25 08:00` on the case's wall clock. */
function moment(text: string, zone: Zone): Instant {
  const [day = '', time = ''] = text.trim().split(' ');
  return instantOf(day, parseTimeOfDay(time) ?? fail(`time ${text}`), zone);
}

const amount = (text: string): Volume =>
  ml(Number(/^([\d.]+) mL$/.exec(text.trim())?.[1] ?? fail(`amount ${text}`)));

const CLOCK_CHECKS = /^check\.(?!residual)|^care\./;

/** `policy quiet` leaves out the checks that come by the clock, so that a case is about what it is about. */
function policyBy(lines: readonly string[]): Policy {
  const quiet = lines.includes('quiet');
  const rows = DEFAULT_POLICY.rows.filter((row) => !quiet || !CLOCK_CHECKS.test(row.key));
  const own = new Map(
    lines
      .filter((line) => line !== 'quiet')
      .map((line) => {
        const [name = '', ...rest] = line.split(' ');
        const key = policyKey(name) ?? fail(`policy ${line}`);
        const value = parseValue(key, rest.join(' ') === 'not set' ? null : rest.join(' '));
        return [key, value.ok ? value.value : fail(`policy ${line}`)] as const;
      }),
  );
  return {
    ...DEFAULT_POLICY,
    rows: rows.map((row) => (own.has(row.key) ? { ...row, value: own.get(row.key) as never } : row)),
  };
}

type Now = {
  readonly at: Instant;
  readonly until: Instant | null;
  readonly standing: Standing;
  readonly policy: Policy;
  readonly protectedTimes: readonly Span[];
};

/** `put up 2026-11-25 04:00, filled 500 mL, 260 mL left` */
function container(text: string, zone: Zone, feed: string): Standing['container'] {
  const found = /^put up (.+), filled (.+), (.+) left$/.exec(text) ?? fail(`container ${text}`);
  const putUpAt = moment(found[1] as string, zone);
  return {
    id: 'up',
    feed,
    putUpAt,
    comesDownBy: null,
    filled: amount(found[2] as string),
    remaining: amount(found[3] as string),
  };
}

/** `A opened 2026-11-25 02:00, 120 mL left` */
function carton(text: string, zone: Zone, feed: string): Standing['cartons'][number] {
  const found = /^(\w+) opened (.+), (.+) left$/.exec(text) ?? fail(`carton ${text}`);
  const [, id = '', opened = '', left = ''] = found;
  return { id, feed, openedAt: moment(opened, zone), remaining: amount(left) };
}

function nowOf(block: string, order: Json, zone: Zone): Now {
  const lines = block.split('\n').map((line) => line.trim());
  const all = (name: string): readonly string[] =>
    lines.filter((line) => line.startsWith(`${name} `)).map((line) => line.slice(name.length + 1));
  const one = (name: string): string | null => all(name)[0] ?? null;
  const feed = (order.feed as { id: string }).id;
  const at = moment(one('now') ?? fail('no now'), zone);
  const [up, bag, set, running, steps] = ['up', 'water-bag', 'set', 'running', 'steps'].map(one);
  const since = one('feeding-since');
  const standing: Standing = {
    ...blankStanding(at),
    container: up == null ? null : container(up, zone, feed),
    waterBag: bag == null ? null : container(bag, zone, 'water'),
    set: set == null ? null : { putUpAt: moment(set.replace('put up ', ''), zone) },
    running: running == null ? null : { rate: mlPerHour(Number.parseFloat(running)), since: at },
    cartons: all('carton').map((text) => carton(text, zone, feed)),
    feedingSince: since === null ? null : moment(since, zone),
    receivedToday: amount(one('received') ?? '0 mL'),
    waterToday: amount(one('water') ?? '0 mL'),
    advancement: stepsOf(steps ?? null, zone),
    done: new Set(all('done')),
  };
  const until = one('until');
  return {
    at,
    until: until === null ? null : moment(until, zone),
    standing,
    policy: policyBy(all('policy')),
    protectedTimes: all('protected').map((text) => {
      const [from = '', to = ''] = text.split(' to ');
      return { from: moment(from, zone), until: moment(to, zone) };
    }),
  };
}

/** `1 confirmed 2026-11-25 16:00` */
function stepsOf(text: string | null, zone: Zone): Standing['advancement'] {
  if (text === null) return { stepsConfirmed: 0, since: null };
  const [count = '', , ...when] = text.split(' ');
  return { stepsConfirmed: Number(count), since: moment(when.join(' '), zone) };
}

const block = (section: string, name: string): string | null =>
  new RegExp(`\`\`\`${name}\\n([\\s\\S]*?)\`\`\``).exec(section)?.[1] ?? null;

/** The order begins when the case does, unless it says otherwise; it was written an hour before. */
function orderOf(own: Json, now: string, zone: string): Json {
  const at = moment(/now (.+)/.exec(now)?.[1] ?? fail('no now'), zone as Zone);
  const written = new Date(at - 3_600_000).toISOString();
  const begins = new Date(at).toISOString();
  return laidOver({ ...ADULT, prescribedAt: written, startsAt: begins }, own);
}

/** The request that a case makes: an ordinary order with these fields laid over it, at the moment and standing of `now`. */
export function requestOf(own: Json, now: string, title = 'request'): PlanRequest {
  const zone = (own.zone ?? ADULT.zone) as Zone;
  const json = orderOf(own, now, zone);
  const order = parseOrder(json);
  if (!order.ok) return fail(`${title}: ${JSON.stringify(order.issues)}`);
  const { until, standing, policy, protectedTimes } = nowOf(now, json, zone);
  return {
    order: order.value as Order,
    feeds: DEFAULT_FEEDS,
    policy,
    standing,
    protectedTimes,
    ...(until === null ? {} : { until }),
  };
}

function readCase(section: string): Case {
  const title = section.split('\n')[0]?.trim() ?? '';
  const part = (name: string): string => block(section, name) ?? fail(`${title}: no ${name}`);
  return {
    title,
    request: requestOf(JSON.parse(part('json')) as Json, part('now'), title),
    expected: part('expect')
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
  };
}

/** Every case of every page in core/cases, in order. */
export const readCases = (): readonly Case[] =>
  readdirSync(FOLDER)
    .filter((name) => /^\d.*\.md$/.test(name))
    .toSorted()
    .flatMap((name) => readFileSync(new URL(name, FOLDER), 'utf8').split(/^## /m).slice(1))
    .map(readCase);
