/** How does a list of problems read? Level, rule, what is wrong, what to do, and with which key it is confirmed. */
import type { Problem } from '../order/order.ts';
import { type Line, line } from './line.ts';
import { problemSays } from './problem-text.ts';
import type { Words } from './words.ts';

function confirmText(problem: Problem, words: Words): string {
  if (problem.confirmedBy !== undefined) return ` [${words.plan.confirmedBy(problem.confirmedBy)}]`;
  const key = problem.data.confirm;
  return problem.level !== 'note' && typeof key === 'string' ? ` [${words.plan.confirm(key)}]` : '';
}

export const problemLines = (problems: readonly Problem[], words: Words): readonly Line[] =>
  problems.map((problem) => {
    const { says, remedy } = problemSays(problem, words);
    const said = `${words.levels[problem.level]}  ${problem.rule}  ${says} ${remedy}`.trimEnd();
    return line(said + confirmText(problem, words), problem.level);
  });
