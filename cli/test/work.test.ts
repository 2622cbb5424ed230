import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { test } from 'node:test';
import { work as answer } from '../src/work-answer.ts';

type Answer = { readonly status: number; readonly stdout: string; readonly stderr: string };

/** What the verb writes and how it ends, called as the command line calls it. */
function work(...args: string[]): Answer {
  const written = { stdout: '', stderr: '' };
  const { exitCode } = process;
  const writes = { stdout: process.stdout.write, stderr: process.stderr.write };
  const catching = (stream: 'stdout' | 'stderr') => (text: unknown) => {
    written[stream] += String(text);
    return true;
  };
  process.stdout.write = catching('stdout');
  process.stderr.write = catching('stderr');
  try {
    const [name, ...pairs] = args.filter((arg) => !arg.startsWith('--'));
    answer(name, pairs, { json: args.includes('--json'), about: args.includes('--about') });
    return { ...written, status: Number(process.exitCode ?? 0) };
  } finally {
    Object.assign(process.stdout, { write: writes.stdout });
    Object.assign(process.stderr, { write: writes.stderr });
    process.exitCode = exitCode;
  }
}

const json = (...args: string[]) => {
  const { status, stdout, stderr } = work(...args, '--json');
  assert.equal(status, 0, stderr);
  assert.equal(stderr, '');
  return JSON.parse(stdout);
};

test('[RK1] without a name it lists every calculation with inputs, units and bands', () => {
  const { status, stdout } = work();
  assert.equal(status, 0);
  for (const name of ['rate', 'dilution', 'catch-up', 'penn-state', 'refeeding-risk', 'convert'])
    assert.match(stdout, new RegExp(`^${name}: `, 'm'));
  assert.match(stdout, /rateMlPerHour {2,}0\.1–2000 mL\/h \[mL\/h, mL\/min/);
  assert.match(stdout, /the order, local policy and licensed practice decide/);
  const { calculations } = json();
  assert.ok(calculations.length >= 80);
  const rate = calculations.find((one: { name: string }) => one.name === 'rate');
  assert.equal(rate.subject, 'feeding');
  assert.deepEqual(rate.inputs[0].band.least, 0.1);
  assert.ok(rate.inputs[0].accepted.includes('oz'));
  assert.equal(rate.sources[0].provenance, 'read');
});

test('[RK2] the example of a dietetics handout reads as it is printed: 1542 mL, 70 mL/h, 1848 kcal', () => {
  const { status, stdout } = work(
    'volume-for-energy',
    'goal=1850 kcal',
    'energyDensity=1.2 kcal/mL',
    'hours=22',
  );
  assert.equal(status, 0);
  assert.match(stdout, /^ {2}volume +1542 mL$/m);
  assert.match(stdout, /^ {2}rate +70 mL\/h$/m);
  assert.match(stdout, /^ {2}energy +1848 kcal$/m);
  assert.match(stdout, /r = V \/ t {2}= {2}70\.075758 mL\/h; shown .*half upward: 70 mL\/h {2}\[E1\]/);
  assert.match(stdout, /E1 {2}Practice enteral and parenteral calculations/);
  assert.match(stdout, /Arithmetic to check, not an order/);
});

test('[RK17] [CL6] JSON has unit-bearing keys, the numbers before rounding, and a working for each', () => {
  const answer = json('rate-for-energy', 'kcal_goal=1850', 'kcal_per_mL=1.2', 'hours=22');
  assert.equal(answer.calculation, 'volume-for-energy');
  assert.deepEqual(answer.result, {
    volumeMl: 1542,
    rateMlPerHour: 70,
    deliveredVolumeMl: 1540,
    energyKcal: 1848,
  });
  assert.equal(answer.unrounded.rateMlPerHour, 70.075757576);
  assert.equal(answer.working.length, 4);
  const [, rate] = answer.working;
  assert.deepEqual([rate.symbol, rate.equation, rate.result, rate.unit], ['r', 'r = V / t', 70, 'mL/h']);
  assert.deepEqual(rate.rounded, { way: 'half-up', step: 1 });
  assert.equal(rate.source, 'E1');
  assert.equal(answer.understood.hours, 22);
  assert.match(answer.cautions.at(-1).says, /Enteral only/);
});

test('[RK5] conventions that were used are said, and the others named', () => {
  const answer = json('convert', 'value=8 oz', 'to=mL');
  assert.deepEqual(answer.result, { value: 240, unit: 'mL' });
  assert.deepEqual(answer.conventions, [
    { convention: 'ounce', used: '30', others: ['29.5735295625'], asked: false },
  ]);
  assert.match(
    work('holliday-segar', 'weight=25').stdout,
    /mL for each kg over 20: 20 \(also in print: 15, 25/,
  );
});

test('[RK12] what is from memory says so', () => {
  const args = ['penn-state', 'sex=m', 'weight=110', 'height=170', 'age=68', 've=10', 'tmax=38'];
  assert.match(work(...args).stdout, /E16 .*from memory/);
  const { sources } = json(...args);
  assert.equal(sources.find((one: { id: string }) => one.id === 'E16').provenance, 'from-memory');
});

/** What is said, and what helps. */
const REFUSALS: readonly (readonly [why: string, args: readonly string[], says: RegExp])[] = [
  ['an unknown calculation', ['raet'], /no calculation “raet”\. Did you mean rate\?/],
  [
    'an unknown key',
    ['rate', 'volum=5', 'hours=2'],
    /work rate: volum: not an input.*Did you mean volumeMl\?/,
  ],
  ['nothing given', ['rate'], /volumeMl: missing\. Give it in mL, from 0\.1 to 20000.*\n.*hours: missing/],
  [
    'outside its band',
    ['rate', 'volume=500', 'hours=30'],
    /hours: “30” is outside 0\.1 to 25 h .*Check the number/,
  ],
  [
    'a band in another unit',
    ['rate', 'volume=500 L', 'hours=3'],
    /volumeMl: “500 L” is 500000 mL, which is outside 0\.1 to 20000 mL/,
  ],
  [
    'two readings',
    ['rate', 'volume=1,500', 'hours=24'],
    /volumeMl: “1,500” can be read in more than one way/,
  ],
  ['an unknown unit', ['rate', 'volume=5 parsec', 'hours=24'], /“parsec”\. Write it in mL, L, cc, oz/],
  [
    'another kind of unit',
    ['rate', 'volume=5 kg', 'hours=24'],
    /“5 kg” is in “kg”, which measures something else/,
  ],
  ['no key', ['rate', '500mL'], /“500mL” is not KEY=VALUE/],
  [
    'a choice that is none',
    ['mifflin-st-jeor', 'sex=x', 'weight=70', 'height=170', 'age=40'],
    /“x” is not one of the choices\. One of: male, female/,
  ],
  ['twice', ['rate', 'volume=5', 'volume=6', 'hours=2'], /given more than once/],
  ['alternatives', ['dilution', 'strength=1/2'], /not enough was given\. Give totalMl, or formulaMl/],
];

test('[RK4] every refusal ends with 2, names field, value and remedy on the error stream, and answers nothing', () => {
  for (const [why, args, says] of REFUSALS) {
    const { status, stdout, stderr } = work(...args, '--json');
    assert.equal(status, 2, why);
    assert.equal(stdout, '', why);
    assert.match(stderr, says, why);
  }
});

test('[RK13] a list is one value with semicolons, or the key again', () => {
  assert.equal(json('intake-output', 'oral=120; 180', 'iv=100').result.intakeMl, 400);
  assert.equal(json('intake-output', 'oral=120', 'oral=180', 'iv=100').result.intakeMl, 400);
});

test('[RK1] --about says what a calculation asks for', () => {
  const { status, stdout } = work('catch-up', '--about');
  assert.equal(status, 0);
  assert.match(stdout, /ceilingMlPerHour .*may be left out/);
  assert.match(stdout, /feedwright work catch-up goal="1800 mL"/);
  assert.equal(json('catch-up', '--about').name, 'catch-up');
});

const ALONE = `
  import { Command } from 'commander';
  import { addWork } from ${JSON.stringify(join(import.meta.dirname, '../src/work.ts'))};
  const root = new Command('feedwright');
  addWork(root);
  await root.parseAsync(process.argv.slice(1), { from: 'user' });
`;

test('[RK4] the verb, its flags and its ending, in a process of its own', () => {
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['--input-type=module', '-e', ALONE, '--', 'work', ...args], {
      encoding: 'utf8',
      cwd: join(import.meta.dirname, '..'),
    });
  const good = run('rate', 'volume=0.5 L', 'hours=8', '--json');
  assert.equal(good.status, 0, good.stderr);
  assert.equal(JSON.parse(good.stdout).result.rateMlPerHour, 63);
  const bad = run('rate', 'volume=-5', 'hours=8', '--json');
  assert.deepEqual([bad.status, bad.stdout], [2, '']);
  assert.match(bad.stderr, /“-5” is less than nothing/);
});
