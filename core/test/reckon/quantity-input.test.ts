import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Raw, readAmount, wanting } from '@feedwright/core/reckon/asking/quantity-input';
import { COURSE_POUND, MEASURED_OUNCE, USUAL } from '@feedwright/core/reckon/asking/units';
import { calculationNamed } from '@feedwright/core/reckon/catalogue';
import { decimalText } from '@feedwright/core/reckon/exact';
import { reckon } from '@feedwright/core/reckon/reckon';

const read = (raw: Raw, unit: string, conventions = USUAL): string => {
  const found = readAmount(raw, wanting(unit), { conventions });
  return found.ok ? decimalText(found.value.value, 8) : (found.issues[0]?.code ?? '');
};

test('[RK13] reads amounts as people write them', () => {
  const table: readonly (readonly [Raw, string, string])[] = [
    ['500mL', 'mL', '500'],
    ['500 ml', 'mL', '500'],
    ['0.5 L', 'mL', '500'],
    ['0,5 L', 'mL', '500'],
    ['1.5', 'mL', '1.5'],
    ['1.065', 'mL', '1.065'],
    ['8 oz', 'mL', '240'],
    ['8 fl oz', 'mL', '240'],
    ['2 tbsp', 'mL', '30'],
    ['150 lb', 'kg', '68.0388555'],
    ['7 lb 4 oz', 'kg', '3.28854468'],
    ['12 oz', 'kg', '0.34019428'],
    ['11 st 4 lb', 'kg', '71.66759446'],
    ['5ft 2in', 'cm', '157.48'],
    ['5\' 2"', 'cm', '157.48'],
    ["5'2", 'cm', '157.48'],
    ['62 in', 'cm', '157.48'],
    ['62"', 'cm', '157.48'],
    ['1.63 m', 'cm', '163'],
    ['6 h 40 min', 'h', '6.66666667'],
    ['90 min', 'h', '1.5'],
    ['2 y 6 mo', 'a', '2.5'],
    ['18 months', 'a', '1.5'],
    ['3/4', '1', '0.75'],
    ['1 1/2', '1', '1.5'],
    ['75 %', '1', '0.75'],
    ['9 g/237mL', 'g/L', '37.97468354'],
    ['14 g per 250 mL', 'g/L', '56'],
    ['191 mL per 237 mL', 'mL/mL', '0.80590717'],
    ['805 mL/L', 'mL/mL', '0.805'],
    ['20 kcal/oz', 'kcal/mL', '0.66666667'],
    ['1200 kcal/L', 'kcal/mL', '1.2'],
    ['240 kcal', 'kcal/{can}', '240'],
    ['240 kcal/can', 'kcal/{can}', '240'],
    ['1850 kcal/day', 'kcal', '1850'],
    ['1500 mL/24h', 'mL', '1500'],
    ['1500 mL/24h', 'mL/h', '62.5'],
    ['1.25 mL/min', 'mL/h', '75'],
    ['150 mL/kg/day', 'mL/kg', '150'],
    ['6.25 mL/kg/h', 'mL/kg/h', '6.25'],
    ['100 °F', 'Cel', '37.77777778'],
    ['38.2 C', 'Cel', '38.2'],
    ['4184 kJ', 'kcal', '1000'],
    ['0.2 oz/scoop', 'mL/{scoop}', '6'],
    [75, 'mL/h', '75'],
    [{ n: 3, d: 4 }, '1', '0.75'],
  ];
  for (const [raw, unit, value] of table)
    assert.equal(read(raw, unit), value, `${JSON.stringify(raw)} in ${unit}`);
});

test('[RK13] what has two readings, or none, is asked about and never guessed', () => {
  const table: readonly (readonly [Raw, string, string])[] = [
    ['1,500', 'mL', 'number/grouped'],
    ['1 500 mL', 'mL', 'number/grouped'],
    ['1.500,5', 'mL', 'number/grouped'],
    ['.5 L', 'mL', 'number/no-digit-before-mark'],
    ['5. mL', 'mL', 'number/no-digit-after-mark'],
    ['1e3', 'mL', 'number/exponent'],
    ['-5 mL', 'mL', 'number/negative'],
    ['−5 mL', 'mL', 'number/sign'],
    ['+5 mL', 'mL', 'number/sign'],
    ['１２ mL', 'mL', 'number/foreign-digits'],
    ['05 mL', 'mL', 'number/leading-zero'],
    ['', 'mL', 'number/empty'],
    ['mL', 'mL', 'number/empty'],
    ['3/0', '1', 'number/not-a-number'],
    ['5 parsec', 'mL', 'reckon/unknown-unit'],
    ['5 mL/parsec', 'mL', 'reckon/unknown-unit'],
    ['5 g', 'mL', 'reckon/unit-of-another-kind'],
    ['70 mL/h', 'mL', 'reckon/unit-of-another-kind'],
    ['70 mL', 'mL/h', 'reckon/unit-of-another-kind'],
    ['5 lb', 'cm', 'reckon/unit-of-another-kind'],
    ['5 g/0mL', 'g/L', 'reckon/unknown-unit'],
    [Number.NaN, 'mL', 'number/not-a-number'],
    [-1, 'mL', 'number/negative'],
    [1e21, 'mL', 'number/exponent'],
  ];
  for (const [raw, unit, code] of table)
    assert.equal(read(raw, unit), code, `${JSON.stringify(raw)} in ${unit}`);
});

test('[RK13] an unknown unit is answered with those that are accepted', () => {
  const found = readAmount('5 parsec', wanting('mL'), { conventions: USUAL });
  assert.ok(!found.ok);
  assert.deepEqual(found.issues[0]?.data.unit, 'parsec');
  assert.deepEqual(found.issues[0]?.data.accepted, ['mL', 'L', 'cc', 'oz', 'tbsp', 'tsp', 'dL']);
});

test('[RK13] a key may carry the unit, and the value’s own unit goes before it', () => {
  const bmi = calculationNamed('bmi');
  assert.ok(bmi);
  const value = (inputs: Record<string, string>) => {
    const found = reckon(bmi, { height: '163 cm', ...inputs });
    assert.ok(found.ok, JSON.stringify(inputs));
    const weight = found.value.understood.weightKg;
    return weight?.kind === 'quantity' ? weight.value.n / weight.value.d : Number.NaN;
  };
  assert.equal(value({ weightKg: '74' }), 74);
  assert.equal(value({ weight_kg: '74' }), 74);
  assert.equal(value({ WEIGHT: '74' }), 74);
  assert.equal(value({ weight_g: '74000' }), 74);
  assert.equal(value({ weightLb: '10' }), 4.5359237);
  assert.equal(value({ weight_lb: '74 kg' }), 74);
  const wrong = reckon(bmi, { weight_mL: '74', height: '163' });
  assert.ok(!wrong.ok && wrong.issues[0]?.code === 'reckon/unknown-input');
});

test('[RK13] of two inputs that share a name, the one that can read the value is meant', () => {
  const protein = calculationNamed('volume-for-protein');
  const dilution = calculationNamed('dilution');
  assert.ok(protein && dilution);
  const byDensity = reckon(protein, { goal: '80 g', protein: '14 g/250mL' });
  assert.ok(byDensity.ok && byDensity.value.understood.proteinGPerL);
  const byCan = reckon(dilution, { strength: 'half', can: '237 mL' });
  assert.ok(byCan.ok && byCan.value.unrounded.totalMl);
  assert.equal(decimalText(byCan.value.unrounded.totalMl), '474');
});

test('[RK5, RK13] an ounce or a pound that was used is said, with the other one', () => {
  const convert = calculationNamed('convert');
  assert.ok(convert);
  const used = (inputs: Record<string, string>) => {
    const found = reckon(convert, inputs);
    assert.ok(found.ok);
    return found.value.conventions.map(({ convention, used: by, others, asked }) => [
      convention,
      by,
      others[0],
      asked,
    ]);
  };
  assert.deepEqual(used({ value: '8 oz', to: 'mL' }), [['ounce', '30', '29.5735295625', false]]);
  assert.deepEqual(used({ value: '8 oz', to: 'mL', ounce: '29.57' }), [
    ['ounce', '29.5735295625', '30', true],
  ]);
  assert.deepEqual(used({ value: '163 lb', to: 'kg', pound: '2.2' }), [
    ['pound', '0.4545454545', '0.45359237', true],
  ]);
  assert.deepEqual(used({ value: '5 L', to: 'mL' }), []);
  assert.equal(read('1 oz', 'mL', { ...USUAL, ounceMl: MEASURED_OUNCE }), '29.57352956');
  assert.equal(read('2.2 lb', 'kg', { ...USUAL, poundKg: COURSE_POUND }), '1');
});
