/**
 * How does a function say that what it was given will not do?
 * Malformed input comes back as issues: a code with data, never a sentence. Words live in `screen/`.
 */
export type Issue = {
  /** Where in the document, outermost first: `['regimen', 'rateMlPerHour']`. */
  readonly path: readonly (string | number)[];
  /** What is wrong, as `family/what`: `number/grouped`, `order/unknown-field`. */
  readonly code: string;
  readonly data: Readonly<Record<string, unknown>>;
};

export type Ok<T> = { readonly ok: true; readonly value: T };
export type Bad = { readonly ok: false; readonly issues: readonly Issue[] };
export type Result<T> = Ok<T> | Bad;

export const ok = <T>(value: T): Ok<T> => ({ ok: true, value });

export const bad = (...issues: readonly Issue[]): Bad => ({ ok: false, issues });

export const issue = (
  path: Issue['path'],
  code: string,
  data: Readonly<Record<string, unknown>> = {},
): Issue => ({ path, code, data });

/** The same issues, as seen from one level further out. */
export const under = (step: string | number, result: Bad): Bad => ({
  ok: false,
  issues: result.issues.map((one) => ({ ...one, path: [step, ...one.path] })),
});

/** For what only a bug can bring about: stops the program with a name that can be searched for. */
export function impossible(what: never | string): never {
  throw new Error(`impossible: ${String(what)}`);
}
