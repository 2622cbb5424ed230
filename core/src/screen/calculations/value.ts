/** How is a result of a calculation written? The number with the unit people write for its UCUM code. */
import { instant } from '../../base/instant.ts';
import type { Shown } from '../../base/working.ts';
import { showInstant, type Zone } from '../../base/zone.ts';
import { decimalText } from '../../reckon/exact.ts';
import { showDuration } from '../time.ts';

const WRITTEN: Readonly<Record<string, string>> = {
  '1': '',
  '[foz_us]': 'fl oz',
  'kcal/[foz_us]': 'kcal/oz',
  'mL/[foz_us]': 'mL/oz',
  '[lb_av]': 'lb',
  'kg/[lb_av]': 'kg/lb',
  '[Ch]': 'Fr',
  Cel: '°C',
  a: 'y',
  mo: 'months',
  d: 'd',
  '%/mo': '%/month',
  'meq/L': 'mEq/L',
  mosm: 'mOsm',
  'mosm/kg': 'mOsm/kg',
};

export const unitText = (unit: string): string => WRITTEN[unit] ?? unit.replace(/[{}]/g, '');

const UTC = 'Etc/UTC' as Zone;

/** `70 mL/h`, `6 h 40 min`, `10:53`; at most `places` decimals. */
export function valueText(shown: Shown, places = 6): string {
  switch (shown.kind) {
    case 'quantity': {
      const number = decimalText({ n: BigInt(shown.value.n), d: BigInt(shown.value.d) }, places);
      return `${number} ${unitText(shown.unit)}`.trim();
    }
    case 'duration':
      return showDuration(shown.lasts);
    case 'instant':
      return showInstant(instant(shown.at), UTC);
    case 'choice':
      return shown.code;
  }
}

/** For JSON: a number, or the text of what is no number. */
export const valueJson = (shown: Shown, places = 9): number | string =>
  shown.kind === 'quantity'
    ? Number(decimalText({ n: BigInt(shown.value.n), d: BigInt(shown.value.d) }, places))
    : valueText(shown);
