/** The golden cases of core/cases: worked by hand from the rules, on a page that a nurse can read. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { planFor } from '@feedwright/core/plan/plan-for';
import { type Case, readCases } from './case-file.ts';
import { holds, tell, WHOLE } from './case-tell.ts';

const CASES = readCases();

function check({ request, expected }: Case): void {
  const told = tell(planFor(request), request.order.zone);
  for (const word of WHOLE) {
    const wanted = expected.filter((line) => line.startsWith(`${word} `));
    if (wanted.length === 0) continue;
    const found = told.filter((line) => line.startsWith(`${word} `));
    assert.deepEqual(found, wanted, `expected:\n${wanted.join('\n')}\nin:\n${told.join('\n')}`);
  }
  for (const line of expected) {
    if (WHOLE.some((word) => line.startsWith(`${word} `))) continue;
    if (line.startsWith('never ')) {
      const kind = line.slice('never '.length);
      assert.ok(
        !told.some((one) => one.startsWith('at ') && one.includes(kind)),
        `${line}\nin:\n${told.join('\n')}`,
      );
      continue;
    }
    const found = line.startsWith('at ') ? told.some((one) => holds(one, line)) : told.includes(line);
    assert.ok(found, `expected: ${line}\nin:\n${told.join('\n')}`);
  }
}

for (const one of CASES) test(one.title, () => check(one));

test('[PL49] there are at least thirty cases, and each expects something', () => {
  assert.ok(CASES.length >= 30, `${CASES.length}`);
  assert.ok(CASES.every((one) => one.expected.length > 0));
  assert.equal(new Set(CASES.map((one) => one.title)).size, CASES.length);
});

/** Printed by a process of its own, so that the host's zone can be another. */
if (process.env.FEEDWRIGHT_TELL_CASES === '1') {
  for (const { title, request } of CASES) {
    process.stderr.write(`${title}\n${tell(planFor(request), request.order.zone).join('\n')}\n`);
  }
} else {
  test('[PL49] the cases come out the same wherever the machine is', () => {
    const toldIn = (zone: string): string => {
      const env = { ...process.env, TZ: zone, FEEDWRIGHT_TELL_CASES: '1' };
      return spawnSync(process.execPath, [fileURLToPath(import.meta.url)], { env, encoding: 'utf8' }).stderr;
    };
    const [home, far] = ['America/St_Johns', 'Pacific/Auckland'].map(toldIn);
    const here = CASES.map(
      ({ title, request }) => `${title}\n${tell(planFor(request), request.order.zone).join('\n')}\n`,
    ).join('');
    assert.equal(home, here);
    assert.equal(far, here);
  });
}
