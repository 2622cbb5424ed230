/** Is everything that the import says also said in words? The codes are taken from the source itself. */
import assert from 'node:assert/strict';
import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { ENGLISH } from '@feedwright/core/screen/english/english';
import { problemSays } from '@feedwright/core/screen/problem-text';
import { example, imported, type Nested, plainOrder } from './given.ts';

const source = join(import.meta.dirname, '..', 'src');
const CODES = new Set(
  globSync('**/*.ts', { cwd: source }).flatMap(
    (file) => readFileSync(join(source, file), 'utf8').match(/(?<=')(?:fhir|answer)\/[a-z-]+(?=')/g) ?? [],
  ),
);

test('[FH23] every code of the import has its words', () => {
  assert.ok(CODES.size > 80, `${CODES.size} codes found`);
  const wordless = [...CODES].filter((code) => !(code in ENGLISH.problems) && !(code in ENGLISH.issues));
  assert.deepEqual(wordless, []);
});

test('[FH23] what the examples leave open is said in sentences, with what to do and without a code or a blank', () => {
  const documents: readonly (string | Nested)[] = [
    ...(['R4', 'R5'] as const).flatMap((version) =>
      ['enteralbolus', 'enteralcontinuous', 'infantenteral', 'pureeddiet-simple'].map((name) =>
        example(version, name),
      ),
    ),
    plainOrder(),
  ];
  for (const { problems } of documents.map((document) => imported(document))) {
    for (const problem of problems) {
      const { says, remedy } = problemSays(problem, ENGLISH);
      assert.match(says, /^[A-Z0-9“].*[.”)]$/s, problem.code);
      assert.doesNotMatch(`${says} ${remedy}`, /undefined|\[object|null|fhir\//, problem.code);
      assert.ok(problem.level === 'note' || remedy.length > 5, problem.code);
    }
  }
});

test('[FH23] an answered question is said with its answer, and asks nothing more', () => {
  const [zone] = imported(plainOrder(), { zone: 'Asia/Kolkata' }).problems;
  assert.ok(zone !== undefined);
  assert.deepEqual(problemSays(zone, ENGLISH), {
    says: 'The order’s times have no time zone.',
    remedy: 'Answered: Asia/Kolkata.',
  });
});
