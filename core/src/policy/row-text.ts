/**
 * How are a row's ages and key written, and read back?
 * Ages as `18 years` or `28 days`, from (included) and below (not included).
 */
import { bad, issue, ok, type Result } from '../base/result.ts';
import { daysOfYears } from './age.ts';
import type { AgeBand } from './policy.ts';

export type WrittenBand = { readonly ageFrom?: string | undefined; readonly ageBelow?: string | undefined };

/** `6575` days are `18 years`; what is no whole number of years stays days. */
export function ageText(days: number): string {
  const years = Math.floor((days * 4) / 1461);
  return years > 0 && daysOfYears(years) === days ? `${years} years` : `${days} days`;
}

export const writeBand = (band: AgeBand | null): WrittenBand =>
  band === null
    ? {}
    : {
        ageFrom: ageText(band.fromDays),
        ...(band.belowDays === null ? {} : { ageBelow: ageText(band.belowDays) }),
      };

function readAge(field: string, text: string): Result<number> {
  const [, count, unit] = /^(0|[1-9]\d{0,4}) (days?|years?)$/.exec(text.trim()) ?? [];
  if (count === undefined) return bad(issue([field], 'policy/age', { text }));
  return ok(unit?.startsWith('year') === true ? daysOfYears(Number(count)) : Number(count));
}

/** @returns the band, null where no age is written. Issues: `policy/age`, on the field that is not understood. */
export function readBand({ ageFrom, ageBelow }: WrittenBand): Result<AgeBand | null> {
  if (ageFrom === undefined && ageBelow === undefined) return ok(null);
  const from = readAge('ageFrom', ageFrom ?? '0 days');
  const below = ageBelow === undefined ? ok(null) : readAge('ageBelow', ageBelow);
  if (!from.ok) return from;
  return below.ok ? ok({ fromDays: from.value, belowDays: below.value }) : below;
}
