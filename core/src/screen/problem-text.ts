/**
 * How is a problem said? What is wrong with which value, and what to do: never blame, never "error".
 */
import type { Issue } from '../base/result.ts';
import type { Problem } from '../order/order.ts';
import type { Data, Sentence, Words } from './words.ts';

/** A code that has no words yet still says everything it knows, so that nothing is hidden from the reader. */
const bare = (code: string, data: Data): Sentence => ({
  says: `${code}${Object.keys(data).length === 0 ? '' : ` ${JSON.stringify(data)}`}`,
  remedy: '',
});

export const problemSays = (problem: Problem, words: Words): Sentence =>
  words.problems[problem.code]?.({ ...problem.data, path: problem.path.join('.') }) ??
  bare(problem.code, problem.data);

/** `regimen.rateMlPerHour: 1,500 can be read as 1.5 or 1500. Write 1.50 or 1500.` */
export function issueSays(issue: Issue, words: Words): Sentence & { readonly field: string } {
  const sentence = words.issues[issue.code]?.(issue.data) ?? bare(issue.code, issue.data);
  return { ...sentence, field: issue.path.join('.') };
}
