/**
 * Which words does a screen need? The catalogue's shape; `english.ts` and its siblings fill it. A language that lacks a
 * word does not compile.
 */
import type { Duration } from '../base/instant.ts';
import type { WaterKind } from '../order/order.ts';
import type { DownBecause, Infeasible, TaskKind } from '../plan/plan.ts';
import type { GapReason, LossReason } from '../programme/programme.ts';
import type { StandingWords } from './standing/words.ts';

export type TaskWords = {
  readonly kind: TaskKind;
  readonly name: string;
  readonly about: string | null;
  readonly beside: 'before' | 'between' | 'after' | null;
  /** Whether what it is about is a hold, or several: `ct + echo`. */
  readonly isHold: boolean;
};

export type Sentence = { readonly says: string; readonly remedy: string };
export type Data = Readonly<Record<string, unknown>>;

export type Words = {
  readonly language: string;
  readonly months: readonly string[];
  readonly onDay: (time: string, day: string) => string;
  readonly tasks: Readonly<Record<TaskKind, string>>;
  /** A task together with what it is about: `flush before the medicine`. */
  readonly taskAbout: (task: TaskWords) => string;
  readonly because: Readonly<Record<DownBecause, string>>;
  /** What is wrong with an order, by the problem's code. */
  readonly problems: Readonly<Record<string, (data: Data) => Sentence>>;
  /** What is wrong with what was typed or read, by the issue's code. */
  readonly issues: Readonly<Record<string, (data: Data) => Sentence>>;
  readonly infeasible: Readonly<Record<Infeasible['code'], (data: Data) => Sentence>>;
  /** Why nothing runs. */
  readonly gaps: Readonly<Record<GapReason, string>>;
  /** Why feed that was ordered is not given. */
  readonly losses: Readonly<Record<Exclude<LossReason, GapReason>, string>>;
  readonly levels: Readonly<Record<'stop' | 'ask' | 'note', string>>;
  readonly provenance: Readonly<Record<string, string>>;
  readonly basis: {
    readonly order: (path: string) => string;
    readonly feedList: (feed: string, field: string) => string;
    readonly policy: (key: string, setBy: string, source: string, provenance: string) => string;
    readonly published: (source: string, provenance: string) => string;
    readonly entry: (id: string) => string;
    readonly asked: (name: string) => string;
    readonly arithmetic: string;
    readonly working: string;
  };
  readonly rounded: Readonly<Record<'down' | 'up' | 'half-up', (step: string) => string>>;
  readonly plan: {
    readonly title: (who: string) => string;
    readonly next: string;
    readonly pour: (amount: string) => string;
    readonly spike: (amount: string) => string;
    readonly newSet: string;
    readonly startAt: (rate: string) => string;
    readonly deliver: (volume: string) => string;
    readonly downBy: (time: string) => string;
    readonly because: (why: string) => string;
    readonly dryAt: (time: string) => string;
    readonly dryEarliest: (time: string) => string;
    readonly prime: (volume: string) => string;
    readonly leftOver: (volume: string) => string;
    readonly alreadyUp: string;
    readonly runs: string;
    readonly stopped: (why: string, holds: string) => string;
    readonly containers: string;
    readonly waterBags: string;
    readonly visits: string;
    readonly day: string;
    readonly none: string;
    readonly noPlan: string;
    readonly formula: string;
    readonly energy: string;
    readonly protein: string;
    readonly water: (formula: string, flushes: string, total: string) => string;
    readonly ordered: (volume: string) => string;
    readonly needed: (amount: string) => string;
    readonly carton: (which: string, take: string, left: string, keep: string) => string;
    readonly newCarton: string;
    readonly openCarton: (id: string) => string;
    readonly keptCarton: string;
    readonly keepUntil: (time: string) => string;
    readonly throwAway: string;
    readonly shortfall: (volume: string) => string;
    readonly lost: (volume: string, why: string) => string;
    readonly nothing: string;
    readonly beginsLater: (time: string) => string;
    readonly stepUp: (to: string) => string;
    readonly ifEaten: (lessThan: string) => string;
    readonly mixed: (formula: string, water: string) => string;
    readonly inMixture: (formula: string, mixture: string) => string;
    readonly waters: Readonly<Record<WaterKind, string>>;
    readonly byPump: (volume: string, every: string) => string;
    readonly enteralOnly: string;
    readonly defer: string;
    readonly confirm: (key: string) => string;
    readonly confirmedBy: (name: string) => string;
    readonly strength: (strength: string) => string;
    readonly full: string;
    readonly within: (from: string, until: string) => string;
  };
  readonly standing: StandingWords;
  readonly lasts: (lasts: Duration) => string;
};
