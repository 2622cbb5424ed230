/** `feedwright work gravity KEY=VALUE …`: how fast it runs from a barrel or a bag, as a band. */
import { instant } from '@feedwright/core/base/instant';
import { DEFAULT_POLICY } from '@feedwright/core/policy/defaults';
import { ask } from '@feedwright/core/policy/policy';
import { acceptedFor } from '@feedwright/core/reckon/asking/quantity-input';
import type { Ask } from '@feedwright/core/reckon/declare';
import { decimalText } from '@feedwright/core/reckon/exact';
import { GRAVITY_ASKS, GRAVITY_EXAMPLE } from '@feedwright/core/reckon/gravity/asks';
import type { Least } from '@feedwright/core/reckon/gravity/findings';
import { gravityOf } from '@feedwright/core/reckon/gravity/gravity';
import { gravityJson } from '@feedwright/core/screen/gravity/json';
import { gravityLines } from '@feedwright/core/screen/gravity/text';
import { Refused } from './fail.ts';
import { columns, plain, printJson, printLines } from './print.ts';

/** By the default policy, in which this has one row for adults and none for anybody else. */
function leastFor(ageDays: number): Least {
  const found = ask(DEFAULT_POLICY, 'bolus.least-duration', {
    ageDays,
    setting: 'hospital',
    at: instant(Number.MAX_SAFE_INTEGER),
  });
  return found.known ? { lasts: found.value, basis: found.basis } : null;
}

const bandText = ({ band, choices, unit }: Ask<unknown>): string =>
  band === null
    ? choices.join(', ')
    : `${decimalText(band.least)}–${decimalText(band.most)}${unitsText(unit)}`;

const unitsText = (unit: string): string => {
  const named = acceptedFor(unit).filter((one) => one !== '');
  return named.length === 0 ? '' : ` [${named.join(', ')}]`;
};

const whetherText = ({ required, assumed }: Ask<unknown>): string =>
  required ? 'needed' : assumed === null ? 'may be left out' : `${assumed} unless said`;

function about(): void {
  const rows = (Object.entries(GRAVITY_ASKS) as [string, Ask<unknown>][]).map(([key, one]) => [
    `  ${key}`,
    whetherText(one),
    bandText(one),
    one.also.join(', '),
  ]);
  const example = Object.entries(GRAVITY_EXAMPLE).map(([key, value]) => `${key}="${value}"`);
  printLines([
    plain('gravity: how fast a feed runs from a barrel or a bag, and how long it takes, as a band', 'title'),
    ...columns(rows).map((row) => plain(row)),
    plain(`  feedwright work gravity ${example.join(' ')}`, 'quiet'),
  ]);
}

/** Throws `Refused`, which its caller says. */
export function gravity(
  inputs: Readonly<Record<string, readonly string[]>>,
  { json = false, about: asks = false }: { readonly json?: boolean; readonly about?: boolean },
): void {
  if (asks) {
    about();
    return;
  }
  const found = gravityOf(inputs, leastFor);
  if (!found.ok) throw new Refused('work gravity', found.issues);
  if (json) printJson(gravityJson(found.value));
  else printLines(gravityLines(found.value));
}
