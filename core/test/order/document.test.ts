import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { parseJson } from '@feedwright/core/base/json';
import type { Bad } from '@feedwright/core/base/result';
import {
  MOST_ORDER_TEXT,
  orderDocument,
  orderJsonSchema,
  parseOrder,
  parseOrderText,
} from '@feedwright/core/order/document';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbOrder } from './arbitrary.ts';
import { DOCUMENT, orderWith } from './example.ts';

const issuesOf = (json: unknown) => (parseOrder(json) as Bad).issues ?? [];
const textIssue = (text: string) => (parseOrderText(text) as Bad).issues[0];

test('[OR1] order → document → order is the identity, for orders however odd', () => {
  for (const wildness of ['sane', 'odd'] as const) {
    fc.assert(
      fc.property(arbOrder(wildness), (order) => {
        const text = JSON.stringify(orderDocument(order));
        assert.deepEqual(parseOrderText(text), { ok: true, value: order });
      }),
      runs(2_000),
    );
  }
});

test('[OR1] document → order → document is the identity for a document as it would be written', () => {
  fc.assert(
    fc.property(arbOrder('odd'), (order) => {
      const document = orderDocument(order);
      const read = parseOrder(document);
      assert.ok(read.ok);
      assert.deepEqual(orderDocument(read.value), document);
    }),
    runs(1_000),
  );
  assert.deepEqual(orderDocument(orderWith()), DOCUMENT);
});

test('[OR1] whatever JSON is read, it is an order or it is issues, and never a throw', () => {
  const broken = arbOrder('odd').chain((order) => {
    const document = orderDocument(order) as Record<string, unknown>;
    return fc
      .tuple(fc.constantFrom(...Object.keys(document), 'extra'), fc.jsonValue())
      .map(([field, value]) => ({ ...document, [field]: value }));
  });
  fc.assert(
    fc.property(fc.oneof(fc.anything(), fc.jsonValue(), broken), (json) => {
      const read = parseOrder(json);
      assert.ok(read.ok || read.issues.length > 0);
    }),
    runs(3_000),
  );
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
      const read = parseOrderText(text);
      assert.ok(read.ok || read.issues.length > 0);
    }),
    runs(3_000),
  );
});

test('[OR1] everything wrong is found at once, each with its path', () => {
  const issues = issuesOf({
    ...DOCUMENT,
    zone: 'Europe/Londinium',
    regimen: { kind: 'continuous', rateMlPerHour: '1,500', ratePerHour: 3 },
    patient: { name: 'A', dosingWeight: { kg: -70 } },
    water: { water: 'well', given: [{ kind: 'times', volumeMl: 30, times: ['24:00'] }] },
    startsAt: '2026-11-25',
    method: 'pumps',
  });
  assert.deepEqual(issues.map(({ path, code }) => `${path.join('.')} ${code}`).toSorted(), [
    'method field/not-a-choice',
    'patient.dosingWeight.kg number/not-credible',
    'regimen.rateMlPerHour number/grouped',
    'regimen.ratePerHour field/unknown',
    'startsAt time/not-an-instant',
    'water.given.0.times.0 time/not-hh-mm',
    'water.water field/not-a-choice',
    'zone time/no-such-zone',
  ]);
});

test('[OR1] an unknown field is named with the known field that it is nearest to', () => {
  const unknown = (changes: object) => issuesOf({ ...DOCUMENT, ...changes })[0]?.data;
  const regimen = { kind: 'continuous', rateMlPerHour: 75 };
  assert.deepEqual(unknown({ regimen: { ...regimen, rate: 75 } }), {
    field: 'rate',
    nearest: 'rateMlPerHour',
    known: ['kind', 'rateMlPerHour', 'of', 'perDay', 'advance'],
  });
  assert.equal(unknown({ alergies: [] })?.nearest, null);
  assert.equal(unknown({ prescribedAtt: 'x' })?.nearest, 'prescribedAt');
  const long = unknown({ ['x'.repeat(900_000)]: 1 });
  assert.equal(String(long?.field).length, 80);
});

test('[OR1] a field that is missing is named, with its choices where it has some', () => {
  const { setting: _, ...rest } = DOCUMENT;
  const [missing] = issuesOf(rest);
  assert.equal(missing?.code, 'field/missing');
  assert.deepEqual(missing?.path, ['setting']);
  assert.deepEqual(missing?.data.choices, ['hospital', 'residential-care', 'home']);
  const [rate] = issuesOf({ ...DOCUMENT, regimen: { kind: 'continuous' } });
  assert.deepEqual([rate?.code, rate?.path], ['field/missing', ['regimen', 'rateMlPerHour']]);
  const [strength] = issuesOf({ ...DOCUMENT, feed: { id: 'standard' } });
  assert.deepEqual([strength?.code, strength?.path], ['field/missing', ['feed', 'strength']]);
  const [kind] = issuesOf({ ...DOCUMENT, regimen: { kind: 'drip', rateMlPerHour: 75 } });
  assert.deepEqual([kind?.code, kind?.path], ['field/not-a-choice', ['regimen', 'kind']]);
});

test('[OR1] a number is one number or a question: decimal text, fractions, and nothing in doubt', () => {
  const rate = (rateMlPerHour: unknown) =>
    parseOrder({ ...DOCUMENT, regimen: { kind: 'continuous', rateMlPerHour } });
  const asRate = (written: unknown) => {
    const read = rate(written);
    return read.ok ? (read.value.regimen as { rate: { rate: number } }).rate.rate : read.issues[0]?.code;
  };
  assert.equal(asRate(62.5), 6_250);
  assert.equal(asRate('62.5'), 6_250);
  assert.equal(asRate('62,5'), 6_250);
  assert.equal(asRate('125/2'), 6_250);
  assert.equal(asRate('1,500'), 'number/grouped');
  assert.equal(asRate('1.500'), 'number/grouped');
  assert.equal(asRate('.5'), 'number/no-digit-before-mark');
  assert.equal(asRate('1e3'), 'number/exponent');
  assert.equal(asRate('75 mL/h'), 'number/not-a-number');
  assert.equal(asRate('1/0'), 'number/divided-by-zero');
  for (const inherited of ['constructor', 'toString', '__proto__']) {
    assert.equal(asRate(inherited), 'number/not-a-number');
  }
  assert.equal(asRate('200/3'), 'number/too-precise');
  assert.equal(asRate(75.125), 'number/too-precise');
  assert.equal(asRate({}), 'field/wrong-type');
  assert.equal(asRate(null), 'field/wrong-type');
  assert.equal(asRate(true), 'field/wrong-type');
});

test('[OR1] an absurd number is refused with its value, unit and bounds', () => {
  const absurd = (rateMlPerHour: number) =>
    issuesOf({ ...DOCUMENT, regimen: { kind: 'continuous', rateMlPerHour } })[0];
  for (const value of [0, -75, 50_000, 2_000.01]) {
    assert.equal(absurd(value)?.code, 'number/not-credible', String(value));
  }
  assert.deepEqual(absurd(50_000)?.data, {
    value: fraction(50_000),
    unit: 'mL/h',
    least: fraction(0),
    orLeast: false,
    most: fraction(2_000),
  });
  assert.equal(absurd(2_000), undefined);
  assert.equal(absurd(0.01), undefined);
});

test('[OR1] strength must be written, as full, as parts or as a decimal', () => {
  const strength = (written: unknown) => {
    const read = parseOrder({ ...DOCUMENT, feed: { id: 'standard', strength: written } });
    return read.ok ? read.value.feed?.strength : read.issues[0]?.code;
  };
  assert.deepEqual(strength('full'), fraction(1));
  assert.deepEqual(strength('3/4'), fraction(3, 4));
  assert.deepEqual(strength(0.75), fraction(3, 4));
  assert.equal(strength('half'), 'number/not-a-number');
  assert.equal(strength('75 %'), 'number/not-a-number');
});

test('[OR1] the document says what it is: another kind, a newer version and no kind are told apart', () => {
  const code = (json: unknown) => issuesOf(json)[0]?.code;
  assert.equal(code({ ...DOCUMENT, document: 'feedwright-order/2' }), 'document/newer-version');
  assert.equal(code({ ...DOCUMENT, document: 'feedwright-policy/1' }), 'document/wrong-kind');
  assert.equal(code({ resourceType: 'NutritionOrder' }), 'document/no-kind');
  assert.equal(issuesOf({ resourceType: 'NutritionOrder' })[0]?.data.resourceType, 'NutritionOrder');
  assert.equal(code([]), 'document/not-an-object');
  assert.equal(code('order'), 'document/not-an-object');
});

test('[OR1] text that is no JSON is refused with the line and column where it goes wrong', () => {
  assert.deepEqual(textIssue('{\n  "a": 1,\n  b: 2\n}')?.data, { line: 3, column: 3 });
  assert.deepEqual(textIssue('{"a": 1')?.code, 'json/ends-early');
  assert.deepEqual(textIssue('{"a": 1, "a": 2}')?.data, { line: 1, column: 10, field: 'a' });
  assert.equal(textIssue('{"a": 01}')?.code, 'json/unexpected');
  assert.equal(textIssue('{} {}')?.code, 'json/more-after-end');
  assert.equal(textIssue('[1,]')?.code, 'json/unexpected');
  assert.equal(textIssue('"a\nb"')?.code, 'json/bad-string');
  assert.equal(textIssue('['.repeat(100_000))?.code, 'json/too-deep');
});

/** The platform's own reader is the reference, but for a field that is written twice. */
function readByPlatform(text: string): unknown {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return 'refused';
  }
}

test('[OR1] JSON is what JSON.parse takes for it, to the value, and nothing else is', () => {
  const json = fc.oneof(fc.json(), fc.json({ stringUnit: 'grapheme' }), fc.string());
  const edited = fc
    .tuple(
      json,
      fc.nat(),
      fc.constantFrom('', ',', '"', '}', ']', '0', '.', 'e', '-', '\\', '\u0001', ' ', '\n'),
    )
    .map(([text, at, put]) => {
      const place = at % (text.length + 1);
      return text.slice(0, place) + put + text.slice(place + (at % 2));
    });
  fc.assert(
    fc.property(fc.oneof(json, edited), (text) => {
      const read = parseJson(text, 1e6);
      if (!read.ok && read.issues[0]?.code === 'json/field-twice') return;
      assert.deepEqual(read.ok ? read : 'refused', readByPlatform(text));
    }),
    runs(10_000),
  );
});

test('[OR1] text over 1 MB is refused before it is read', () => {
  const padded = JSON.stringify(DOCUMENT).padEnd(MOST_ORDER_TEXT, ' ');
  assert.ok(parseOrderText(padded).ok);
  assert.deepEqual(textIssue(`${padded} `), {
    path: [],
    code: 'json/too-large',
    data: { size: MOST_ORDER_TEXT + 1, most: MOST_ORDER_TEXT },
  });
});

test('[OR1] what could steer a terminal or break a label is no text', () => {
  const named = (name: string) => issuesOf({ ...DOCUMENT, patient: { name } })[0]?.code;
  assert.equal(named('\u001b[2J'), 'text/control-character');
  assert.equal(named('a\nb'), 'text/control-character');
  assert.equal(named('a\u2028b'), 'text/control-character');
  assert.equal(named('75\u202e001'), 'text/control-character', 'read the other way round');
  assert.equal(named('\ud800'), 'text/control-character');
  assert.equal(named(''), 'field/empty');
  assert.equal(named('x'.repeat(201)), 'field/too-long');
  assert.equal(named('Zoë Ångström-O’Neill'), undefined);
});

test('[OR1] an amount is one of mixture unless it says formula, for the regimen or for one of its amounts', () => {
  const regimen = (written: object) =>
    orderWith({ regimen: written as never }).regimen as never as Record<string, { of: string }>;
  assert.equal(regimen({ kind: 'continuous', rateMlPerHour: 50 }).rate?.of, 'mixture');
  assert.equal(regimen({ kind: 'continuous', rateMlPerHour: 50, of: 'formula' }).rate?.of, 'formula');
  const cyclic = { kind: 'cyclic', from: '20:00', until: '06:00', rateMlPerHour: 80, volumeMl: 800 };
  assert.deepEqual(
    [regimen({ ...cyclic, of: 'formula' }).rate?.of, regimen({ ...cyclic, of: 'formula' }).volume?.of],
    ['formula', 'formula'],
  );
  assert.deepEqual(
    [
      regimen({ ...cyclic, volumeOf: 'formula' }).rate?.of,
      regimen({ ...cyclic, volumeOf: 'formula' }).volume?.of,
    ],
    ['mixture', 'formula'],
  );
});

type Schema = {
  description?: string;
  unit?: string;
  properties?: Record<string, Schema>;
  [key: string]: unknown;
};

/** Every named field of a schema, however deep. */
function fieldsOf(schema: unknown, path = ''): readonly (readonly [string, Schema])[] {
  if (typeof schema !== 'object' || schema === null) return [];
  const { properties = {}, ...rest } = schema as Schema;
  return [
    ...Object.entries(properties).flatMap(([name, field]) => [
      [`${path}.${name}`, field] as const,
      ...fieldsOf(field, `${path}.${name}`),
    ]),
    ...Object.values(rest).flatMap((part) =>
      (Array.isArray(part) ? part : [part]).flatMap((one) => fieldsOf(one, path)),
    ),
  ];
}

const UNIT_IN_NAME =
  /(Ml|MlPerHour|MlPerDay|Hours|Minutes|minutes|hours|kg|Cm|Kcal|KcalPerMl|kcalPerDay|ProteinG|GPerDay)$/;

test('[OR1] the JSON Schema names every field with a description, and every number with its unit', () => {
  const schema = orderJsonSchema();
  const text = JSON.stringify(schema);
  const fields = fieldsOf(schema);
  assert.ok(fields.length > 90, String(fields.length));
  for (const [path, field] of fields) {
    const said = JSON.stringify(field);
    assert.ok(said.includes('"description"') || said.includes('"const"'), path);
    if (UNIT_IN_NAME.test(path)) assert.ok(said.includes('"unit"'), path);
  }
  assert.ok(text.includes('"additionalProperties":false'));
  assert.ok(text.includes('"const":"feedwright-order/1"'));
});
