/**
 * What has been read of a document so far, what was wrong with it, and what did a person answer?
 * One reading goes through every file in this folder. Each problem is a stop, an ask or a note; one that a person can
 * settle names the key that does so (`data.confirm`), and once it is answered it stays in sight as a note.
 */
import type { Problem } from '@feedwright/core/order/order';
import { ANSWERS, type AnswerKey, type Answers } from '../answers.ts';

export type Path = readonly (string | number)[];
export type Data = Readonly<Record<string, unknown>>;

export type Reading = {
  readonly answers: Answers;
  /** The answers as they were typed, to be shown back. */
  readonly given: Readonly<Record<string, string>>;
  readonly problems: Problem[];
  /** The elements that were understood, by their path. */
  readonly read: Set<string>;
  /** What those stand in. */
  readonly touched: Set<string>;
  /** The answers that settled something. */
  readonly used: Set<AnswerKey>;
};

/** Where in the document something stands. */
export type Place = { readonly reading: Reading; readonly path: Path };

/** `enteralFormula.administration[0].rateQuantity` */
export const pathText = (path: Path): string =>
  path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step}]` : text === '' ? step : `${text}.${step}`),
    '',
  );

export const within = (place: Place, ...steps: Path): Place => ({
  reading: place.reading,
  path: [...place.path, ...steps],
});

const raise = ({ reading, path }: Place, level: Problem['level'], rule: string, code: string, data: Data) =>
  void reading.problems.push({ rule, level, code, path, data });

export const stop = (place: Place, rule: string, code: string, data: Data = {}): void =>
  raise(place, 'stop', rule, code, data);

export const note = (place: Place, rule: string, code: string, data: Data = {}): void =>
  raise(place, 'note', rule, code, data);

/** What a person answered under a key, marked as used; null where nothing was answered. */
export function answered<K extends AnswerKey>({ reading }: Place, key: K): NonNullable<Answers[K]> | null {
  const value = reading.answers[key];
  if (value === undefined) return null;
  reading.used.add(key);
  return value as NonNullable<Answers[K]>;
}

/**
 * A person's answer in the place of what is written or follows from it; the two stand side by side on record.
 * @param same whether the answer says what is there already.
 */
export function answeredInstead<K extends AnswerKey>(
  place: Place,
  key: K,
  written: string,
  same: (answer: NonNullable<Answers[K]>) => boolean,
): NonNullable<Answers[K]> | null {
  const answer = answered(place, key);
  if (answer !== null && !same(answer)) {
    note(place, 'FH21', 'answer/instead', { key, written, answer: place.reading.given[key] });
  }
  return answer;
}

function question<K extends AnswerKey>(
  level: 'ask' | 'stop',
  place: Place,
  [rule, code, key]: readonly [rule: string, code: string, key: K],
  data: Data,
): NonNullable<Answers[K]> | null {
  const answer = answered(place, key);
  const asked = { ...data, confirm: key, answerKind: ANSWERS[key].kind, example: ANSWERS[key].example };
  if (answer === null) {
    raise(place, level, rule, code, asked);
    return null;
  }
  const { reading, path } = place;
  const by = reading.answers.by;
  reading.problems.push({
    rule,
    level: 'note',
    code,
    path,
    data: { ...asked, answer: reading.given[key] },
    ...(by === undefined ? {} : { confirmedBy: by }),
  });
  return answer;
}

/**
 * Asks what a named person has to say or confirm: what the order leaves open, and what is in doubt.
 * @returns the answer, or null while there is none. Either way the question is on record.
 */
export const ask = <K extends AnswerKey>(
  place: Place,
  rule: string,
  code: string,
  key: K,
  data: Data = {},
): NonNullable<Answers[K]> | null => question('ask', place, [rule, code, key], data);

/** As `ask`, for what contradicts itself so badly that it is no order until somebody has said what is meant. */
export const stopUntil = <K extends AnswerKey>(
  place: Place,
  rule: string,
  code: string,
  key: K,
  data: Data = {},
): NonNullable<Answers[K]> | null => question('stop', place, [rule, code, key], data);
