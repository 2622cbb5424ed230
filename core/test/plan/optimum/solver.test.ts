import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { optimum } from '../../../src/plan/optimum/optimum.ts';
import { runs } from '../../runs.ts';
import { solve } from './oracle.ts';
import { anyStory, problemOf } from './story.ts';

// HiGHS, an open solver for integer programmes, in successive stages with zero gap: see oracle.ts.
test('[PL1] costs what an integer programme costs, stage by stage, and is impossible only where that is', () => {
  const counts = { feasible: 0, infeasible: 0 };
  fc.assert(
    fc.property(anyStory({ slots: 40, tasks: 10 }), (story) => {
      const found = optimum(problemOf(story));
      const solved = solve(story);
      assert.equal(found.obstacles.length === 0, solved !== null);
      counts[solved === null ? 'infeasible' : 'feasible']++;
      if (solved !== null) assert.deepEqual(found.cost, solved);
    }),
    runs(400),
  );
  assert.ok(counts.feasible > 10 && counts.infeasible > 2, JSON.stringify(counts));
});
