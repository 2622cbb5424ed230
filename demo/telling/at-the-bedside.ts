/** What else is done, measured and seen at the bedside? Each as the entry it becomes; numbers in the units said aloud. */
import { type Fraction, fraction } from '@feedwright/core/base/fraction';
import { type Instant, minutes } from '@feedwright/core/base/instant';
import { impossible } from '@feedwright/core/base/result';
import { ml, NOTHING } from '@feedwright/core/base/volume';
import type { Hold, Order } from '@feedwright/core/order/order';
import type { Analyte, BodyFact, ConfirmMethod, Fact, ResidualLook } from '@feedwright/core/record/fact';
import { type Deed, feedOf, tell, together } from './scene.ts';

/** A number with at most three decimals, exactly. */
export const exactly = (value: number): Fraction => fraction(Math.round(value * 1_000), 1_000);

/** The order is placed, and the person is whom it names. */
export const isOrdered =
  (order: Order): Deed =>
  (scene) => ({ ...tell({ kind: 'order-placed/1', placed: order })(scene), order });

export const isIdentified = ({ patient }: Order): Deed =>
  together(
    tell({
      kind: 'person-identified/1',
      name: patient.name ?? impossible('somebody without a name'),
      birthDate: patient.birthDate,
      identifiers: patient.identifiers,
      place: patient.place,
    }),
    tell({ kind: 'allergies-recorded/1', allergies: patient.allergies }),
    ...(patient.heightCm === null ? [] : [tell({ kind: 'height-measured/1', cm: patient.heightCm })]),
  );

export const isHeld = (hold: Hold): Deed => tell({ kind: 'order-held/1', hold });
export const holdEnds = (hold: string): Deed => tell({ kind: 'order-hold-ended/1', hold });
export const isStopped = (stopped: string, reason: string): Deed =>
  tell({ kind: 'order-stopped/1', stopped, reason });
export const stepConfirmed = (step: number): Deed => tell({ kind: 'step-confirmed/1', step });
export const stepDeclined = (step: number, reason: string): Deed =>
  tell({ kind: 'step-declined/1', step, reason });

export const weighs = (kg: number): Deed => tell({ kind: 'weight-measured/1', kg: exactly(kg) });

export const flush = (volume: number): Deed => water(volume, 'flush');

/** The water that the order names. */
export const water =
  (volume: number, why: Extract<Fact, { readonly kind: 'water-given/1' }>['why']): Deed =>
  (scene) =>
    tell({ kind: 'water-given/1', water: scene.order?.water?.water ?? 'tap', volume: ml(volume), why })(
      scene,
    );

export const medicine =
  (name: string, volume: number): Deed =>
  (scene) =>
    tell({
      kind: 'medicine-given/1',
      name,
      volume: ml(volume),
      lumen: scene.order?.access?.medicineBy ?? null,
    })(scene);

type Given = {
  readonly minutes?: number;
  readonly heightCm?: number;
  readonly barrel?: { readonly volume: number; readonly minutes: number };
};

/** A feed of what is ordered; from what hangs, where something hangs. */
export const feeds =
  (
    by: 'syringe' | 'gravity' | 'pump',
    volume: number,
    { minutes: lasted, heightCm, barrel }: Given = {},
  ): Deed =>
  (scene) => {
    const ordered = feedOf(scene);
    const told = tell({
      kind: 'feed-given/1',
      by,
      feed: ordered.id,
      strength: ordered.strength,
      volume: ml(volume),
      lasted: lasted === undefined ? null : minutes(lasted),
      heightCm: heightCm === undefined ? null : exactly(heightCm),
      timedBarrel: barrel === undefined ? null : { volume: ml(barrel.volume), took: minutes(barrel.minutes) },
    })(scene);
    if (by === 'syringe' || scene.up === null) return told;
    const left = (scene.hung.get(scene.up) ?? NOTHING) - ml(volume);
    return { ...told, hung: new Map(told.hung).set(scene.up, Math.max(0, left) as typeof NOTHING) };
  };

export const losesFeed = (where: 'before-patient' | 'out-of-tube', volume: number): Deed =>
  tell({ kind: 'feed-lost/1', where, volume: ml(volume) });

export const takesIn = (
  route: 'oral' | 'intravenous' | 'other',
  volume: number,
  energyKcal: number | null = null,
): Deed =>
  tell({
    kind: 'intake-measured/1',
    route,
    volume: ml(volume),
    energyKcal: energyKcal === null ? null : exactly(energyKcal),
  });

export const module = (name: string, energyKcal: number, proteinG: number): Deed =>
  tell({ kind: 'module-given/1', name, energyKcal: exactly(energyKcal), proteinG: exactly(proteinG) });

const residual = (fact: Omit<Extract<BodyFact, { readonly kind: 'residual-checked/1' }>, 'kind'>): Deed =>
  tell({ kind: 'residual-checked/1', ...fact });

const NOTHING_HANDLED = { returned: NOTHING, discarded: NOTHING } as const;

/** Looked, and there was nothing. */
export const residualZero = residual({ found: 'zero', volume: NOTHING, look: null, ...NOTHING_HANDLED });
/** Nothing could be drawn, which is not nothing. */
export const residualNotDrawn = residual({
  found: 'could-not-aspirate',
  volume: null,
  look: null,
  ...NOTHING_HANDLED,
});
export const residualNotDone = residual({ found: 'not-done', volume: null, look: null, ...NOTHING_HANDLED });

export const residualOf = (
  volume: number,
  look: ResidualLook,
  what: { readonly returned?: number; readonly discarded?: number },
): Deed =>
  residual({
    found: 'measured',
    volume: ml(volume),
    look,
    returned: ml(what.returned ?? 0),
    discarded: ml(what.discarded ?? 0),
  });

type Check = {
  readonly confirmed?: boolean;
  readonly ph?: number;
  readonly markCm?: number;
  readonly reader?: string;
  readonly lumen?: string;
};

export const tubeChecked = (
  method: ConfirmMethod,
  { confirmed = true, ph, markCm, reader, lumen }: Check = {},
): Deed =>
  tell({
    kind: 'tube-checked/1',
    method,
    lumen: lumen ?? null,
    confirmed,
    ph: ph === undefined ? null : exactly(ph),
    markCm: markCm === undefined ? null : exactly(markCm),
    reader: reader ?? null,
  });

export const tubeOut = (how: string): Deed => tell({ kind: 'tube-out/1', how });
export const tubeMoved = (markCm: number): Deed => tell({ kind: 'tube-moved/1', markCm: exactly(markCm) });
export const tubeBlocked: Deed = tell({ kind: 'tube-blocked/1', lumen: null });
export const tubeCleared = (how: string): Deed => tell({ kind: 'tube-cleared/1', lumen: null, how });

export const atMark = (markCm: number): Deed => tubeChecked('mark', { markCm });

export const tubePlaced =
  (markCm: number | null): Deed =>
  (scene) => {
    const access = scene.order?.access ?? impossible('no tube is ordered');
    return tell({
      kind: 'tube-placed/1',
      access: { ...access, placedAt: scene.at },
      markCm: markCm === null ? null : exactly(markCm),
    })(scene);
  };

export const headUp = (degrees: number, posture: string | null = null): Deed =>
  tell({ kind: 'position-set/1', headOfBedDegrees: degrees, posture });

export const mouthCare: Deed = tell({ kind: 'mouth-care-done/1' });
export const note = (text: string): Deed => tell({ kind: 'note-written/1', text });

export const passes = (
  what: 'urine' | 'drain' | 'gastric-drainage' | 'stoma' | 'other',
  volume: number,
): Deed => tell({ kind: 'output-measured/1', what, volume: ml(volume) });

export const stool = (form: 'formed' | 'loose' | 'liquid', volume: number | null = null): Deed =>
  tell({ kind: 'stool-passed/1', volume: volume === null ? null : ml(volume), form });

export const vomits = (volume: number | null): Deed =>
  tell({ kind: 'vomited/1', volume: volume === null ? null : ml(volume) });

export const distension = (degree: 'none' | 'mild' | 'marked', girthCm: number | null = null): Deed =>
  tell({ kind: 'distension-noted/1', degree, girthCm: girthCm === null ? null : exactly(girthCm) });

export const pain = (degree: 'none' | 'mild' | 'severe', onFeeding = false): Deed =>
  tell({ kind: 'pain-noted/1', degree, onFeeding });
export const bowelSounds = (heard: boolean): Deed => tell({ kind: 'bowel-sounds-noted/1', heard });

export const opensCarton =
  (carton: string, held: number): Deed =>
  (scene) => {
    const ordered = feedOf(scene);
    return tell({ kind: 'carton-opened/1', carton, feed: ordered.id, volume: ml(held) })(scene);
  };
export const usesCarton = (carton: string, taken: number, discarded = false): Deed =>
  tell({ kind: 'carton-used/1', carton, taken: ml(taken), discarded });

export const otherEnergy = (name: string, kcalPerDay: number): Deed =>
  tell({ kind: 'other-energy-recorded/1', name, kcalPerDay: exactly(kcalPerDay) });

export const lab = (analyte: Analyte, value: number, unit = 'mmol/L'): Deed =>
  tell({ kind: 'laboratory-result/1', analyte, value: exactly(value), unit });

/** Milk warmed and drawn up for one feed, to be used before it has been out too long. */
export const milkPrepared =
  (container: string, held: number, expiresAt: Instant): Deed =>
  (scene) => {
    const ordered = feedOf(scene);
    return tell({
      kind: 'container-prepared/1',
      container,
      feed: ordered.id,
      strength: ordered.strength,
      volume: ml(held),
      expiresAt,
    })(scene);
  };
