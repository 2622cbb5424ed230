/** Who works on the ward, and on what do they write? All invented. */
import { minutes } from '@feedwright/core/base/instant';

export const DIETITIAN = { by: 'Noor Halloway, dietitian', device: 'dietitian-desk' } as const;
export const PHYSICIAN = { by: 'Dr Ilse Markham', device: 'doctors-room' } as const;
export const LABORATORY = { by: 'laboratory', device: 'laboratory-link' } as const;

export const BIRCH_EAST = {
  ward: 'birch',
  day: 'Ines Calder, nurse',
  night: 'Jo Pell, nurse',
  device: 'birch-tablet-1',
} as const;
export const BIRCH_WEST = {
  ward: 'birch',
  day: 'Marek Lowe, nurse',
  night: 'Sunniva Hart, nurse',
  device: 'birch-tablet-2',
} as const;
/** Its clock is nine minutes fast, and nobody has noticed. */
export const FAST_TABLET = 'birch-tablet-3';
export const HAZEL = {
  ward: 'hazel',
  day: 'Tansy Boyd, nurse',
  night: 'Femi Ward, nurse',
  device: 'hazel-tablet-1',
} as const;
export const INTENSIVE_CARE = {
  ward: 'intensive-care',
  day: 'Priya Novak, nurse',
  night: 'Hal Osei, nurse',
  device: 'icu-cart-6',
} as const;
export const LARCH_HOUSE = {
  ward: 'larch-house',
  day: 'Ruth Amory, carer',
  night: 'Dele Akin, carer',
  device: 'larch-phone',
} as const;
/** At home somebody of the family writes, by day and by night. */
export const atHome = (who: string, device: string) => ({ ward: 'at-home', day: who, night: who, device });

export const AHEAD_BY = new Map([[FAST_TABLET, minutes(9)]]);
