/**
 * How does what was told become entries? Each is written down a little after it happened, or much later, on a device that
 * counts its own entries and may have a clock that is fast. Ids are the device's; what names another entry gets its id.
 */
import { after, type Duration, duration, type Instant, later, SECOND } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import { timeOfDayAt } from '@feedwright/core/base/zone';
import type { Entry } from '@feedwright/core/record/entry';
import type { Fact } from '@feedwright/core/record/fact';
import { LONDON } from './clock.ts';
import { type Draw, drawFrom } from './draw.ts';
import type { Told } from './scene.ts';
import { type Story, toldIn } from './story.ts';

export type Clocks = {
  /** How far a device's clock is ahead of the world's. */
  readonly aheadBy: ReadonlyMap<string, Duration>;
};

type Written = {
  readonly course: string;
  readonly told: Told;
  readonly by: string;
  readonly device: string;
  readonly happenedAt: Instant;
  readonly recordedAt: Instant;
};

const secondsOf = (draw: Draw, least: number, span: number): Duration =>
  duration((least + draw(span)) * SECOND);

const [DAY_BEGINS, NIGHT_BEGINS] = [8 * 60, 20 * 60];

function onDuty({ day, night }: Story, at: Instant): string {
  const time = timeOfDayAt(at, LONDON);
  return time >= DAY_BEGINS && time < NIGHT_BEGINS ? day : night;
}

/** What is written down at once comes in the order in which it happened; what is late comes when somebody gets to it. */
function writtenIn(story: Story, draw: Draw, aheadBy: Clocks['aheadBy']): readonly Written[] {
  let last = 0 as Instant;
  return toldIn(story, draw).map((told) => {
    const device = told.device ?? story.device;
    const ahead = aheadBy.get(device) ?? duration(0);
    const soon = later(after(told.at, secondsOf(draw, 20, 80)), after(last, secondsOf(draw, 3, 6)));
    const recorded = told.late === null ? soon : after(after(told.at, told.late), secondsOf(draw, 0, 50));
    if (told.late === null) last = recorded;
    return {
      course: story.course,
      told,
      by: told.by ?? onDuty(story, recorded),
      device,
      happenedAt: after(told.at, ahead),
      recordedAt: after(recorded, ahead),
    };
  });
}

/** Each device counts what is written on it, in the order in which it is. */
function numbered(written: readonly Written[]): ReadonlyMap<Written, number> {
  const numbers = new Map<Written, number>();
  for (const own of Map.groupBy(written, (one) => one.device).values()) {
    own.forEach((one, index) => void numbers.set(one, index + 1));
  }
  return numbers;
}

type IdOf = (name: string) => string;

function withIds(fact: Fact, idOf: IdOf): Fact {
  if (fact.kind === 'entered-in-error/1') return { ...fact, target: idOf(fact.target) };
  if (fact.kind !== 'duplicate-settled/1') return fact;
  return { ...fact, keeps: idOf(fact.keeps), drops: idOf(fact.drops) };
}

/** The entries of several stories, in the order in which they were written down. */
export function entriesOf(
  stories: readonly Story[],
  { seed, policy, aheadBy }: Clocks & { readonly seed: number; readonly policy: string },
): readonly Entry[] {
  const written = stories
    .flatMap((story, index) => writtenIn(story, drawFrom(seed * 1_000 + index), aheadBy))
    .toSorted((a, b) => a.recordedAt - b.recordedAt);
  const numbers = numbered(written);
  const idOfWritten = (one: Written): string => `${one.device}-${String(numbers.get(one)).padStart(4, '0')}`;
  const named = new Map(
    written.flatMap((one) => (one.told.name === null ? [] : [[`${one.course} ${one.told.name}`, one]])),
  );
  return written.map((one) => {
    const { told, by, course, device, happenedAt, recordedAt } = one;
    const idOf: IdOf = (name) => {
      const other = named.get(`${course} ${name}`) ?? impossible(`nothing was called ${name}`);
      return idOfWritten(other);
    };
    return {
      id: idOfWritten(one),
      course,
      happenedAt,
      recordedAt,
      by,
      device,
      number: numbers.get(one) ?? 0,
      order: told.order,
      policy,
      task: told.task,
      corrects: told.corrects === null ? null : idOf(told.corrects),
      fact: withIds(told.fact, idOf),
    };
  });
}
