/**
 * How does the command line refuse? One message that names file, field, value and remedy, on the error stream; exit
 * code 2; nothing on the output. All refusals go through `Refused`, caught once in `main.ts`.
 */
import type { Bad, Issue, Result } from '@feedwright/core/base/result';
import { issue } from '@feedwright/core/base/result';
import { issueSays } from '@feedwright/core/screen/problem-text';
import type { Words } from '@feedwright/core/screen/words';

export const BAD_INPUT = 2;
export const STOPPED = 1;

/** Bad input, with the file or flag that it came from. */
export class Refused extends Error {
  readonly from: string;
  readonly issues: readonly Issue[];
  constructor(from: string, issues: readonly Issue[]) {
    super(from);
    this.from = from;
    this.issues = issues;
  }
}

export const refuse = (from: string, code: string, data: Issue['data'] = {}): never => {
  throw new Refused(from, [issue([], code, data)]);
};

/** The value, or a refusal that names where it came from. */
export function orRefuse<T>(result: Result<T>, from: string): T {
  if (result.ok) return result.value;
  throw new Refused(from, (result as Bad).issues);
}

const MOST_SHOWN = 12;

/** `order.json: regimen.rateMlPerHour: “1,500” can be read in more than one way. Write 1.50 or 1500.` */
export function refusalLines({ from, issues }: Refused, words: Words): readonly string[] {
  const lines = issues.slice(0, MOST_SHOWN).map((one) => {
    const { field, says, remedy } = issueSays(one, words);
    return [from, ...(field === '' ? [] : [field]), `${says}.${remedy === '' ? '' : ` ${remedy}`}`].join(
      ': ',
    );
  });
  const more = issues.length - lines.length;
  return more > 0 ? [...lines, `${from}: … ${more} more`] : lines;
}
