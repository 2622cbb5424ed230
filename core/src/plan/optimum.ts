/**
 * When should somebody come, and which container should be put up when?
 */
import { impossible } from '../base/result.ts';
import type { Optimum, OptimumProblem } from './optimum-problem.ts';

/**
 * The one plan with the fewest containers started; then the fewest visits; then the least total deviation from nominal;
 * then the least waste; then the earliest visits. Planning again with the same end after doing the plan so far gives
 * the rest of it.
 */
export function optimum(problem: OptimumProblem): Optimum {
  return impossible(`not yet: ${problem.slots}`);
}
