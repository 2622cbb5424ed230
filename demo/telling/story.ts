/**
 * What happened to one person, in the order in which it happened, and who was there? A story is a list that can be read
 * aloud; told, it becomes what was written down.
 */
import { fraction } from '@feedwright/core/base/fraction';
import { after, hours, type Instant, minutes } from '@feedwright/core/base/instant';
import type { Order } from '@feedwright/core/order/order';
import { everySince, when } from './clock.ts';
import type { Draw } from './draw.ts';
import { type Deed, emptyScene, goOn, type Told, together } from './scene.ts';

/** Somebody comes to the bedside: at a moment, or up to so many minutes after it was due. */
export type Line = { readonly due: Instant; readonly minutesLate: number; readonly deed: Deed };

export type Story = {
  readonly course: string;
  /** The ward whose ledger it is in. */
  readonly ward: string;
  readonly order: Order;
  /** On duty from 08:00, from 20:00, and the device that they write on. */
  readonly day: string;
  readonly night: string;
  readonly device: string;
  readonly happened: readonly (readonly Line[])[];
};

/** At that very moment. */
export const onTime = (due: Instant, ...deeds: readonly Deed[]): Line => ({
  due,
  minutesLate: 0,
  deed: together(...deeds),
});

export const at = (time: string, ...deeds: readonly Deed[]): readonly Line[] => [
  onTime(when(time), ...deeds),
];

/** A nurse who goes round is a little late, now here, now there. */
const ROUNDS_LATE = 15;

/** Every so many hours, beginning again at each moment: at the start of each feeding day, say. The last one is the end. */
export const rounds = (
  moments: readonly string[],
  everyHours: number,
  ...deeds: readonly Deed[]
): readonly Line[] =>
  everySince(moments, hours(everyHours)).map((due) => ({
    due,
    minutesLate: ROUNDS_LATE,
    deed: together(...deeds),
  }));

/** The same at each of several moments. */
export const each = (times: readonly string[], ...deeds: readonly Deed[]): readonly Line[] =>
  times.flatMap((time) => at(time, ...deeds));

/** Pumps give a little more or less than they count: within 3 % here, well inside what is usual. */
const trueFlowOf = (draw: Draw) => fraction(970 + draw(51), 1_000);

/** Everything that was written down, by when it happened. */
export function toldIn(story: Story, draw: Draw): readonly Told[] {
  const trueFlow = trueFlowOf(draw);
  const lines = story.happened
    .flat()
    .map(({ due, minutesLate, deed }) => ({ due, at: after(due, minutes(draw(minutesLate + 1))), deed }))
    .toSorted((a, b) => a.at - b.at);
  const first = lines[0];
  if (first === undefined) return [];
  return lines.reduce(
    (scene, line) => line.deed({ ...goOn(scene, line.at), due: line.due }),
    emptyScene(first.at, trueFlow),
  ).told;
}
