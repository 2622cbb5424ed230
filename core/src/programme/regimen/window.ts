/**
 * When is the window of a cyclic feed, and how fast must feed run for a volume to be given in it? A window is wall clock:
 * when the clocks change it lasts more or less than they say. [PR4] [PR5]
 */
import { type Duration, duration, type Span } from '../../base/instant.ts';
import {
  givenSoFar,
  inMlPerHour,
  type Rate,
  rate,
  rateDownTo,
  rateFor,
  STOPPED,
  type Volume,
} from '../../base/volume.ts';
import {
  ARITHMETIC,
  input,
  shownDuration,
  shownRate,
  shownVolume,
  type Worked,
  worked,
} from '../../base/working.ts';
import { dayNumberAt, instantOn } from '../../base/zone.ts';
import type { Regimen } from '../../order/order.ts';
import { windowOf } from '../../order/per-day.ts';
import { leastCeiling } from '../ceiling.ts';
import type { Frame } from '../frame.ts';
import { lasting, without } from '../spans.ts';

export type Cyclic = Extract<Regimen, { kind: 'cyclic' }>;

/** `nominal` is what the clock says that it lasts; on the days on which clocks change it lasts more or less. */
export type Window = Span & { readonly nominal: Duration };

/** The windows that are near, and those before them whose feed may be in the same day's count. */
export function windowsOf({ order, near }: Frame, regimen: Cyclic): readonly Window[] {
  const overnight = regimen.until < regimen.from ? 1 : 0;
  const nominal = windowOf(regimen);
  const windows: Window[] = [];
  for (let day = dayNumberAt(near.from, order.zone) - 2; ; day += 1) {
    const from = instantOn(day, regimen.from, order.zone);
    if (from >= near.until) return windows;
    windows.push({ from, until: instantOn(day + overnight, regimen.until, order.zone), nominal });
  }
}

/** The part of a window's volume that falls to the part of it in which the order holds. */
export function wantedIn(whole: Worked<Volume>, window: Window, hours: readonly Span[]): Worked<Volume> {
  const [ordered, lasts] = [lasting(hours), lasting([window])];
  if (ordered === lasts) return whole;
  return worked(givenSoFar(whole.value, ordered, lasts), shownVolume, {
    equation: 'V = V_window × t_ordered / t_window',
    inputs: [
      input('V_window', shownVolume(whole.value), { kind: 'working', working: whole.working }),
      input('t_ordered', shownDuration(ordered), ARITHMETIC),
      input('t_window', shownDuration(lasts), ARITHMETIC),
    ],
    symbol: 'V',
    rule: 'PR4',
    basis: ARITHMETIC,
  });
}

/**
 * How fast a volume may be given in fewer hours than the clock promises: up to the ceiling, or to the rate that the order
 * itself comes to on an ordinary night, which is for the order's own rules to judge; never over the order's own maximum.
 */
export function mostFor(frame: Frame, volume: Worked<Volume>, { nominal }: Window): Worked<Rate> {
  const ceiling = leastCeiling(frame, { catchUp: false, most: null });
  const asWritten = nominal > 0 ? rateFor(volume.value, nominal) : STOPPED;
  const allowed = ceiling === null || ceiling.value < asWritten ? asWritten : ceiling.value;
  const most = frame.order.mostRate;
  return worked(most !== null && most < allowed ? most : allowed, shownRate, {
    equation: 'r_most = min(max(r_ceiling, V / t_clock), r_order)',
    inputs: [
      ...(ceiling === null
        ? []
        : [input('r_ceiling', shownRate(ceiling.value), { kind: 'working', working: ceiling.working })]),
      input('V', shownVolume(volume.value), { kind: 'working', working: volume.working }),
      input('t_clock', shownDuration(nominal), { kind: 'order', path: 'regimen' }),
      ...(most === null ? [] : [input('r_order', shownRate(most), { kind: 'order', path: 'mostRate' })]),
    ],
    symbol: 'r_most',
    rule: 'PR11',
    basis: ARITHMETIC,
  });
}

/** V / (T − held), down to the pump's step. [PR4] */
export function rateInWindow(
  frame: Frame,
  wanted: Worked<Volume>,
  hours: readonly Span[],
  most: Worked<Rate>,
): Worked<Rate> | null {
  const open = lasting(without(hours, frame.held));
  if (open <= 0) return null;
  const { rate: step, basis } = frame.pumpStep;
  const exact = rateFor(wanted.value, open);
  return worked(rateDownTo(rate(Math.min(exact, most.value)), step), shownRate, {
    equation: 'r = min(V / (T − t_held), r_most)',
    inputs: [
      input('V', shownVolume(wanted.value), { kind: 'working', working: wanted.working }),
      input('T', shownDuration(lasting(hours)), { kind: 'order', path: 'regimen' }),
      input('t_held', shownDuration(duration(lasting(hours) - open)), { kind: 'order', path: 'holds' }),
      input('r_most', shownRate(most.value), { kind: 'working', working: most.working }),
      input('r_step', shownRate(step), basis),
    ],
    symbol: 'r',
    rounded: { way: 'down', step: inMlPerHour(step) },
    rule: 'PR4',
    basis: ARITHMETIC,
  });
}
