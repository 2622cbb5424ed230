/**
 * How far may an order that goes up in steps have gone? Nothing steps by itself. To fill by: the steps that somebody has
 * confirmed. To warn by: every step taken as soon as it may be. [PR8]
 */
import { after, duration, type Instant, later, MINUTE, type Span } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import {
  ARITHMETIC,
  input,
  type Shown,
  shownNumber,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../base/working.ts';
import type { Advancement, OrderedRate, OrderedVolume } from '../order/order.ts';
import { type Frame, firstFed } from './frame.ts';
import { asOrdered, mixtureRate, mixtureVolume } from './mixture.ts';
import { ALWAYS } from './spans.ts';

/** From when so many steps are taken as confirmed. */
type Rung = Span & { readonly steps: number };

/** A quantity that holds for a time. */
export type Level<Q> = Span & { readonly is: Worked<Q> };

const stepsToGoal = ({ start, step, goal }: Advancement<number>): number =>
  goal <= start ? 0 : step <= 0 ? Number.POSITIVE_INFINITY : Math.ceil((goal - start) / step);

/** Whether there is still a step to go by what has been confirmed: while there is, nothing is made up. */
export const isAdvancing = (frame: Frame, advance: Advancement<number> | null): boolean =>
  advance !== null && frame.standing.advancement.stepsConfirmed < stepsToGoal(advance);

/** When the level that holds now began: at the last step, or when feeding did. */
const levelSince = (frame: Frame): Instant => frame.standing.advancement.since ?? firstFed(frame);

/** The earliest moments of the steps to come. An interval under a minute is no interval for people: a minute is taken. */
function rungs(frame: Frame, advance: Advancement<number>): readonly Rung[] {
  const { at, advancement } = frame.standing;
  const least = Math.max(0, advancement.stepsConfirmed);
  const most = stepsToGoal(advance);
  const rising: Rung[] = [{ ...ALWAYS, steps: least }];
  if (frame.pace === 'lowest' || advance.step <= 0) return rising;
  const every = duration(Math.max(advance.every, MINUTE));
  let next = later(after(levelSince(frame), every), at);
  for (let steps = least + 1; steps <= most && next < frame.near.until; steps += 1) {
    const last = rising.pop();
    if (last !== undefined) rising.push({ ...last, until: next });
    rising.push({ from: next, until: ALWAYS.until, steps });
    next = after(next, every);
  }
  return rising;
}

const reached = (advance: Advancement<number>, steps: number): number =>
  Math.min(advance.start + Math.min(steps, stepsToGoal(advance)) * advance.step, advance.goal);

type Kind<Q> = { readonly show: (value: Q) => Shown; readonly symbol: 'r' | 'V' };

/** The levels of an advancement over all time. */
const climbing = <Q extends number>(
  frame: Frame,
  advance: Advancement<Q>,
  { show, symbol }: Kind<Q>,
): readonly Level<Q>[] => {
  const path = { kind: 'order', path: 'regimen.advance' } as const;
  return rungs(frame, advance).map(({ from, until, steps }) => {
    const is = worked(reached(advance, steps) as Q, show, {
      equation: `${symbol} = min(${symbol}_start + k × ${symbol}_step, ${symbol}_goal)`,
      inputs: [
        input(`${symbol}_start`, show(advance.start), path),
        input(`${symbol}_step`, show(advance.step), path),
        input(`${symbol}_goal`, show(advance.goal), path),
        input('k', shownNumber(steps), ARITHMETIC),
      ],
      symbol,
      rule: 'PR8',
      basis: path,
    });
    return { from, until, is };
  });
};

function converted<Q>(
  levels: readonly Level<Q>[],
  convert: (is: Worked<Q>) => Worked<Q> | null,
): readonly Level<Q>[] | null {
  const made: Level<Q>[] = [];
  for (const { from, until, is } of levels) {
    const mixture = convert(is);
    if (mixture === null) return null;
    made.push({ from, until, is: mixture });
  }
  return made;
}

const RATE: Kind<Rate> = { show: shownRate, symbol: 'r' };
const VOLUME: Kind<Volume> = { show: shownVolume, symbol: 'V' };

/** The order's own maximum binds every rate, whatever else the order says. */
function withinMost(frame: Frame, is: Worked<Rate>): Worked<Rate> {
  const most = frame.order.mostRate;
  if (most === null || is.value <= most) return is;
  return worked(most, shownRate, {
    equation: 'r = min(r_ordered, r_most)',
    inputs: [
      input('r_ordered', shownRate(is.value), { kind: 'working', working: is.working }),
      input('r_most', shownRate(most), { kind: 'order', path: 'mostRate' }),
    ],
    symbol: 'r',
    rule: 'PR11',
    basis: { kind: 'order', path: 'mostRate' },
  });
}

/** The rate of the mixture over all time, as ordered or by its steps; null where the strength makes no sense of it. */
export function rateLevels(
  frame: Frame,
  { rate: ordered, of }: OrderedRate,
  advance: Advancement<Rate> | null,
  path: string,
): readonly Level<Rate>[] | null {
  const plain = (): readonly Level<Rate>[] => [{ ...ALWAYS, is: asOrdered(ordered, shownRate, 'r', path) }];
  return converted(advance === null ? plain() : climbing(frame, advance, RATE), (is) => {
    const mixture = mixtureRate(frame, is, of);
    return mixture === null ? null : withinMost(frame, mixture);
  });
}

/** The volume of one feed over all time, as `rateLevels`. */
export function volumeLevels(
  frame: Frame,
  { volume: ordered, of }: OrderedVolume,
  advance: Advancement<Volume> | null,
  path: string,
): readonly Level<Volume>[] | null {
  const plain = (): readonly Level<Volume>[] => [
    { ...ALWAYS, is: asOrdered(ordered, shownVolume, 'V', path) },
  ];
  return converted(advance === null ? plain() : climbing(frame, advance, VOLUME), (is) =>
    mixtureVolume(frame, is, of),
  );
}
