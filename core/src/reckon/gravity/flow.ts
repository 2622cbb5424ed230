/** How fast does it run under so much pressure? The one flow at which what drives equals what is lost. SI. */
import { type Line, lossOf } from './loss.ts';

export const GRAVITY = 9.80665;

/** Flows from a drop an hour to a jet lie within it, in ln m³/s. */
const START = Math.log(1e-7);
const MOST_ROUNDS = 80;
const CLOSE = 1e-11;
const LEAST_SLOPE = 0.2;
const MOST_SLOPE = 5;

/**
 * m³/s through the line under `pressure` Pa; 0 where nothing drives it. [GR3]
 * In logarithms the loss is nearly straight, so a secant needs about six looks; should it leave what is known to hold the
 * answer, it halves that instead.
 * @param near a flow that may be close, to begin with.
 */
export function flowUnder(line: Line, pressure: number, near = 0): number {
  if (!(pressure > 0)) return 0;
  const wanted = Math.log(pressure);
  let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [x, beforeX, beforeY, slope] = [
    near > 0 ? Math.log(near) : START,
    Number.NaN,
    Number.NaN,
    line.fluid.index,
  ];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const y = Math.log(lossOf(line, Math.exp(x))) - wanted;
    if (Math.abs(y) < CLOSE) break;
    if (y > 0) high = x;
    else low = x;
    if (!Number.isNaN(beforeX) && x !== beforeX)
      slope = Math.min(MOST_SLOPE, Math.max(LEAST_SLOPE, (y - beforeY) / (x - beforeX)));
    [beforeX, beforeY] = [x, y];
    const next = x - y / slope;
    x = next > low && next < high ? next : (low + high) / 2;
    if (x === beforeX) break;
  }
  return Math.exp(x);
}
