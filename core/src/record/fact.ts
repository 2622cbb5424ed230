/**
 * What can happen at the bedside? One kind of fact for each thing that somebody does, measures or is told, named in the
 * past tense with its version. A kind never changes its meaning: what must say more gets a new version.
 */
import type { Fraction } from '../base/fraction.ts';
import type { Duration, Instant } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { DayName } from '../base/zone.ts';
import type { AccessDevice, Hold, Identifier, Order, WaterKind } from '../order/order.ts';

export type OrderFact =
  | { readonly kind: 'order-placed/1'; readonly placed: Order }
  | { readonly kind: 'order-held/1'; readonly hold: Hold }
  | { readonly kind: 'order-hold-ended/1'; readonly hold: string }
  | { readonly kind: 'order-stopped/1'; readonly stopped: string; readonly reason: string }
  | { readonly kind: 'step-confirmed/1'; readonly step: number }
  | { readonly kind: 'step-declined/1'; readonly step: number; readonly reason: string };

export type PersonFact =
  | {
      readonly kind: 'person-identified/1';
      readonly name: string;
      readonly birthDate: DayName | null;
      readonly identifiers: readonly Identifier[];
      readonly place: string | null;
    }
  | { readonly kind: 'weight-measured/1'; readonly kg: Fraction }
  | { readonly kind: 'height-measured/1'; readonly cm: Fraction }
  | { readonly kind: 'allergies-recorded/1'; readonly allergies: readonly string[] }
  | { readonly kind: 'other-energy-recorded/1'; readonly name: string; readonly kcalPerDay: Fraction };

export type ConfirmMethod = 'ph' | 'radiograph' | 'mark' | 'under-vision' | 'balloon-volume';

export type TubeFact =
  | { readonly kind: 'tube-placed/1'; readonly access: AccessDevice; readonly markCm: Fraction | null }
  /** Above the limit is `confirmed: false`, "not confirmed by pH"; it never says where the tube is. */
  | {
      readonly kind: 'tube-checked/1';
      readonly method: ConfirmMethod;
      readonly lumen: string | null;
      readonly confirmed: boolean;
      readonly ph: Fraction | null;
      readonly markCm: Fraction | null;
      readonly reader: string | null;
    }
  | { readonly kind: 'tube-moved/1'; readonly markCm: Fraction }
  | { readonly kind: 'tube-out/1'; readonly how: string | null }
  | { readonly kind: 'tube-blocked/1'; readonly lumen: string | null }
  | { readonly kind: 'tube-cleared/1'; readonly lumen: string | null; readonly how: string | null }
  | { readonly kind: 'position-set/1'; readonly headOfBedDegrees: number; readonly posture: string | null };

export type ContainerFact =
  | {
      readonly kind: 'container-prepared/1';
      readonly container: string;
      readonly feed: string;
      readonly strength: Fraction;
      readonly volume: Volume;
      readonly expiresAt: Instant | null;
    }
  | {
      readonly kind: 'container-put-up/1';
      readonly container: string;
      readonly holds: 'feed' | 'water';
      readonly feed: string;
      readonly strength: Fraction;
      readonly closed: boolean;
      readonly filled: Volume;
      readonly newSet: boolean;
      readonly comesDownBy: Instant | null;
      readonly lot: string | null;
      readonly expires: DayName | null;
    }
  | {
      readonly kind: 'container-taken-down/1';
      readonly container: string;
      readonly left: Volume | null;
      readonly reason: string | null;
    }
  /** Prime: what went into the new line and what was spilt. */
  | { readonly kind: 'set-changed/1'; readonly line: Volume; readonly spilt: Volume }
  | {
      readonly kind: 'carton-opened/1';
      readonly carton: string;
      readonly feed: string;
      readonly volume: Volume;
    }
  | {
      readonly kind: 'carton-used/1';
      readonly carton: string;
      readonly taken: Volume;
      readonly discarded: boolean;
    };

export type PauseReason =
  | 'procedure'
  | 'care'
  | 'medicine'
  | 'intolerance'
  | 'tube'
  | 'equipment'
  | 'fast'
  | 'other';

export type PumpFact =
  | { readonly kind: 'pump-started/1'; readonly rate: Rate; readonly volumeToBeDelivered: Volume | null }
  | { readonly kind: 'rate-changed/1'; readonly rate: Rate }
  | { readonly kind: 'pump-paused/1'; readonly reason: PauseReason; readonly note: string | null }
  | { readonly kind: 'pump-resumed/1' }
  | { readonly kind: 'pump-stopped/1'; readonly reason: PauseReason | 'feed-ended' }
  | { readonly kind: 'counter-read/1'; readonly counts: 'feed' | 'water'; readonly volume: Volume }
  /** `read: null` is a counter cleared unread: what it counted is then an estimate. */
  | { readonly kind: 'counter-cleared/1'; readonly counts: 'feed' | 'water'; readonly read: Volume | null }
  | {
      readonly kind: 'programme-read-back/1';
      readonly rate: Rate;
      readonly volumeToBeDelivered: Volume | null;
    }
  | { readonly kind: 'line-closed/1'; readonly clamped: boolean; readonly capped: boolean };

export type GivenFact =
  | {
      readonly kind: 'feed-given/1';
      readonly by: 'syringe' | 'gravity' | 'pump';
      readonly feed: string;
      readonly strength: Fraction;
      readonly volume: Volume;
      readonly lasted: Duration | null;
      readonly heightCm: Fraction | null;
      readonly timedBarrel: { readonly volume: Volume; readonly took: Duration } | null;
    }
  | {
      readonly kind: 'water-given/1';
      readonly water: WaterKind;
      readonly volume: Volume;
      readonly why: 'flush' | 'medicine' | 'free-water' | 'residual' | 'module';
    }
  | {
      readonly kind: 'module-given/1';
      readonly name: string;
      readonly energyKcal: Fraction;
      readonly proteinG: Fraction;
    }
  | {
      readonly kind: 'medicine-given/1';
      readonly name: string;
      readonly volume: Volume;
      readonly lumen: string | null;
    }
  /** Before the patient: never received. Out of the patient's tube: gastric loss. */
  | {
      readonly kind: 'feed-lost/1';
      readonly where: 'before-patient' | 'out-of-tube';
      readonly volume: Volume;
    }
  | {
      readonly kind: 'intake-measured/1';
      readonly route: 'oral' | 'intravenous' | 'other';
      readonly volume: Volume;
      readonly energyKcal: Fraction | null;
    };

/** Three different things: nothing was there; nothing could be drawn; nobody looked. Only the first is a number. */
export type ResidualFound = 'zero' | 'measured' | 'could-not-aspirate' | 'not-done';
export type ResidualLook = 'feed' | 'clear' | 'bile' | 'blood' | 'coffee-ground' | 'faeculent' | 'green';

export type BodyFact =
  | {
      readonly kind: 'residual-checked/1';
      readonly found: ResidualFound;
      readonly volume: Volume | null;
      readonly look: ResidualLook | null;
      readonly returned: Volume;
      readonly discarded: Volume;
    }
  | { readonly kind: 'vomited/1'; readonly volume: Volume | null }
  | {
      readonly kind: 'stool-passed/1';
      readonly volume: Volume | null;
      readonly form: 'formed' | 'loose' | 'liquid';
    }
  | {
      readonly kind: 'distension-noted/1';
      readonly degree: 'none' | 'mild' | 'marked';
      readonly girthCm: Fraction | null;
    }
  | {
      readonly kind: 'pain-noted/1';
      readonly degree: 'none' | 'mild' | 'severe';
      readonly onFeeding: boolean;
    }
  | { readonly kind: 'bowel-sounds-noted/1'; readonly heard: boolean }
  | {
      readonly kind: 'output-measured/1';
      readonly what: 'urine' | 'drain' | 'gastric-drainage' | 'stoma' | 'other';
      readonly volume: Volume;
    }
  | {
      readonly kind: 'laboratory-result/1';
      readonly analyte: Analyte;
      readonly value: Fraction;
      readonly unit: string;
    };

export type Analyte = 'glucose' | 'potassium' | 'magnesium' | 'phosphate' | 'sodium' | 'urea' | 'creatinine';

export type CareFact =
  | { readonly kind: 'mouth-care-done/1' }
  | { readonly kind: 'note-written/1'; readonly text: string }
  | {
      readonly kind: 'advice-answered/1';
      readonly advice: string;
      readonly answer: string;
      readonly note: string | null;
    }
  | { readonly kind: 'duplicate-settled/1'; readonly keeps: string; readonly drops: string }
  | { readonly kind: 'entered-in-error/1'; readonly target: string; readonly reason: string };

export type Fact =
  | OrderFact
  | PersonFact
  | TubeFact
  | ContainerFact
  | PumpFact
  | GivenFact
  | BodyFact
  | CareFact;

export type FactKind = Fact['kind'];
