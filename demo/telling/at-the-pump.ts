/** What is done at the pump, and with what hangs on it? What is read there is what it would show by then. */
import type { Instant } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import {
  add,
  ml,
  mlPerHour,
  NOTHING,
  STOPPED,
  subtract,
  type Volume,
  volumeDownTo,
} from '@feedwright/core/base/volume';
import type { PauseReason } from '@feedwright/core/record/fact';
import { type Deed, feedOf, type Scene, tell, together } from './scene.ts';

const READ_ON_COUNTER = ml(1);
const READ_ON_BAG = ml(5);

type Hanging = {
  /** With a new set, which takes so much to prime; where it is not said the set stays. */
  readonly line?: number;
  readonly spilt?: number;
  readonly comesDownBy?: Instant;
};

/** A container of the ordered feed, with `held` mL in it. */
const hangs =
  (closed: boolean) =>
  (container: string, held: number, { line, spilt = 5, comesDownBy }: Hanging = {}): Deed =>
  (scene) => {
    const { id: feed, strength } = feedOf(scene);
    const primed = line === undefined ? NOTHING : add(ml(line), ml(spilt));
    const filled = ml(held);
    const told = together(
      ...(line === undefined ? [] : [tell({ kind: 'set-changed/1', line: ml(line), spilt: ml(spilt) })]),
      tell({
        kind: 'container-put-up/1',
        container,
        holds: 'feed',
        feed,
        strength,
        closed,
        filled,
        newSet: line !== undefined,
        comesDownBy: comesDownBy ?? null,
        lot: null,
        expires: null,
      }),
    )(scene);
    return { ...told, up: container, hung: new Map(told.hung).set(container, subtract(filled, primed)) };
  };

export const pours = hangs(false);
export const spikes = hangs(true);

/** Taken down, with what is left in it read in steps of 5 mL. */
export const takesDown =
  ({ reason }: { readonly reason?: string } = {}): Deed =>
  (scene) => {
    const container = scene.up ?? impossible('nothing hangs');
    const left = volumeDownTo(scene.hung.get(container) ?? NOTHING, READ_ON_BAG);
    const told = tell({
      kind: 'container-taken-down/1',
      container,
      left,
      reason: reason ?? null,
    })(scene);
    return { ...told, up: null };
  };

export const starts =
  (rate: number, toDeliver?: number): Deed =>
  (scene) => ({
    ...tell({
      kind: 'pump-started/1',
      rate: mlPerHour(rate),
      volumeToBeDelivered: toDeliver === undefined ? null : ml(toDeliver),
    })(scene),
    rate: mlPerHour(rate),
    runs: true,
  });

export const setsRate =
  (rate: number): Deed =>
  (scene) => ({ ...tell({ kind: 'rate-changed/1', rate: mlPerHour(rate) })(scene), rate: mlPerHour(rate) });

export const pauses =
  (reason: PauseReason, note: string | null = null): Deed =>
  (scene) => ({ ...tell({ kind: 'pump-paused/1', reason, note })(scene), runs: false });

export const resumes: Deed = (scene) => ({ ...tell({ kind: 'pump-resumed/1' })(scene), runs: true });

export const stops =
  (reason: PauseReason | 'feed-ended' = 'feed-ended'): Deed =>
  (scene) => ({ ...tell({ kind: 'pump-stopped/1', reason })(scene), runs: false, rate: STOPPED });

const shownOnCounter = ({ counter }: Scene): Volume => volumeDownTo(counter, READ_ON_COUNTER);

export const readsCounter: Deed = (scene) =>
  tell({ kind: 'counter-read/1', counts: 'feed', volume: shownOnCounter(scene) })(scene);

export const readsWaterCounter = (shows: number): Deed =>
  tell({ kind: 'counter-read/1', counts: 'water', volume: ml(shows) });

export const clearsCounter =
  (how: 'read' | 'unread'): Deed =>
  (scene) => {
    const read = how === 'read' ? shownOnCounter(scene) : null;
    return { ...tell({ kind: 'counter-cleared/1', counts: 'feed', read })(scene), counter: NOTHING };
  };

/** It lost its memory: what it counts begins again at nothing, and nobody cleared it. */
export const losesCount: Deed = (scene) => ({ ...scene, counter: NOTHING });

export const readsBack = (rate: number, toDeliver?: number): Deed =>
  tell({
    kind: 'programme-read-back/1',
    rate: mlPerHour(rate),
    volumeToBeDelivered: toDeliver === undefined ? null : ml(toDeliver),
  });

export const closesLine = (clamped = true, capped = true): Deed =>
  tell({ kind: 'line-closed/1', clamped, capped });

/** The pump's second bag, which holds water. */
export const hangsWater = (container: string, held: number): Deed =>
  tell({
    kind: 'container-put-up/1',
    container,
    holds: 'water',
    feed: 'water',
    strength: { n: 1, d: 1 },
    closed: false,
    filled: ml(held),
    newSet: false,
    comesDownBy: null,
    lot: null,
    expires: null,
  });

export const takesWaterDown = (container: string, left: number): Deed =>
  tell({ kind: 'container-taken-down/1', container, left: ml(left), reason: null });
