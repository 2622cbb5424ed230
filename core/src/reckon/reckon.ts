/**
 * What does this calculation give for these inputs, and how?
 * Reads what was asked in people's units, holds each input to its band, works the sum, and rounds only what is shown.
 * Nothing that is put in makes it throw: what will not do comes back as issues, all of them at once.
 */
import { bad, type Issue, issue, ok, type Result, under } from '../base/result.ts';
import type { Shown, Working } from '../base/working.ts';
import { type Given, type Inputs, match } from './asking/keys.ts';
import { type Asked, readOptions } from './asking/options.ts';
import { acceptedFor, type Raw, type Reading } from './asking/quantity-input.ts';
import type { Ask, Calculation, Line, Given as Values } from './declare.ts';
import { decimalText, type Exact } from './exact.ts';
import { type Extra, sheetFor, type Used } from './sheet.ts';

export type Reckoned = {
  readonly name: string;
  /** Rounded as the working says: what to read, pour, programme. */
  readonly result: Readonly<Record<string, Shown>>;
  /** The numbers before rounding. */
  readonly unrounded: Readonly<Record<string, Exact>>;
  readonly working: readonly Working[];
  readonly conventions: readonly Used[];
  /** Codes, to be put into words at the edge. */
  readonly cautions: readonly string[];
  /** How each input was understood, assumed ones too. */
  readonly understood: Readonly<Record<string, Shown>>;
};

const missing = (key: string, ask: Ask<unknown>): Issue =>
  issue([key], 'reckon/missing', {
    unit: ask.unit,
    accepted: ask.unit === '' ? ask.choices : acceptedFor(ask.unit),
    ...(ask.band === null ? {} : { least: decimalText(ask.band.least), most: decimalText(ask.band.most) }),
  });

type Taken = {
  readonly values: Record<string, unknown>;
  readonly conventions: Used[];
  readonly understood: Record<string, Shown>;
};

/** Reads every input the calculation asks for. */
function take(
  calculation: Calculation,
  given: ReadonlyMap<string, Given>,
  asked: Asked,
  issues: Issue[],
  extra: Extra,
): Taken {
  const taken: Taken = { values: {}, conventions: [], understood: {} };
  for (const [key, ask] of Object.entries(calculation.asks)) {
    const found = given.get(key);
    const raw = found?.raw ?? (ask.assumed === null ? null : [ask.assumed]);
    taken.values[key] = null;
    if (raw === null) {
      if (ask.required) issues.push(missing(key, ask));
      continue;
    }
    const reading: Reading = {
      conventions: asked.conventions,
      ...(found?.unit === undefined ? {} : { unitOfKey: found.unit }),
    };
    const value = ask.read(raw, reading, (by) => extra.by.add(by));
    if (!value.ok) {
      issues.push(...under(key, value).issues.map((one) => withValue(one, raw)));
      continue;
    }
    taken.values[key] = value.value;
    const shown = ask.show(value.value);
    taken.understood[key] = shown;
    if (ask.others.length > 0) taken.conventions.push(used(key, ask, shown, found !== undefined));
  }
  return taken;
}

const withValue = (one: Issue, raw: readonly Raw[]): Issue => ({
  ...one,
  data: {
    given: raw.map((it) => (typeof it === 'object' ? `${it.n}/${it.d}` : String(it))).join('; '),
    ...one.data,
  },
});

function used(key: string, ask: Ask<unknown>, shown: Shown, isAsked: boolean): Used {
  const text = shown.kind === 'choice' ? shown.code : shown.kind === 'quantity' ? decimalOf(shown) : '';
  const all = [ask.assumed ?? '', ...ask.others];
  return { convention: key, used: text, others: all.filter((other) => other !== text), asked: isAsked };
}

const decimalOf = (shown: Shown & { kind: 'quantity' }): string =>
  decimalText({ n: BigInt(shown.value.n), d: BigInt(shown.value.d) });

/** Exactly one alternative of each group must be there in full. */
function alternatives(calculation: Calculation, values: Readonly<Record<string, unknown>>): Issue[] {
  return calculation.oneOf.flatMap((group) => {
    const full = group.filter((keys) => keys.every((key) => values[key] !== null));
    // An alternative that is part of a longer one that is there too is not a second answer.
    const answers = full.filter(
      (keys) => !full.some((other) => other.length > keys.length && keys.every((key) => other.includes(key))),
    );
    if (answers.length === 1) return [];
    const code = answers.length === 0 ? 'reckon/one-of' : 'reckon/only-one-of';
    return [issue([group[0]?.[0] ?? ''], code, { alternatives: group.map((keys) => keys.join(' + ')) })];
  });
}

const NAMED: Readonly<Record<'ounce' | 'pound', (asked: Asked) => readonly [used: Exact, other: Exact]>> = {
  ounce: (asked) => [asked.conventions.ounceMl, asked.otherOunce],
  pound: (asked) => [asked.conventions.poundKg, asked.otherPound],
};
const MOST_PLACES = 10;

const namedUnits = (asked: Asked, by: Iterable<'ounce' | 'pound'>): readonly Used[] =>
  [...by].map((convention) => {
    const [used, other] = NAMED[convention](asked);
    return {
      convention,
      used: decimalText(used, MOST_PLACES),
      others: [decimalText(other, MOST_PLACES)],
      asked: asked.named.has(convention),
    };
  });

function finish(
  calculation: Calculation,
  lines: readonly Line[],
  taken: Taken,
  asked: Asked,
  extra: Extra,
): Reckoned {
  const numbers = lines.flatMap((line) => (line.exact === null ? [] : [[line.key, line.exact] as const]));
  return {
    name: calculation.name,
    result: Object.fromEntries(lines.map((line) => [line.key, line.shown])),
    unrounded: Object.fromEntries(numbers),
    working: lines.map((line) => line.working),
    conventions: [...taken.conventions, ...extra.conventions, ...namedUnits(asked, extra.by)],
    cautions: [...calculation.cautions, ...extra.cautions],
    understood: taken.understood,
  };
}

/**
 * Works a calculation.
 * @param inputs keys of the calculation (or their other names, with a unit behind them if need be); `round`, `ounce`
 * and `pound` may be asked of any. A number or fraction is in the unit of its key.
 * @returns the result with its working, or every issue: a path with the key, a code, and data with value and remedy.
 */
export function reckon(calculation: Calculation, inputs: Inputs): Result<Reckoned> {
  const options = readOptions(inputs);
  if (!options.ok) return options;
  const asked = options.value;
  const { given, issues } = match(calculation, inputs, asked.conventions);
  const extra: Extra = { cautions: [], conventions: [], by: new Set() };
  const taken = take(calculation, given, asked, issues, extra);
  if (issues.length === 0) issues.push(...alternatives(calculation, taken.values));
  if (issues.length > 0) return bad(...issues);
  const lines = calculation.compute(
    taken.values as Values<typeof calculation.asks>,
    sheetFor(calculation, asked, extra),
  );
  return 'ok' in lines ? lines : ok(finish(calculation, lines, taken, asked, extra));
}
