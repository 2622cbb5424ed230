/**
 * What was asked for? One order, parsed: quantities exact, times in their zone, what was not written down null.
 * Whether it is complete and free of contradictions is for the rules beside this file; an order that lacks something is
 * still an order, so that what is missing can be named.
 */
import type { Fraction } from '../base/fraction.ts';
import type { Duration, Instant } from '../base/instant.ts';
import type { Rate, Volume } from '../base/volume.ts';
import type { DayName, TimeOfDay, Zone } from '../base/zone.ts';
import type { Setting } from '../policy/policy.ts';

export type Identifier = { readonly kind: string; readonly value: string };

export type Patient = {
  readonly name: string | null;
  readonly birthDate: DayName | null;
  /** Hospital number, national number …; with name and date of birth these make the two identifiers. */
  readonly identifiers: readonly Identifier[];
  readonly place: string | null;
  readonly allergies: readonly string[];
  /** The weight that doses are worked from, in kg, with the day it was taken. */
  readonly dosingWeight: { readonly kg: Fraction; readonly on: DayName | null } | null;
  readonly heightCm: Fraction | null;
};

export type TipSite = 'gastric' | 'duodenal' | 'jejunal';
export type LumenUse = 'feed' | 'medicine' | 'drain' | 'vent';
export type Lumen = {
  readonly name: string;
  readonly tip: TipSite | null;
  readonly uses: readonly LumenUse[];
};

export type DeviceKind =
  | 'nasogastric'
  | 'orogastric'
  | 'nasoduodenal'
  | 'nasojejunal'
  | 'gastrostomy'
  | 'gastrostomy-button'
  | 'gastro-jejunal'
  | 'jejunostomy';

/** Rules ask the lumen, not the device. `feedBy` and `medicineBy` name lumens of this device. */
export type AccessDevice = {
  readonly device: DeviceKind;
  readonly french: Fraction | null;
  readonly lumens: readonly Lumen[];
  readonly feedBy: string | null;
  readonly medicineBy: string | null;
  readonly placedAt: Instant | null;
};

/** A volume or a rate means the mixture, unless it says `formula`. */
export type Of = 'mixture' | 'formula';
export type OrderedVolume = { readonly volume: Volume; readonly of: Of };
export type OrderedRate = { readonly rate: Rate; readonly of: Of };

/** Upward in steps, each conditional on tolerance and confirmed by somebody: nothing here steps by itself. */
export type Advancement<Q> = {
  readonly start: Q;
  readonly step: Q;
  readonly every: Duration;
  readonly goal: Q;
};

export type Meal = { readonly at: TimeOfDay; readonly ifEatenLessThan: Fraction };

export type Regimen =
  | {
      readonly kind: 'continuous';
      readonly rate: OrderedRate;
      /** Elapsed time a day from `from`; null is all day. */
      readonly perDay: { readonly from: TimeOfDay; readonly lasts: Duration } | null;
      readonly advance: Advancement<Rate> | null;
    }
  | {
      readonly kind: 'cyclic';
      readonly from: TimeOfDay;
      readonly until: TimeOfDay;
      /** Both: runs at the rate and stops at the volume. */
      readonly rate: OrderedRate | null;
      readonly volume: OrderedVolume | null;
      readonly advance: Advancement<Rate> | null;
    }
  | {
      readonly kind: 'intermittent';
      readonly volume: OrderedVolume;
      readonly times: readonly TimeOfDay[];
      readonly lasts: Duration;
      readonly by: 'pump' | 'gravity';
      readonly advance: Advancement<Volume> | null;
    }
  | {
      readonly kind: 'bolus';
      readonly volume: OrderedVolume;
      readonly times: readonly TimeOfDay[];
      /** How long one bolus takes; null when the order leaves it to local policy. */
      readonly lasts: Duration | null;
      /** Given only if less than this share of the meal was eaten. */
      readonly meals: readonly Meal[];
      readonly advance: Advancement<Volume> | null;
    }
  | {
      readonly kind: 'volume-targeted';
      readonly volumePerDay: OrderedVolume;
      readonly baseRate: OrderedRate;
      readonly mostRate: OrderedRate | null;
      readonly advance: Advancement<Rate> | null;
    };

export type WaterKind = 'tap' | 'cooled-boiled' | 'sterile';

export type WaterGiven =
  | {
      readonly kind: 'interval';
      readonly volume: Volume;
      readonly every: Duration;
      readonly from: TimeOfDay | null;
    }
  | { readonly kind: 'around-feeds'; readonly before: Volume; readonly after: Volume }
  | { readonly kind: 'times'; readonly volume: Volume; readonly times: readonly TimeOfDay[] }
  /** The pump's second bag: a container of its own, with its own limit. */
  | { readonly kind: 'second-bag'; readonly volume: Volume; readonly every: Duration };

export type WaterOrder = { readonly water: WaterKind; readonly given: readonly WaterGiven[] };

/** A time during which feed does not run. `until: null` is an end that nobody knows yet. */
export type Hold = {
  readonly id: string;
  readonly from: Instant;
  readonly until: Instant | null;
  readonly why: 'procedure' | 'fast' | 'medicine' | 'intolerance' | 'tube' | 'other';
  readonly note: string | null;
};

export type MedicineByTube = {
  readonly name: string;
  readonly times: readonly TimeOfDay[];
  readonly volume: Volume;
  readonly holdBefore: Duration;
  readonly holdAfter: Duration;
  readonly waterBefore: Volume | null;
  readonly waterAfter: Volume | null;
  readonly lowersGlucose: boolean;
};

/** Modular protein or the like, given in water at named times, apart from the feed. */
export type Module = {
  readonly name: string;
  readonly times: readonly TimeOfDay[];
  readonly water: Volume;
  readonly energyKcal: Fraction;
  readonly proteinG: Fraction;
};

/** Mixed into the feed. */
export type Additive = { readonly name: string; readonly amount: string | null };

export type OtherEnergy = { readonly name: string; readonly kcalPerDay: Fraction };

export type Confirmation = {
  /** The problem it answers, as its rule: `OR31`. */
  readonly rule: string;
  readonly by: string;
  readonly at: Instant | null;
  readonly why: string | null;
};

export type Order = {
  readonly id: string;
  readonly replaces: string | null;
  readonly zone: Zone;
  readonly setting: Setting;
  readonly patient: Patient;
  readonly prescriber: { readonly name: string; readonly role: string | null } | null;
  readonly prescribedAt: Instant | null;
  readonly startsAt: Instant | null;
  readonly endsAt: Instant | null;
  readonly feed: {
    readonly id: string;
    /** ¾ strength: three parts of feed in four of mixture. */
    readonly strength: Fraction;
    readonly additives: readonly Additive[];
    /** What the order itself says of the feed's density, to be compared with the feed list. */
    readonly statedKcalPerMl: Fraction | null;
    readonly preparedAt: Instant | null;
    readonly expiresAt: Instant | null;
  } | null;
  readonly access: AccessDevice | null;
  readonly method: 'pump' | 'gravity' | 'syringe' | null;
  readonly regimen: Regimen | null;
  readonly water: WaterOrder | null;
  readonly holds: readonly Hold[];
  readonly medicines: readonly MedicineByTube[];
  readonly modules: readonly Module[];
  readonly mostRate: Rate | null;
  readonly mostVolumePerDay: Volume | null;
  readonly fluidLimitPerDay: Volume | null;
  readonly intravenousPerDay: Volume;
  readonly otherEnergy: readonly OtherEnergy[];
  readonly needs: {
    readonly energyKcalPerDay: Fraction | null;
    readonly proteinGPerDay: Fraction | null;
    readonly waterPerDay: Volume | null;
  };
  /** The name of the protocol by which lost volume may be made up; null: it may not, unless volume-targeted. */
  readonly catchUpProtocol: string | null;
  readonly refeedingCaution: boolean;
  readonly confirmations: readonly Confirmation[];
};

/** What a rule says about an order. No plan while one stops; a named person confirms what asks. */
export type Problem = {
  readonly rule: string;
  readonly level: 'stop' | 'ask' | 'note';
  /** What is wrong, for `screen/` to put into words: `order/missing`. */
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly data: Readonly<Record<string, unknown>>;
  /** Set once a named person has confirmed what was asked. */
  readonly confirmedBy?: string;
};
