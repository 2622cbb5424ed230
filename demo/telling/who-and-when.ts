/** Who wrote it down, on what, how late, under which name? What a story says around what happened. */
import { minutes } from '@feedwright/core/base/instant';
import type { TaskKind } from '@feedwright/core/plan/plan';
import { taskId } from '@feedwright/core/plan/tasks/due';
import { when } from './clock.ts';
import { type Deed, marked, tell } from './scene.ts';

export const on = (device: string, ...deeds: readonly Deed[]): Deed => marked({ device }, ...deeds);

/** Somebody who is not at the bedside, on their own device. */
export const from = (
  who: { readonly by: string; readonly device: string },
  ...deeds: readonly Deed[]
): Deed => marked(who, ...deeds);

/** Written down only so many minutes after it happened. */
export const writtenAfter = (count: number, ...deeds: readonly Deed[]): Deed =>
  marked({ late: minutes(count) }, ...deeds);

/** A name by which a later line of the story means this one. */
export const called = (name: string, deed: Deed): Deed => marked({ name }, deed);
export const correcting = (name: string, deed: Deed): Deed => marked({ corrects: name }, deed);

export const inError = (name: string, reason: string): Deed =>
  tell({ kind: 'entered-in-error/1', target: name, reason });
export const settles = (keeps: string, drops: string): Deed =>
  tell({ kind: 'duplicate-settled/1', keeps, drops });

type What = {
  readonly about?: string;
  readonly beside?: 'before' | 'between' | 'after';
  /** When it was due, where that is not now. */
  readonly due?: string;
};

/** Does what was planned: the entry carries the planned task's id. */
export const asPlanned =
  (kind: TaskKind, { due, ...what }: What, ...deeds: readonly Deed[]): Deed =>
  (scene) =>
    marked({ task: taskId({ kind, ...what }, due === undefined ? scene.due : when(due)) }, ...deeds)(scene);
