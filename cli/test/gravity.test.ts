/** Can it be asked on the command line, under both names, and is it refused as everything else is? */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { feedwright } from './run.ts';

const ASKED = [
  'age=70',
  'tip=gastric',
  'french=12',
  'material=polyurethane',
  'length=110cm',
  'feed=1.5',
  'height=45cm',
];

test('[GR9] feedwright gravity and work gravity are the same, with band and policy', () => {
  const [own, work] = [
    feedwright(['gravity', ...ASKED, 'feedMl=240']),
    feedwright(['work', 'gravity', ...ASKED, 'feedMl=240']),
  ];
  assert.equal(own.code, 0, own.err);
  assert.equal(own.out, work.out);
  assert.match(own.out, /about \d+ \([\d.]+ to \d+\) mL\/min/);
  assert.match(own.out, /15 min or longer \(local policy/);
});

test('[GR9] a minor has no least time by default, and that is said', () => {
  const asked = feedwright(['gravity', ...ASKED.slice(1), 'age=6', 'feedMl=100']);
  assert.match(asked.out, /not set for this patient/);
});

test('[GR9] as JSON: numbers, codes and a curve of three lines', () => {
  const { code, out } = feedwright(['work', 'gravity', ...ASKED, '--json']);
  assert.equal(code, 0);
  const { flow, curve, assumptions } = JSON.parse(out);
  assert.ok(flow.low < flow.mid && flow.mid < flow.high);
  assert.equal(curve.mid.at(-1).mL, 0);
  assert.ok(assumptions.length > 3);
});

test('[GR6] what is missing or not offered is refused by name, with exit code 2', () => {
  const missing = feedwright(['gravity', ...ASKED.slice(0, 6)]);
  assert.equal(missing.code, 2);
  assert.match(missing.err, /heightCm: missing/);
  const newborn = feedwright(['gravity', ...ASKED.slice(1), 'age=3d']);
  assert.equal(newborn.code, 2);
  assert.match(newborn.err, /not offered for the newborn/);
  assert.equal(newborn.out, '');
});

test('[GR9] what it asks for is listed', () => {
  assert.match(feedwright(['work', 'gravity', '--about']).out, /heightCm +needed +0–200/);
  assert.match(feedwright(['work']).out, /^gravity: /m);
});
