/** What is no order is refused with its place, and nothing that anybody can write makes the reader throw. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { DEFAULT_FEEDS } from '@feedwright/core/feeds/default-list';
import fc from 'fast-check';
import { runs } from '../../core/test/runs.ts';
import { ANSWERS } from '../src/answers.ts';
import { looksLikeFhir, MOST_FHIR_TEXT, orderFromFhir } from '../src/order-from-fhir.ts';
import {
  ANSWERED,
  bundle,
  example,
  imported,
  type Nested,
  only,
  PATIENT,
  plainOrder,
  refusal,
  tube,
  weight,
} from './given.ts';

const REFUSED: readonly (readonly [name: string, text: string, code: string])[] = [
  ['nothing', '', 'json/ends-early'],
  ['half a document', JSON.stringify(plainOrder()).slice(0, -1), 'json/ends-early'],
  [
    'a field written twice',
    '{"resourceType":"NutritionOrder","status":"active","status":"draft"}',
    'json/field-twice',
  ],
  ['XML', '<NutritionOrder xmlns="http://hl7.org/fhir"/>', 'fhir/xml'],
  ['a number', '7', 'fhir/no-resource'],
  ['an order of ours', '{"format":"feedwright-order/1"}', 'fhir/no-resource'],
  ['a patient', '{"resourceType":"Patient"}', 'fhir/other-resource'],
  ['an empty Bundle', '{"resourceType":"Bundle"}', 'fhir/no-order'],
];

for (const [name, text, code] of REFUSED) {
  test(`[FH1] ${name} is refused: ${code}`, () => {
    assert.equal(refusal(text)[0]?.code, code);
  });
}

test('[FH1] a text that is no JSON is refused with the line and column', () => {
  const [issue] = refusal('{\n  "resourceType": "NutritionOrder",\n  "status": active\n}');
  assert.deepEqual([issue?.code, issue?.data.line, issue?.data.column], ['json/unexpected', 3, 13]);
});

test('[FH1] fifty megabytes are refused unread', () => {
  const huge = `{"resourceType":"NutritionOrder","id":"${'x'.repeat(50_000_000)}"}`;
  const [issue] = refusal(huge);
  assert.deepEqual(
    [issue?.code, issue?.data.size, issue?.data.most],
    ['json/too-large', huge.length, MOST_FHIR_TEXT],
  );
  assert.equal(refusal(`<${'x'.repeat(50_000_000)}`)[0]?.code, 'json/too-large');
});

test('[FH8] a number of a million noughts is refused without being worked out', () => {
  const noughts = JSON.stringify(plainOrder()).replace('"value":62.5', `"value":0.${'0'.repeat(1_000_000)}1`);
  const read = imported(noughts, ANSWERED);
  assert.ok(String(only(read, 'fhir/number-too-long').data.value).length <= 120);
});

test('[FH1] FHIR is told from our own documents', () => {
  assert.equal(looksLikeFhir({ resourceType: 'NutritionOrder' }), true);
  assert.equal(looksLikeFhir({ format: 'feedwright-order/1' }), false);
  for (const json of [null, 7, 'NutritionOrder', [], undefined]) assert.equal(looksLikeFhir(json), false);
});

test('[FH1] control characters in a document never reach what is shown', () => {
  const read = imported(
    plainOrder((order) => {
      order.patient.display = 'Ada\u001b[2J\nExample';
      order.enteralFormula.administrationInstruction = 'One line\r\nand another\u0007';
      order.mystery = 'x\u001b[31my';
    }),
    ANSWERED,
  );
  assert.equal(read.order.patient.name, 'Ada [2J Example');
  assert.equal(only(read, 'fhir/text').data.text, 'One line and another');
  assert.doesNotMatch(JSON.stringify(read.problems), /\\u00[01]|\\u007f|\\n|\\r/);
});

const examples: readonly Nested[] = [
  ...(['R4', 'R5'] as const).flatMap((version) =>
    ['enteralbolus', 'enteralcontinuous', 'infantenteral', 'pureeddiet-simple'].map((name) =>
      JSON.parse(example(version, name)),
    ),
  ),
  bundle(PATIENT, weight(70, 'kg', '2026-11-20'), tube('Nasogastric tube', 10)),
];

/** Every place in a document. */
const places = (json: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] =>
  typeof json === 'object' && json !== null
    ? [path, ...Object.entries(json).flatMap(([step, child]) => places(child, [...path, step]))]
    : [path];

function planted(json: unknown, [step, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (step === undefined) return value;
  const copy: Nested = Array.isArray(json) ? [...json] : { ...(json as Nested) };
  copy[step] = planted(copy[step], rest, value);
  return copy;
}

/** Mostly ones that are taken, so that reading goes on to the end. */
const answers = fc
  .oneof(
    {
      weight: 9,
      arbitrary: fc.subarray(
        Object.entries(ANSWERS).map(([key, { example: shown }]) => [key, shown] as const),
      ),
    },
    { weight: 1, arbitrary: fc.array(fc.tuple(fc.constantFrom(...Object.keys(ANSWERS)), fc.string())) },
  )
  .map((given) => Object.fromEntries(given));

const odd = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom<unknown>(
    '',
    ' ',
    0,
    -1,
    1e300,
    1e-300,
    5e-324,
    0.1 + 0.2,
    9_007_199_254_740_992,
    '0001-01-01T00:00:00Z',
    '9999-12-31T23:59:59Z',
    '2026-11-25T18:00:60Z',
    '2026-13-45',
    'mL',
    'h',
    'wk',
    'mL/d',
    'kcal/mL',
    'GJT',
    'constructor',
    '__proto__',
    'Hold 1 mL/h 1 kcal/mL half strength',
    {},
    [],
    [null],
    [[]],
    { reference: '#' },
    { value: 1e9, code: 'L', system: 'http://unitsofmeasure.org' },
    Array.from({ length: 200 }, () => ({
      rateQuantity: { value: 2000, code: 'mL/h', system: 'http://unitsofmeasure.org' },
    })),
  ),
);

test('[FH1] whatever stands anywhere in an order, reading it gives an order or issues', () => {
  const mutated = fc
    .constantFrom(...examples)
    .chain((order) =>
      fc
        .array(fc.tuple(fc.constantFrom(...places(order)), odd), { minLength: 1, maxLength: 4 })
        .map((faults) => faults.reduce<unknown>((json, [path, value]) => planted(json, path, value), order)),
    );
  fc.assert(
    fc.property(mutated, answers, (document, given) => {
      const read = orderFromFhir(JSON.stringify(document) ?? '', given, DEFAULT_FEEDS);
      if (read.ok) {
        assert.ok(read.value.problems.every(({ rule }) => /^FH\d+$/.test(rule)));
        assert.equal(read.value.original, JSON.stringify(document));
      } else assert.ok(read.issues.length > 0);
    }),
    runs(20_000),
  );
});

test('[FH1] any JSON, and any text, is read or refused', () => {
  fc.assert(
    fc.property(fc.oneof(fc.json(), fc.string({ unit: 'binary' })), (text) => {
      const read = orderFromFhir(text, {}, DEFAULT_FEEDS);
      assert.ok(read.ok || read.issues.length > 0);
    }),
    runs(10_000),
  );
});

test('[FH3] of a changed example every leaf is either read or named as not used', () => {
  for (const order of examples) {
    const read = imported({ ...order, unheard: { of: [1, { deep: true }] } });
    const text = (path: readonly (string | number)[]): string =>
      path.reduce<string>(
        (sofar, step) =>
          /^\d+$/.test(String(step)) ? `${sofar}[${step}]` : sofar === '' ? String(step) : `${sofar}.${step}`,
        '',
      );
    const leaves = places(order).filter((path) => {
      const value = path.reduce<unknown>((json, step) => (json as Nested)[step], order);
      return typeof value !== 'object';
    });
    for (const leaf of leaves.map(text)) {
      const named = read.ignored.some(
        (path) => leaf === path || leaf.startsWith(`${path}.`) || leaf.startsWith(`${path}[`),
      );
      assert.ok(named !== read.read.includes(leaf), `${order.id}: ${leaf}`);
    }
    assert.ok(read.ignored.includes('unheard'));
  }
});
