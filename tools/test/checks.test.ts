/** A check that cannot fail is worth nothing: each is shown a sound house, then one with a single thing wrong. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { boundaries } from '../boundaries.mjs';
import { lint, typing } from '../compilers.mjs';
import type { Report } from '../house.mjs';
import { licences } from '../licences.mjs';
import { lockfile } from '../lockfile.mjs';
import { readme } from '../readme.mjs';
import { rules } from '../rules.mjs';
import { planted } from './planted.ts';

type Check = (root: string) => Report;
type Planted = readonly [what: string, files: Record<string, string | null>, says: RegExp];

const LOCK = 'package-lock.json';
const locked = (name: string, entry: Record<string, unknown>) => ({
  [LOCK]: JSON.stringify({
    packages: {
      'node_modules/@house/core': { resolved: 'core', link: true },
      'node_modules/@house/fhir': { resolved: 'fhir', link: true },
      core: { version: '0.1.0' },
      fhir: { version: '0.1.0' },
      'node_modules/fast-check': { version: '4.10.2', integrity: 'x', license: 'MIT' },
      'node_modules/zod': { version: '4.6.7', integrity: 'x', license: 'MIT' },
      [`node_modules/${name}`]: { version: '1.0.0', integrity: 'x', license: 'MIT', ...entry },
    },
  }),
});
const session = (text: string) => ({ 'README.md': `\`\`\`console\n${text}\n\`\`\`\n` });

const WRONG: Record<string, readonly [Check, readonly Planted[]]> = {
  types: [
    typing,
    [
      ['a number for a text', { 'cli/src/main.ts': 'export const a: string = 1;\n' }, /main\.ts.*TS2322/],
      ['a host in the core', { 'core/src/base/a.ts': 'console.log(1);\n' }, /a\.ts.*TS2584/],
      [
        'nothing to check',
        { 'core/src': null, 'fhir/src/order.ts': 'export {};\n', 'cli/src/main.ts': 'export {};\n' },
        /TS18003/,
      ],
    ],
  ],
  lint: [
    lint,
    [
      ['an unused import', { 'cli/src/main.ts': "import { a } from './a.ts';\n" }, /noUnusedImports/],
      ['a text that is no program', { 'cli/src/main.ts': 'export const = ;\n' }, /main\.ts/],
    ],
  ],
  boundaries: [
    boundaries,
    [
      [
        'against the river',
        { 'core/src/base/a.ts': "import '../plan/plan.ts';\n" },
        /base may not import plan/,
      ],
      [
        'against the river, by name',
        { 'core/src/base/a.ts': "import type { X } from '@house/core/plan/plan';\n" },
        /base may not import plan/,
      ],
      [
        'against the river, across lines',
        { 'core/src/base/a.ts': "export {\n  fill,\n} from '../plan/plan.ts';\n" },
        /base may not import plan/,
      ],
      [
        'against the river, in a type',
        { 'core/src/base/a.ts': "export type X = typeof import('../plan/plan.ts');\n" },
        /base may not import plan/,
      ],
      [
        'from a neighbour',
        { 'core/src/act/a.ts': "import '../advice/b.ts';\n" },
        /act may not import advice/,
      ],
      ['a stage that is none', { 'core/src/magic/a.ts': '' }, /not in a stage of the river/],
      [
        'a file outside the stages',
        { 'core/src/base/a.ts': "import '../magic/b.ts';\n" },
        /magic is no stage/,
      ],
      ['a third library in the core', { 'core/src/base/a.ts': "import 'dayjs';\n" }, /core imports zod and/],
      ['a host in the core', { 'core/src/base/a.ts': "import 'node:fs';\n" }, /no node:fs/],
      ['a host in the translation', { 'fhir/src/a.ts': "import 'node:http';\n" }, /no node:http/],
      ['an app, by name', { 'fhir/src/a.ts': "import '@house/cli/main';\n" }, /nothing imports the app cli/],
      [
        'an app, by path',
        { 'fhir/src/a.ts': "import '../../cli/src/main.ts';\n" },
        /nothing imports the app cli/,
      ],
      [
        'a workspace by path',
        { 'cli/src/a.ts': "import '../../core/src/base/volume.ts';\n" },
        /another workspace/,
      ],
      [
        'what is not declared',
        { 'cli/src/a.ts': "import 'commander';\n" },
        /commander is not declared in cli/,
      ],
      [
        'a test of another workspace',
        { 'cli/src/a.ts': "import '../../core/test/a.ts';\n" },
        /another workspace/,
      ],
      [
        'a workspace not declared',
        { 'core/test/a.ts': "import '@house/fhir/order';\n" },
        /@house\/fhir is not declared/,
      ],
      [
        'a test library in a source',
        { 'cli/src/a.ts': "import 'fast-check';\n" },
        /fast-check is not declared/,
      ],
      [
        'what is worked out',
        { 'cli/src/a.ts': 'export const a = (x: string) => import(x);\n' },
        /works out at run time/,
      ],
      [
        'the clock',
        { 'core/src/base/a.ts': 'export const now = () => Date.now();\n' },
        /a\.ts:1: Date comes/,
      ],
      [
        'a date',
        { 'core/src/base/a.ts': `\nexport const now = () => \`\${new Date()}\`;\n` },
        /a\.ts:2: Date comes/,
      ],
      ['a coin', { 'core/src/base/a.ts': 'export const a = Math.random();\n' }, /Math\.random comes/],
      [
        'a stop-watch',
        { 'core/src/base/a.ts': 'export const a = performance.now();\n' },
        /performance comes/,
      ],
      ['a drawer', { 'cli/src/utils.ts': '' }, /"utils" names no thing/],
      ['a folder that is a drawer', { 'cli/src/shared/a.ts': '' }, /"shared" names no thing/],
    ],
  ],
  rules: [
    rules,
    [
      [
        'a rule without a test',
        { 'core/test/volume.test.ts': "test('adds', () => {}); // [BA1]\n" },
        /no test is named \[BA1\]/,
      ],
      [
        'a rule whose test is skipped',
        { 'core/test/volume.test.ts': "test.skip('[BA1] adds', () => {});\n" },
        /no test is named \[BA1\]/,
      ],
      [
        'a test of no rule',
        { 'core/test/a.test.ts': "test('[BA1, BA9] adds', () => {});\n" },
        /a\.test\.ts: core\/RULES\.md has no BA9/,
      ],
      [
        'a comment on no rule',
        { 'core/src/base/a.ts': '/** Keeps [BA9]. */\n' },
        /a\.ts: core\/RULES\.md has no BA9/,
      ],
      [
        'a value that names no rule',
        { 'core/src/base/a.ts': "export const rule = 'BA9';\n" },
        /a\.ts: core\/RULES\.md has no BA9/,
      ],
      [
        'a document on no rule',
        { 'docs/a.md': 'answered by [BA9]\n' },
        /docs\/a\.md: core\/RULES\.md has no BA9/,
      ],
      [
        'a rule twice',
        { 'core/RULES.md': '## BA: base\n\n| BA1 | Sums are exact. |\n| BA1 | Sums are exact. |\n' },
        /BA1 stands there twice/,
      ],
      [
        'a rule under another heading',
        { 'core/RULES.md': '## PL: plan\n\n| BA1 | Sums are exact. |\n' },
        /BA1 stands under PL/,
      ],
    ],
  ],
  lockfile: [
    lockfile,
    [
      [
        'a place to fetch from',
        locked('a', { resolved: 'https://example.org/a.tgz' }),
        /names a place to fetch from/,
      ],
      [
        'a script at install',
        locked('a', { hasInstallScript: true }),
        /node_modules\/a has an install script/,
      ],
      ['no integrity', locked('a', { integrity: undefined }), /locked without its integrity/],
      [
        'another version',
        locked('fast-check', { version: '4.0.0', integrity: 'x' }),
        /declares fast-check 4\.10\.2; the lock has 4\.0\.0/,
      ],
      [
        'another version below a workspace',
        locked('zod', {}),
        /core declares zod 4\.6\.7; the lock has 1\.0\.0/,
      ],
    ],
  ],
  licences: [
    licences,
    [
      [
        'a licence that binds',
        locked('a', { license: 'GPL-3.0-only' }),
        /a: licence GPL-3\.0-only is not on the list/,
      ],
      ['one of two that bind', locked('a', { license: '(MIT AND AGPL-3.0-only)' }), /a: licence/],
      ['no licence', locked('a', { license: undefined }), /a: licence none/],
      [
        'test data that would be shipped',
        locked('hl7.fhir.r4.examples', { license: 'CC0-1.0' }),
        /for tests only/,
      ],
    ],
  ],
  readme: [
    readme,
    [
      [
        'an output of yesterday',
        session('$ npx --no-install feedwright plan\nasked: check'),
        /README\.md:2: shows "asked: check", prints "asked: plan"/,
      ],
      [
        'an output cut short',
        session('$ npx --no-install feedwright a\nasked: a\n$ npx --no-install feedwright b'),
        /shows "", prints "asked: b"/,
      ],
      ['a command that is not ours', session('$ rm -rf /'), /starts with \$ rm/],
    ],
  ],
};

for (const [name, [check, wrong]] of Object.entries(WRONG)) {
  test(`${name}: finds nothing in a sound house`, (t) => {
    const { looked, problems } = check(planted(t));
    assert.deepEqual(problems, []);
    assert.ok(looked > 0);
  });
  for (const [what, files, says] of wrong) {
    test(`${name}: finds ${what}`, (t) => {
      const { problems } = check(planted(t, files));
      assert.equal(problems.length, 1, problems.join('\n'));
      assert.match(problems[0] ?? '', says);
    });
  }
}

test('a choice of licences is ours to make', (t) => {
  assert.deepEqual(licences(planted(t, locked('a', { license: 'WTFPL OR ISC' }))).problems, []);
});

test('tests may share what stands in the tests of the core, and a bench may choose what it runs', (t) => {
  const files = {
    'cli/test/a.test.ts': "import '../../core/test/runs.ts';\n",
    'bench/run.ts': 'export const run = (name: string) => import(name);\n',
  };
  assert.deepEqual(boundaries(planted(t, files)).problems, []);
});

test('a suite that several test files run names its rules as they do', (t) => {
  const suite = "export const suite = (of: string) => test('[BA1] ' + of, () => {});\n";
  assert.deepEqual(
    rules(planted(t, { 'core/test/volume.test.ts': null, 'core/test/suite.ts': suite })).problems,
    [],
  );
});

test('a table of cases names its rules in its rows', (t) => {
  const table =
    "for (const [rule, what] of [['BA1', 'adds']]) test(`[$" + '{rule}] $' + '{what}`, () => {});\n';
  assert.deepEqual(rules(planted(t, { 'core/test/volume.test.ts': table })).problems, []);
  const { problems } = rules(planted(t, { 'core/test/a.test.ts': table.replace('BA1', 'BA9') }));
  assert.deepEqual(problems, ['core/test/a.test.ts: core/RULES.md has no BA9']);
});

test('a long file is noted until ARCHITECTURE.md says why', (t) => {
  const long = { 'cli/src/long.ts': '// one\n'.repeat(401) };
  assert.match(boundaries(planted(t, long)).notes?.[0] ?? '', /long\.ts: 401 lines/);
  assert.deepEqual(
    boundaries(planted(t, { ...long, 'ARCHITECTURE.md': 'cli/src/long.ts, for …' })).notes,
    [],
  );
});

test('a README without an example is noted', (t) => {
  const { problems, notes } = readme(planted(t, { 'README.md': '# no session' }));
  assert.deepEqual([problems, notes], [[], ['README.md: no example yet, so none was run']]);
});

test('a check that looked at nothing has failed', (t) => {
  const empty = { core: null, fhir: null, cli: null, 'package.json': '{ "workspaces": [] }' };
  const check = join(import.meta.dirname, '../check.mjs');
  const { stdout, status } = spawnSync(process.execPath, [check, planted(t, empty)], { encoding: 'utf8' });
  assert.match(stdout, /✗ boundaries \(0\)\n {4}looked at nothing/);
  assert.match(stdout, /✗ rules \(0\)/);
  assert.equal(status, 1);
});
