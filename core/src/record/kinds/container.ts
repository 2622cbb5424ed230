/** How is it written what became of containers, sets and cartons? */
import { at, choice, line, mlOf, name, onDay, optional, strengthOf, yesOrNo } from './field.ts';
import { kinds } from './kind.ts';

const container = name('container', 'The container’s id, made when it is prepared or put up');
const carton = name('carton', 'The carton’s id, made when it is opened');
const feed = name('feed', 'The id of the feed in the feed list');
const strength = strengthOf('strength');

export const CONTAINER_KINDS = kinds({
  'container-prepared/1': {
    about: 'Feed was prepared, to be put up later',
    fields: {
      container,
      feed,
      strength,
      volume: mlOf('volumeMl', 'How much was prepared', 'feed'),
      expiresAt: optional(at('expiresAt', 'Until when it keeps')),
    },
  },
  'container-put-up/1': {
    about: 'A container was spiked, or first poured into: its clock starts',
    fields: {
      container,
      holds: choice('holds', 'What is in it', ['feed', 'water']),
      feed,
      strength,
      closed: yesOrNo('closed', 'Whether it came closed, to be spiked once'),
      filled: mlOf('filledMl', 'How much is in it', 'feed'),
      newSet: yesOrNo('newSet', 'Whether it was put up with a new set'),
      comesDownBy: optional(at('comesDownBy', 'Its own limit, where it has one: expiry, prepared, opened')),
      lot: optional(name('lot', 'Lot')),
      expires: optional(onDay('expires', 'The day of expiry on its label')),
    },
  },
  'container-taken-down/1': {
    about: 'A container was taken down',
    fields: {
      container,
      left: optional(mlOf('leftMl', 'How much was left in it', 'amountOrNone')),
      reason: optional(line('reason', 'Why')),
    },
  },
  'set-changed/1': {
    about: 'A new giving set was primed and put on',
    fields: {
      line: mlOf('lineMl', 'What went into the new line', 'doseOrNone'),
      spilt: mlOf('spiltMl', 'What was spilt in priming', 'doseOrNone'),
    },
  },
  'carton-opened/1': {
    about: 'A carton was opened, to be kept and used',
    fields: { carton, feed, volume: mlOf('volumeMl', 'How much was in it', 'feed') },
  },
  'carton-used/1': {
    about: 'Something was taken from an open carton, or it was thrown away',
    fields: {
      carton,
      taken: mlOf('takenMl', 'How much was taken', 'amountOrNone'),
      discarded: yesOrNo('discarded', 'Whether what was left was thrown away'),
    },
  },
});
