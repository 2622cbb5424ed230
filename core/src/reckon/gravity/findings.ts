/** What does the estimate come to: does it run, is it worth while, may it be faster than one feed may be? Codes; words are at the edge. */
import type { Duration } from '../../base/instant.ts';
import type { Basis } from '../../base/working.ts';
import type { Spread } from './fluid.ts';

/** The shortest time one feed may take, by local policy; null where policy says nothing for this patient. */
export type Least = { readonly lasts: Duration; readonly basis: Basis } | null;

/** What it comes to, as codes with data: words are at the edge. */
export type Finding = { readonly code: string; readonly data: Readonly<Record<string, number | string>> };

/** mL/min: under the first as good as stopped, under the second no method. H40: judgements, shown as such. */
const [AS_GOOD_AS_STOPPED, IMPRACTICAL] = [1, 2];

export function runningFindings(
  { low, mid, high }: Spread,
  balance: Spread,
  height: number,
): readonly Finding[] {
  const cm = height * 100;
  const data = { cm, low: balance.low, high: balance.high };
  if (cm < balance.low) return [{ code: 'runs-back', data }];
  if (!(mid > 0)) return [{ code: 'stands-or-runs-back', data }];
  const speed = { low, mid, high };
  return [
    ...(cm < balance.high ? [{ code: 'may-stand', data }] : []),
    ...(mid < AS_GOOD_AS_STOPPED
      ? [{ code: 'as-good-as-stopped', data: speed }]
      : mid < IMPRACTICAL
        ? [{ code: 'impractical', data: speed }]
        : []),
  ];
}

/** [GR9] */
export function againstPolicy({ low, high }: Spread, least: Least): readonly Finding[] {
  if (least === null) return [{ code: 'least-not-set', data: {} }];
  const minutes = least.lasts / 60_000;
  const basis: Record<string, string> =
    least.basis.kind === 'policy' ? { source: least.basis.source, setBy: least.basis.setBy } : {};
  if (high / 60 < minutes) return [{ code: 'faster-than-policy', data: { minutes, ...basis } }];
  return low / 60 < minutes ? [{ code: 'may-be-faster-than-policy', data: { minutes, ...basis } }] : [];
}
