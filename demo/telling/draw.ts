/**
 * Where does chance come from? From a seed alone, so that the same seed gives the same ward to the byte. Splitmix with 32
 * bits of state: a counter, mixed until its bits no longer show it.
 */

/** A whole number from 0 to `below` − 1. */
export type Draw = (below: number) => number;

export function drawFrom(seed: number): Draw {
  let state = seed | 0;
  return (below) => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % below;
  };
}
