/** Entries as documents: read strictly, written back the same, and nothing dropped that a newer release made. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fraction } from '@feedwright/core/base/fraction';
import { minutes } from '@feedwright/core/base/instant';
import type { Result } from '@feedwright/core/base/result';
import { ml } from '@feedwright/core/base/volume';
import { parseInstant } from '@feedwright/core/base/zone';
import {
  contradictions,
  type EntryDocument,
  entryJsonSchema,
  parseEntry,
  parseEntryText,
  parseKeptEntry,
  writeEntry,
  writeEntryText,
} from '@feedwright/core/record/document';
import type { AnyEntry } from '@feedwright/core/record/entry';
import { envelopeSchema } from '@feedwright/core/record/envelope';
import { FACT_KINDS, KINDS, kindNamed } from '@feedwright/core/record/kinds/table';
import fc from 'fast-check';
import { runs } from '../runs.ts';
import { arbEntry } from './arbitrary.ts';
import { FACTS } from './arbitrary-fact.ts';

const read = <T>(result: Result<T>): T =>
  result.ok ? result.value : assert.fail(JSON.stringify(result.issues));

const DOCUMENT: EntryDocument = {
  id: 'tablet-3:17',
  course: 'course-1',
  happenedAt: '2026-11-25T09:00:00+00:00',
  recordedAt: '2026-11-25T09:02:30.250+00:00',
  by: 'nurse-4',
  device: 'tablet-3',
  number: 17,
  fact: { kind: 'water-given/1', water: 'tap', volumeMl: 30, why: 'flush' },
};

const withFact = (fact: Record<string, unknown>): unknown => ({ ...DOCUMENT, fact });
const problems = (json: unknown): readonly string[] => {
  const result = parseEntry(json);
  return result.ok ? [] : result.issues.map((one) => `${one.path.join('.')}: ${one.code}`);
};

test('[RC1] an entry reads in units that a person writes', () => {
  assert.deepEqual(read(parseEntry(DOCUMENT)), {
    id: 'tablet-3:17',
    course: 'course-1',
    happenedAt: parseInstant('2026-11-25T09:00:00Z'),
    recordedAt: parseInstant('2026-11-25T09:02:30.25Z'),
    by: 'nurse-4',
    device: 'tablet-3',
    number: 17,
    order: null,
    policy: null,
    task: null,
    corrects: null,
    fact: { kind: 'water-given/1', water: 'tap', volume: ml(30), why: 'flush' },
  });
  const given = {
    kind: 'feed-given/1',
    by: 'gravity',
    feed: 'standard-1.0',
    strength: '3/4',
    volumeMl: '240,5',
    lastedMinutes: 20,
    heightCm: 45.5,
    timedBarrel: { volumeMl: 60, tookMinutes: 2.5 },
  };
  assert.deepEqual(read(parseEntry(withFact(given))).fact, {
    kind: 'feed-given/1',
    by: 'gravity',
    feed: 'standard-1.0',
    strength: fraction(3, 4),
    volume: ml(240.5),
    lasted: minutes(20),
    heightCm: fraction(91, 2),
    timedBarrel: { volume: ml(60), took: minutes(2.5) },
  });
});

test('[RC1] entry → document → entry is the identity, for every kind', () => {
  for (const kind of FACT_KINDS) {
    const entries = fc.tuple(arbEntry, FACTS[kind]).map(([entry, fact]) => ({ ...entry, fact }) as AnyEntry);
    fc.assert(
      fc.property(entries, (entry) => {
        assert.deepEqual(read(parseEntry(writeEntry(entry))), entry);
      }),
      runs(200),
    );
  }
});

test('[RC1] document → entry → document is the identity, as text too', () => {
  fc.assert(
    fc.property(arbEntry, (entry) => {
      const text = writeEntryText(entry);
      for (const parse of [parseEntryText, parseKeptEntry]) {
        assert.equal(writeEntryText(read(parse(text))), text);
      }
    }),
    runs(2_000),
  );
});

test('[RC1] no number is lost on the way: a third of a mL comes back as a third', () => {
  const third = withFact({ kind: 'feed-lost/1', where: 'out-of-tube', volumeMl: '1/3' });
  const entry = read(parseEntry(third));
  assert.deepEqual(entry.fact, { kind: 'feed-lost/1', where: 'out-of-tube', volume: ml(1) / 3 });
  assert.deepEqual(writeEntry(entry).fact.volumeMl, '1/3');
});

/** One thing wrong, or only strange, with a document that was right. */
const arbDamage = fc.record({
  inFact: fc.boolean(),
  field: fc.nat(),
  to: fc.oneof(
    fc.constant(undefined),
    fc.constantFrom<unknown>(
      null,
      '',
      '30',
      '30,0',
      '1,500',
      -1,
      1e9,
      1.5,
      true,
      [],
      {},
      'full',
      'tap',
      '2026-11-25',
    ),
    fc.jsonValue(),
  ),
  unheardOf: fc.boolean(),
});

type Damage = typeof arbDamage extends fc.Arbitrary<infer T> ? T : never;

function damaged(document: EntryDocument, { inFact, field, to, unheardOf }: Damage): unknown {
  const part: Record<string, unknown> = { ...(inFact ? document.fact : document) };
  const fields = Object.keys(part);
  const name = unheardOf ? 'unheardOf' : fields[field % fields.length]!;
  part[name] = to;
  const whole = inFact ? { ...document, fact: part } : part;
  return JSON.parse(JSON.stringify(whole));
}

/** What the descriptions alone say: the slow way, without the short one before it. */
function describedAsRight(json: Record<string, unknown>): boolean {
  const fact = json.fact as Record<string, unknown> | null;
  const kind = typeof fact === 'object' && fact !== null ? kindNamed(fact.kind) : null;
  return kind !== null && envelopeSchema.safeParse(json).success && kind.schema.safeParse(fact).success;
}

test('[RC11] the short way of reading takes nothing that the description refuses, and refuses nothing that it takes', () => {
  let [right, wrong] = [0, 0];
  fc.assert(
    fc.property(arbEntry, arbDamage, (entry, damage) => {
      const json = damaged(writeEntry(entry), damage);
      const result = parseEntry(json);
      const known = result.ok && !('raw' in result.value.fact);
      if (known) assert.ok(describedAsRight(json as Record<string, unknown>));
      else if (!result.ok && describedAsRight(json as Record<string, unknown>)) {
        assert.ok(
          result.issues.every((one) => /^(entry\/names-itself|fact\/|residual\/)/.test(one.code)),
          JSON.stringify(result.issues),
        );
      }
      if (result.ok) right += 1;
      else wrong += 1;
    }),
    runs(5_000),
  );
  assert.ok(right > 50 && wrong > 50, `${right} right, ${wrong} wrong`);
});

test('[RC11] everything that is wrong is told at once, each with its place', () => {
  const wrong = {
    ...DOCUMENT,
    id: '',
    happenedAt: '2026-11-25 09:00',
    number: -1,
    by: undefined,
    ward: 'B',
    fact: { kind: 'water-given/1', water: 'river', volumeMl: '1,500', why: 'flush', rate: 3 },
  };
  assert.deepEqual(problems(wrong).toSorted(), [
    'by: field/missing',
    'fact.rate: field/unknown',
    'fact.volumeMl: number/grouped',
    'fact.water: field/not-a-choice',
    'happenedAt: time/not-an-instant',
    'id: field/empty',
    'number: number/not-credible',
    'ward: field/unknown',
  ]);
});

test('[RC11] what cannot have been measured is given back, what is only much is recorded', () => {
  const lost = (volumeMl: unknown) => withFact({ kind: 'feed-lost/1', where: 'out-of-tube', volumeMl });
  assert.deepEqual(problems(lost(20_000)), []);
  assert.deepEqual(problems(lost(20_001)), ['fact.volumeMl: number/not-credible']);
  assert.deepEqual(problems(lost(0)), ['fact.volumeMl: number/not-credible']);
  assert.deepEqual(problems(lost(-30)), ['fact.volumeMl: number/not-credible']);
  assert.deepEqual(problems(withFact({ kind: 'pump-started/1', rateMlPerHour: 0.005 })), [
    'fact.rateMlPerHour: number/too-precise',
  ]);
});

test('[RC11] what is no entry at all is said, and never thrown', () => {
  assert.deepEqual(problems(null), [': entry/not-an-object']);
  assert.deepEqual(problems([DOCUMENT]), [': entry/not-an-object']);
  assert.deepEqual(problems({ ...DOCUMENT, fact: 'water' }), ['fact: entry/no-fact']);
  assert.deepEqual(problems(withFact({ kind: 'water-given' })), ['fact.kind: entry/kind']);
  assert.deepEqual(problems(withFact({ kind: 'water-given/0' })), ['fact.kind: entry/kind']);
  assert.deepEqual(problems(withFact({})), ['fact.kind: entry/kind']);
  const twice = JSON.stringify(DOCUMENT).replace('"volumeMl":30', '"volumeMl":30,"volumeMl":300');
  const result = parseEntryText(twice);
  assert.equal(result.ok ? 'read' : result.issues[0]?.code, 'json/field-twice');
  for (const parse of [parseEntryText, parseKeptEntry]) {
    const cut = parse('{"id":');
    assert.equal(cut.ok ? 'read' : cut.issues[0]?.code, 'json/ends-early');
  }
  fc.assert(
    fc.property(fc.jsonValue(), (json) => {
      parseEntry(json);
    }),
    runs(2_000),
  );
});

test('[RC11] what was read before does not change how an entry is read', () => {
  const documents = fc.array(fc.tuple(arbEntry, arbDamage), { minLength: 2, maxLength: 6 });
  fc.assert(
    fc.property(documents, (all) => {
      const jsons = all.map(([entry, damage]) => damaged(writeEntry(entry), damage));
      const forwards = jsons.map((json) => parseEntry(json));
      const backwards = jsons.toReversed().map((json) => parseEntry(json));
      assert.deepEqual(backwards.toReversed(), forwards);
    }),
    runs(500),
  );
});

test('[RC3] a kind or a version that is not known here is kept to the last field', () => {
  for (const kind of ['rate-changed/2', 'mood-noted/1', 'entered-in-error/3']) {
    const fact = { kind, whatever: [1, { deep: null }], volumeMl: 'many' };
    const entry = read(parseEntry(withFact(fact)));
    assert.deepEqual(entry.fact, { kind, raw: fact });
    assert.deepEqual(writeEntry(entry), withFact(fact));
  }
});

test('[RC3] the envelope of an unknown kind is read as strictly as any', () => {
  assert.deepEqual(problems({ ...DOCUMENT, recordedAt: 'now', fact: { kind: 'mood-noted/1' } }), [
    'recordedAt: time/not-an-instant',
  ]);
});

test('[RC12] an entry that contradicts itself is malformed', () => {
  const residual = (fields: Record<string, unknown>) =>
    withFact({ kind: 'residual-checked/1', found: 'measured', returnedMl: 0, discardedMl: 0, ...fields });
  assert.deepEqual(problems(residual({ volumeMl: 120, returnedMl: 100, discardedMl: 20 })), []);
  assert.deepEqual(problems(residual({ volumeMl: 120, returnedMl: 100, discardedMl: 21 })), [
    'fact.returnedMl: residual/more-than-drawn',
  ]);
  assert.deepEqual(problems(residual({})), ['fact.volumeMl: residual/no-volume']);
  assert.deepEqual(problems(residual({ found: 'zero' })), []);
  assert.deepEqual(problems(residual({ found: 'zero', volumeMl: 0 })), []);
  assert.deepEqual(problems(residual({ found: 'zero', volumeMl: 5 })), [
    'fact.volumeMl: residual/volume-without-aspirate',
  ]);
  assert.deepEqual(problems(residual({ found: 'could-not-aspirate', volumeMl: 5 })), [
    'fact.volumeMl: residual/volume-without-aspirate',
  ]);
  assert.deepEqual(problems(residual({ found: 'could-not-aspirate', volumeMl: 0 })), [
    'fact.found: residual/seen-without-aspirate',
  ]);
  assert.deepEqual(problems(residual({ found: 'not-done', look: 'clear' })), [
    'fact.found: residual/seen-without-aspirate',
  ]);
  const checked = { kind: 'tube-checked/1', method: 'ph' };
  assert.deepEqual(problems(withFact({ ...checked, confirmed: true })), [
    'fact.ph: fact/confirmed-without-ph',
  ]);
  assert.deepEqual(problems(withFact({ ...checked, confirmed: false })), []);
  assert.deepEqual(problems(withFact({ ...checked, confirmed: true, ph: 4.5 })), []);
});

test('[RC12] an entry names no other as itself', () => {
  const { id } = DOCUMENT;
  assert.deepEqual(problems({ ...DOCUMENT, corrects: id }), ['corrects: entry/names-itself']);
  assert.deepEqual(problems(withFact({ kind: 'entered-in-error/1', target: id, reason: 'wrong bed' })), [
    'fact.target: entry/names-itself',
  ]);
  assert.deepEqual(problems(withFact({ kind: 'duplicate-settled/1', keeps: 'a', drops: 'a' })), [
    'fact.drops: entry/names-itself',
  ]);
  assert.deepEqual(contradictions(read(parseEntry(DOCUMENT))), []);
});

test('[RC1] the schema of an entry names every kind, and lets no other field pass', () => {
  const schema = entryJsonSchema() as {
    properties: {
      fact: { oneOf: { properties: { kind: { const: string } }; additionalProperties: boolean }[] };
    };
    additionalProperties: boolean;
    required: string[];
  };
  const { oneOf } = schema.properties.fact;
  assert.deepEqual(
    oneOf.map((one) => one.properties.kind.const),
    FACT_KINDS,
  );
  assert.ok(oneOf.every((one) => one.additionalProperties === false));
  assert.equal(schema.additionalProperties, false);
  assert.deepEqual(schema.required, [
    'id',
    'course',
    'happenedAt',
    'recordedAt',
    'by',
    'device',
    'number',
    'fact',
  ]);
  assert.deepEqual(Object.keys(KINDS), FACT_KINDS);
});
