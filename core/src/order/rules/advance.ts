/** [OR28] [OR48] Do the steps lead to their goal, and when at the earliest? Nothing steps by itself. */
import type { Fraction } from '../../base/fraction.ts';
import { fraction } from '../../base/fraction.ts';
import { after, duration, HOUR } from '../../base/instant.ts';
import { inMl, inMlPerHour, type Rate, type Volume } from '../../base/volume.ts';
import type { Advancement, Order, Problem, Regimen } from '../order.ts';
import { problem } from '../problem.ts';

type Advancing = {
  readonly advance: Advancement<number>;
  /** The amount that the regimen itself names: somewhere on the way from start to goal. */
  readonly ordered: number | null;
  readonly shown: (amount: number) => Fraction;
  readonly unit: string;
};

const inVolume = { shown: (amount: number) => inMl(amount as Volume), unit: 'mL' };
const inRate = { shown: (amount: number) => inMlPerHour(amount as Rate), unit: 'mL/h' };

function advancing(regimen: Regimen | null): Advancing | null {
  const advance = regimen?.advance ?? null;
  if (regimen === null || advance === null) return null;
  switch (regimen.kind) {
    case 'intermittent':
    case 'bolus':
      return { advance, ordered: regimen.volume.volume, ...inVolume };
    case 'continuous':
      return { advance, ordered: regimen.rate.rate, ...inRate };
    case 'cyclic':
      return { advance, ordered: regimen.rate?.rate ?? null, ...inRate };
    case 'volume-targeted':
      return { advance, ordered: regimen.baseRate.rate, ...inRate };
  }
}

const path = ['regimen', 'advance'] as const;

function contradictions({ advance, ordered, shown, unit }: Advancing): readonly Problem[] {
  const { start, goal } = advance;
  const says = { start: shown(start), goal: shown(goal), unit };
  if (start > goal) return [problem('order/advance-contradicts', path, { what: 'away-from-goal', ...says })];
  return ordered === null || (ordered >= start && ordered <= goal)
    ? []
    : [
        problem('order/advance-contradicts', path, {
          what: 'ordered-not-on-the-way',
          value: shown(ordered),
          ...says,
        }),
      ];
}

function worthKnowing({ startsAt }: Order, { advance, shown, unit }: Advancing): Problem {
  const { start, step, goal, every } = advance;
  const steps = Math.ceil((goal - start) / step);
  const lasts = duration(steps * every);
  return problem('order/advances', path, {
    start: shown(start),
    step: shown(step),
    goal: shown(goal),
    unit,
    steps,
    everyHours: fraction(every, HOUR),
    /** The last step is cut off at the goal. */
    lastStep: shown(steps === 0 ? 0 : goal - start - (steps - 1) * step),
    reachedAt: startsAt === null ? null : after(startsAt, lasts),
  });
}

export function advance(order: Order): readonly Problem[] {
  const found = advancing(order.regimen);
  if (found === null) return [];
  const wrong = contradictions(found);
  return wrong.length > 0 ? wrong : [worthKnowing(order, found)];
}
