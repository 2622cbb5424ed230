/**
 * How is a policy value written, and read back? `8 h`, `30 mL`, `150 mL/h`, `08:00`, `yes`, `80 %`, `5.5`.
 * A number without its unit is asked about, except where there is only one it could have (a pH, a count, a share):
 * an 8 that one reader takes for hours and another for minutes must not pass.
 */
import { compare, type Fraction, fraction, fractionOf } from '../base/fraction.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../base/instant.ts';
import { decimalText, numberText, readNumber } from '../base/number-text.ts';
import { type Bad, bad, issue, ok, type Result } from '../base/result.ts';
import { PER_ML, PER_ML_PER_HOUR } from '../base/volume.ts';
import { parseTimeOfDay, showTimeOfDay } from '../base/zone.ts';
import { type Key, type KeyKind, POLICY_KEYS, type PolicyKey } from './keys.ts';
import type { PolicyValue } from './policy.ts';

type AnyValue = PolicyValue[KeyKind];
type Units = Readonly<Record<string, Fraction>>;

const DURATIONS: Units = {
  min: fraction(MINUTE),
  s: fraction(SECOND),
  h: fraction(HOUR),
  d: fraction(DAY),
  ms: fraction(1),
};
const VOLUMES: Units = { mL: fraction(PER_ML), ml: fraction(PER_ML), L: fraction(1000 * PER_ML) };
const RATES: Units = { 'mL/h': fraction(PER_ML_PER_HOUR), 'ml/h': fraction(PER_ML_PER_HOUR) };
const ONE = fraction(1);
/** Other ways to write the unit of a plain number; the empty one is no unit at all. */
const ALSO: Readonly<Record<string, Units>> = {
  '1': { '': ONE, '%': fraction(1, 100) },
  '[pH]': { '': ONE },
  deg: { '°': ONE },
};

const unitsOf = (key: Key): Units =>
  key.kind === 'duration'
    ? DURATIONS
    : key.kind === 'volume'
      ? VOLUMES
      : key.kind === 'rate'
        ? RATES
        : { [key.unit]: ONE, ...ALSO[key.unit] };

const refused = (code: string, data: Readonly<Record<string, unknown>>): Bad => bad(issue([], code, data));

/** The number in the unit of the account: ms, 1/360,000,000 mL, 0.01 mL/h, a whole count, or any fraction. */
function inAccountUnits(key: Key, amount: Fraction, unit: Fraction): Result<AnyValue> {
  const n = BigInt(amount.n) * BigInt(unit.n);
  const d = BigInt(amount.d) * BigInt(unit.d);
  const most = BigInt(Number.MAX_SAFE_INTEGER);
  if (key.kind === 'fraction') {
    return n <= most && d <= most ? ok(fractionOf(n, d)) : refused('number/too-precise', { unit: key.unit });
  }
  if (n % d !== 0n) return refused('number/too-precise', { unit: key.unit });
  const whole = n / d;
  return whole <= most ? ok(Number(whole) as AnyValue) : refused('number/too-large', { unit: key.unit });
}

function parseQuantity(key: Key, given: string | number): Result<AnyValue> {
  const text = typeof given === 'number' ? '' : given.trim();
  const cut = /[A-Za-z%°[]/.exec(text)?.index ?? text.length;
  const unit = text.slice(cut).trim();
  const units = unitsOf(key);
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (factor === undefined) {
    return refused(unit === '' ? 'policy/unit-missing' : 'policy/unit', { given, unit: key.unit });
  }
  const amount = readNumber(typeof given === 'number' ? given : text.slice(0, cut));
  if (!amount.ok) return amount;
  if (compare(amount.value, fraction(0)) < 0) return refused('number/negative', { text: String(given) });
  return inAccountUnits(key, amount.value, factor);
}

function parseSwitch(given: string | number | boolean): Result<AnyValue> {
  if (given === true || given === 'yes') return ok(true);
  if (given === false || given === 'no') return ok(false);
  return refused('policy/choice', { given, choices: ['yes', 'no'] });
}

const parseTime = (given: string): Result<AnyValue> => {
  const time = parseTimeOfDay(given);
  return time === null ? refused('policy/time', { given, unit: 'HH:MM' }) : ok(time);
};

/**
 * Reads the value that a document gives for a key. [PO5]
 * @returns the value in the account's units; null stays null: to be set by the facility. Issues: `policy/unit`,
 * `policy/unit-missing`, `policy/kind`, `policy/choice`, `policy/time`, `number/…`, each with what was given.
 */
export function parseValue(
  name: PolicyKey,
  given: string | number | boolean | null,
): Result<AnyValue | null> {
  const key: Key = POLICY_KEYS[name];
  if (given === null) return ok(null);
  if (key.kind === 'switch') return parseSwitch(given);
  if (typeof given === 'boolean') return refused('policy/kind', { given, kind: key.kind, unit: key.unit });
  if (key.kind === 'choice') {
    const known = key.choices?.find((choice) => choice === given);
    return known === undefined ? refused('policy/choice', { given, choices: key.choices }) : ok(known);
  }
  if (key.kind === 'time') return parseTime(String(given));
  return parseQuantity(key, given);
}

/** The value as a document writes it: in the key's own unit where that is exact, a smaller one where it is not. */
export function valueText(name: PolicyKey, value: AnyValue): string {
  const key: Key = POLICY_KEYS[name];
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (key.kind === 'time') return showTimeOfDay(value as number);
  const amount = typeof value === 'number' ? fraction(value) : value;
  if (key.unit === '1' || key.unit === '[pH]') return numberText(amount);
  const units = unitsOf(key);
  for (const unit of [key.unit, ...(key.kind === 'duration' ? ['min', 's'] : [])]) {
    const text = decimalText(per(amount, units[unit] ?? ONE));
    if (text !== null) return `${text} ${unit}`;
  }
  return `${numberText(per(amount, units[key.unit] ?? ONE))} ${key.unit}`;
}

const per = (amount: Fraction, unit: Fraction): Fraction =>
  fractionOf(BigInt(amount.n) * BigInt(unit.d), BigInt(amount.d) * BigInt(unit.n));
