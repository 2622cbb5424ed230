/** What is this in another unit? */
import { bad, issue, ok } from '../../base/result.ts';
import { shownChoice } from '../../base/working.ts';
import { gives, names, quantity } from '../asking/asks.ts';
import { readAmount, type Wanted } from '../asking/quantity-input.ts';
import { parseUnit, type Unit, USUAL } from '../asking/units.ts';
import { type Ask, calculation } from '../declare.ts';
import { type Exact, less, minus, of, over, times } from '../exact.ts';

const MOST = of('1000000000000');

type Written = { readonly text: string; readonly unitOfKey: string | null };

const shape = { unit: '', band: null, choices: [], required: true, assumed: null, others: [] } as const;

/** Kept as written: what it is read as depends on the unit that is wanted. */
const written: Ask<Written> = {
  ...shape,
  kind: 'quantity',
  symbol: 'a',
  also: ['amount', 'from', 'quantity', 'convert'],
  takes: () => true,
  read: ([raw = ''], reading) =>
    typeof raw === 'object'
      ? ok({ text: `${raw.n}/${raw.d}`, unitOfKey: reading.unitOfKey ?? null })
      : ok({ text: String(raw), unitOfKey: reading.unitOfKey ?? null }),
  show: (value) => shownChoice(`${value.text} ${value.unitOfKey ?? ''}`.trim()),
};

const unitName: Ask<string> = {
  ...shape,
  kind: 'choice',
  symbol: 'unit',
  also: ['into', 'in', 'unit'],
  takes: () => false,
  read: ([raw = '']) => {
    const text = String(raw);
    return text.length > 60 || parseUnit(text, USUAL) === null
      ? bad(
          issue([], 'reckon/unknown-unit', {
            unit: text,
            accepted: ['mL', 'oz', 'kg', 'lb', 'cm', 'in', 'mm', 'Fr', 'kcal/mL', 'kcal/oz', 'kJ', '°C'],
          }),
        )
      : ok(text);
  },
  show: shownChoice,
};

export const convert = calculation({
  name: 'convert',
  also: ['conversion', 'units', 'unit-conversion'],
  asks: { value: written, to: unitName },
  gives: { value: gives('b', '', '0.001'), unit: names('unit') },
  equations: ['b = a × (unit of a / unit of b)'],
  sources: ['E50', 'E4', 'E52'],
  rule: 'RK15',
  example: { value: '8 oz', to: 'mL' },
  compute: ({ value, to }, sheet) => {
    const conventions = { ounceMl: sheet.conventions.ounceMl, poundKg: sheet.conventions.poundKg };
    if (value.unitOfKey === null && !/[\p{L}%°'"]/u.test(value.text))
      return sheet.refuse('value', 'reckon/unit-needed', { text: value.text });
    const isMass = /\b(lb|lbs|pounds?|kg|g|grams?|st|stones?)\b/i.test(
      `${value.text} ${value.unitOfKey ?? ''} ${to}`,
    );
    const target = parseUnit(to, conventions, isMass ? 'M1' : undefined);
    if (target === null) return sheet.refuse('to', 'reckon/unknown-unit', { unit: to, accepted: [] });
    const wanted: Wanted = { unit: to, is: target };
    const amount = readAmount(value.text, wanted, {
      conventions,
      ...(value.unitOfKey === null ? {} : { unitOfKey: value.unitOfKey }),
    });
    if (!amount.ok)
      return bad(
        ...amount.issues.map((one) => ({
          ...one,
          path: ['value', ...one.path],
          data: { ...one.data, accepted: [to] },
        })),
      );
    if (target.by !== undefined) sheet.note(target.by);
    if (amount.value.by !== undefined) sheet.note(amount.value.by);
    if (/^(fr|ch|french|charriere)$/i.test(to.trim()) || /fr|ch\b/i.test(value.text))
      sheet.caution('french-is-outer');
    const b = into(amount.value.value, target);
    if (less(MOST, b)) return sheet.refuse('value', 'reckon/too-large', { given: value.text });
    return [
      sheet.number('value', `b = a × (unit of a / ${to})`, [], b),
      sheet.choice('unit', 'unit', [], to, 'E50'),
    ];
  },
});

const into = (value: Exact, target: Unit): Exact =>
  target.offset === undefined
    ? value
    : over(minus(times(value, target.factor), target.offset), target.factor);

export const tubeSize = calculation({
  name: 'french',
  also: ['french-size', 'tube-size', 'charriere'],
  asks: { size: quantity('Fr', '[Ch]', ['1', '40'], 'fr', 'french', 'charriere', 'ch', 'tube') },
  gives: { outerDiameterMm: gives('⌀', 'mm', '0.01') },
  equations: ['⌀ = Fr / 3 (outer)'],
  sources: ['E52'],
  rule: 'RK15',
  cautions: ['french-is-outer'],
  example: { fr: '9' },
  compute: ({ size }, sheet) => [
    sheet.number('outerDiameterMm', '⌀ = Fr / 3 (outer)', [size], over(size, { n: 3n, d: 1n })),
  ],
});
