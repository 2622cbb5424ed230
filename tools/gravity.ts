/**
 * How far is the sum from what others measured? Writes docs/gravity.md and, in docs/sources.md, the section
 * “Hydraulics”: `node tools/gravity.ts`. Nothing is fitted; a test says when the page is out of date.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { flowUnder, GRAVITY } from '@feedwright/core/reckon/gravity/flow';
import { type Fluid, water } from '@feedwright/core/reckon/gravity/fluid';
import { lineOf } from '@feedwright/core/reckon/gravity/loss';
import { HYDRAULICS } from '@feedwright/core/reckon/gravity/sources';

const ROOT = join(import.meta.dirname, '..');
export const PAGE = join(ROOT, 'docs/gravity.md');
export const SOURCES = join(ROOT, 'docs/sources.md');
const MEASURED = join(ROOT, 'core/cases/gravity-measured.json');

type Tube = { readonly boreMm: number; readonly lengthCm: number };
type Row = {
  readonly set: string;
  readonly id: string;
  readonly measured: number;
  readonly unit: string;
  readonly kind: 'flow' | 'ratio' | 'time_ratio';
  readonly headCm: number;
  readonly fluid?: Fluid;
  readonly waterCelsius?: number;
  readonly tubes: readonly Tube[];
  readonly against?: readonly Tube[];
  /** What the open rig lets through under the same head. */
  readonly rigMlPerMin?: number;
};
type SetOf = {
  readonly what: string;
  readonly source: string;
  readonly from: string;
  readonly assumed: string;
};
type Measured = { readonly sets: Readonly<Record<string, SetOf>>; readonly rows: readonly Row[] };

const PER_MINUTE = 6e7;

/** mL/min through these tubes on the row's bench. */
function flow({ fluid, waterCelsius = 20, headCm, rigMlPerMin }: Row, tubes: readonly Tube[]): number {
  const runs = fluid ?? water(waterCelsius);
  const pressure = (runs.density * GRAVITY * headCm) / 100;
  const rig = rigMlPerMin === undefined ? 0 : pressure / (rigMlPerMin / PER_MINUTE) ** 2;
  const reaches = tubes.map(({ boreMm, lengthCm }) => ({ bore: boreMm / 1e3, length: lengthCm / 100 }));
  return flowUnder(lineOf(runs, reaches, rig), pressure) * PER_MINUTE;
}

function predicted(row: Row): number {
  const own = flow(row, row.tubes);
  if (row.kind === 'flow') return own;
  const other = flow(row, row.against ?? []);
  return row.kind === 'ratio' ? own / other : other / own;
}

export type Compared = Row & { readonly predicted: number; readonly percent: number };
export type ErrorOfSet = {
  readonly n: number;
  readonly mean: number;
  readonly absolute: number;
  readonly worst: number;
};

export const measured = (): Measured => JSON.parse(readFileSync(MEASURED, 'utf8'));

export const compared = (): readonly Compared[] =>
  measured().rows.map((row) => {
    const found = predicted(row);
    return { ...row, predicted: found, percent: (found / row.measured - 1) * 100 };
  });

export function errorOf(rows: readonly Compared[]): ErrorOfSet {
  const all = rows.map(({ percent }) => percent);
  const mean = (of: readonly number[]): number => of.reduce((sum, one) => sum + one, 0) / of.length;
  const worst = all.reduce((far, one) => (Math.abs(one) > Math.abs(far) ? one : far), 0);
  return { n: all.length, mean: mean(all), absolute: mean(all.map(Math.abs)), worst };
}

const signed = (percent: number): string => `${percent < 0 ? '−' : '+'}${Math.abs(percent).toFixed(0)} %`;

function tables(): readonly string[] {
  const all = Map.groupBy(compared(), (row) => row.set);
  const { sets } = measured();
  const summary = [...all].map(([name, rows]) => {
    const { n, mean, absolute, worst } = errorOf(rows);
    const { what = '', source = '' } = sets[name] ?? {};
    return `| ${name} | ${n} | ${what} | ${source} | ${signed(mean)} | ${absolute.toFixed(0)} % | ${signed(worst)} |`;
  });
  const basis = Object.entries(sets).map(
    ([name, { from, assumed }]) => `- ${name}: ${from}. Assumed: ${assumed}.`,
  );
  const rows = compared().map(
    ({ id, measured: was, unit, predicted: found, percent }) =>
      `| ${id} | ${was} | ${unit} | ${found.toPrecision(3)} | ${signed(percent)} |`,
  );
  return [
    '| set | n | what | source | mean error | mean size of error | worst |',
    '| --- | --- | --- | --- | --- | --- | --- |',
    ...summary,
    '',
    ...basis,
    '',
    '## Row by row',
    '',
    '| row | measured | unit | by the equations | error |',
    '| --- | --- | --- | --- | --- |',
    ...rows,
  ];
}

const INTRODUCTION = `# By gravity

Written by \`node tools/gravity.ts\`. How fast a feed runs from a barrel or a bag is physics with poorly known inputs: \`feedwright work gravity\` gives a band, never a promise. Nothing here is fitted to a measurement.

## Equations

ρ g H − P = Σ ½ ρ v² (f L/d + K_in + K_out) over every tube in the row, v = Q / ¼πd².

- f by Churchill 1977 (64/Re while laminar); a feed that thins by Metzner and Reed's Reynolds number, laminar to 3470 − 1370 n (H38, H39).
- K_in 0.28 laminar, 0.5 turbulent, times 1 − A/A_above; K_out 2 laminar, 1 turbulent, times (1 − A/A_below)²; from one to the other between Re 2000 and 4000. A single tube loses 2.28 velocity heads, Hagenbach's 1.14 ρv² (H36). Side eyes cost nothing (H1).
- Emptying: t = A/(ρg) ∫ dp/Q from full to empty, summed with a bound on its error.
- The band: bore, viscosity, stomach pressure and the model itself (8 %, a judgement) each with its own spread; the flow's ends are its 5th and 95th hundredth to first order. After one timed pour tube and feed are better known; the stomach's pressure is as unknown the next time as before.

## Where it holds

A primed, clean, open line without air or kink, an open barrel or a bag that collapses, adults and children past 28 days, a tip in the stomach. Not: air lock, roller clamp, clot, particles, foam, reflux. Not offered to the newborn (bore ± 10 %, millilitre volumes) or past the stomach; of blended feed only yes or no. Feeds run laminar; water flushes and wide tubes do not, and there a thicker liquid may even run a little faster. 28 days and the stomach are boundaries decided exactly; whether a feed may be faster than local policy allows is compared with an estimate, and the answer says so.

## Against what others measured

Most of it is water at Reynolds numbers of 1300 to 4000, harder for the equations than feed: it tries end losses, transition and tubes in a row, not thick feed. Of feeds there are ratios and bounds only (D3, D6, D8): no fully described flow of a feed was found. In D2 the flow is overstated by a quarter: hubs and curls are not modelled. In D4 it grows with height to the power of 0.62, by the equations to about 0.76: what raising gains is a little overstated for fast, thin streams.
`;

/** A bound, not a figure: the densest two of five feeds took over 4 h, all else under 2 h 5 min. */
const BOUNDS = `
D8 (H23) is bounds: five fibre feeds, 8, 10 and 12 Fr, 500 mL assumed, height and bore not given. The two densest took over 4 h through 8 Fr (under 2.1 mL/min; by the equations at 60–120 mPa·s and 60–100 cm: BOUND_THICK); all else under 2 h 5 min (over 4 mL/min; at 8–25 mPa·s: BOUND_THIN, so that 25 mPa·s at 60 cm falls short of it).
`;

/** mL/min through a giving set of 3 mm × 180 cm and 8 Fr × 120 cm. */
export const throughEightFr = (mPas: number, headCm: number, boreMm = 1.9): number =>
  flow(
    {
      set: 'D8',
      id: '',
      measured: 0,
      unit: '',
      kind: 'flow',
      headCm,
      tubes: [],
      fluid: { density: 1065, consistency: mPas / 1e3, index: 1 },
    },
    [
      { boreMm: 3, lengthCm: 180 },
      { boreMm, lengthCm: 120 },
    ],
  );

const span = (low: number, high: number): string => `${low.toPrecision(2)} to ${high.toPrecision(2)} mL/min`;

export const page = (): string =>
  `${INTRODUCTION}\n${tables().join('\n')}\n${BOUNDS.replace('BOUND_THICK', span(throughEightFr(120, 60, 1.6), throughEightFr(60, 100))).replace('BOUND_THIN', span(throughEightFr(25, 60), throughEightFr(8, 100)))}`;

const PROVENANCE: Readonly<Record<string, string>> = {
  read: 'read',
  secondary: 'secondary',
  'from-memory': 'from memory',
};

/** docs/sources.md with its section on hydraulics as it should be. */
export function sourcesWith(text: string): string {
  const rows = Object.entries(HYDRAULICS).map(
    ([id, { cite, taken, provenance }]) => `| ${id} | ${cite} | ${PROVENANCE[provenance]}: ${taken} |`,
  );
  const body = [
    'Written by `node tools/gravity.ts`; docs/gravity.md says how far the equations are from what was measured.',
    '',
    '| id | source | what was taken from it, and how |',
    '| --- | --- | --- |',
    ...rows,
  ].join('\n');
  const [before, after] = text.split('## Hydraulics\n');
  if (before === undefined || after === undefined)
    throw new Error('docs/sources.md has no section Hydraulics');
  return `${before}## Hydraulics\n\n${body}\n\n${after.slice(after.search(/^## /m))}`;
}

if (import.meta.main) {
  writeFileSync(PAGE, page());
  writeFileSync(SOURCES, sourcesWith(readFileSync(SOURCES, 'utf8')));
  for (const [name, rows] of Map.groupBy(compared(), (row) => row.set)) {
    const { n, mean, absolute, worst } = errorOf(rows);
    console.log(
      `${name}  n ${n}  mean ${signed(mean)}  mean size ${absolute.toFixed(0)} %  worst ${signed(worst)}`,
    );
  }
}
