/** Runs the command as a person would: the committed launcher, in a process of its own. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after } from 'node:test';

const LAUNCHER = new URL('../bin/feedwright.mjs', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'feedwright-cli-'));
after(() => rmSync(folder, { recursive: true, force: true }));

export type Ran = { readonly code: number | null; readonly out: string; readonly err: string };

export function feedwright(args: readonly string[], environment: Readonly<Record<string, string>> = {}): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [LAUNCHER, ...args], {
    encoding: 'utf8',
    env: { ...process.env, ...environment },
    maxBuffer: 1 << 26,
  });
  return { code: status, out: stdout, err: stderr };
}

let made = 0;

/** A file with this text, or this value as JSON. */
export function file(content: unknown): string {
  const path = join(folder, `file-${++made}.json`);
  writeFileSync(path, typeof content === 'string' ? content : JSON.stringify(content));
  return path;
}

/** An invented order in which nothing is wrong. */
export const ORDER = {
  document: 'feedwright-order/1',
  id: 'order-1',
  zone: 'Europe/London',
  setting: 'hospital',
  patient: {
    name: 'Maud Ferrier',
    birthDate: '1951-03-04',
    identifiers: [{ kind: 'hospital-number', value: 'H 204 117' }],
    allergies: ['latex'],
    dosingWeight: { kg: 64, on: '2026-11-20' },
  },
  prescriber: { name: 'Dr Imogen Vale', role: 'physician' },
  prescribedAt: '2026-11-25T07:00:00+00:00',
  startsAt: '2026-11-25T08:00:00+00:00',
  feed: { id: 'standard-1.0', strength: 'full' },
  access: {
    device: 'nasogastric',
    lumens: [{ name: 'main', tip: 'gastric', uses: ['feed', 'medicine'] }],
    feedBy: 'main',
    medicineBy: 'main',
  },
  method: 'pump',
  regimen: { kind: 'continuous', rateMlPerHour: 62.5 },
  water: { water: 'tap', given: [{ kind: 'interval', volumeMl: 30, everyHours: 4 }] },
} as const;

export const AT = ['--from', '2026-11-25T08:00'] as const;
