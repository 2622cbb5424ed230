/**
 * What is a calculation?
 * One declaration: what it asks for (with the unit in the key, the band in which it holds and why), what it gives, its
 * equations in symbols, where they are printed, which conventions are in print, an example, and the sum itself. The
 * list of calculations, the command line and the page in docs are all made from these declarations.
 */
import type { Rounding } from '../base/fraction.ts';
import type { Bad, Issue, Result } from '../base/result.ts';
import type { Basis, Shown, Working } from '../base/working.ts';
import type { Raw, Reading } from './asking/quantity-input.ts';
import type { Conventions, Unit } from './asking/units.ts';
import type { Exact } from './exact.ts';
import type { SourceId } from './sources.ts';

/** An amount that has a symbol, a UCUM unit and an origin: an input, a printed constant, or a result worked on from. */
export type Known = Exact & { readonly symbol: string; readonly unit: string; readonly basis: Basis };

/** Why a band ends where it does: a code, put into words at the edge. */
export type Because = 'slip' | 'definition' | 'equation' | 'print';

export type Band = { readonly least: Exact; readonly most: Exact; readonly because: Because };

export type AskKind =
  | 'quantity'
  | 'quantities'
  | 'choice'
  | 'switch'
  | 'moment'
  | 'zone'
  | 'entries'
  | 'concentration';

export type Ask<V> = {
  readonly kind: AskKind;
  readonly symbol: string;
  readonly unit: string;
  /** Other names under which it is known: `rate` for `rateMlPerHour`. */
  readonly also: readonly string[];
  readonly band: Band | null;
  readonly choices: readonly string[];
  readonly required: boolean;
  /** What is taken when nothing is said. Where `others` are in print too, that is a convention, and is said. */
  readonly assumed: string | null;
  readonly others: readonly string[];
  /** Whether a unit that a key carries is one of this input's. */
  readonly takes: (unit: Unit) => boolean;
  readonly read: (raw: readonly Raw[], reading: Reading, note: (by: 'ounce' | 'pound') => void) => Result<V>;
  /** As understood, to be shown back. */
  readonly show: (value: V) => Shown;
};

// biome-ignore lint/suspicious/noExplicitAny: an ask of any value; `Given` gives each its type back
export type Asks = Readonly<Record<string, Ask<any>>>;
export type Given<A extends Asks> = { readonly [K in keyof A]: A[K] extends Ask<infer V> ? V : never };

export type Give = {
  readonly symbol: string;
  /** UCUM, or empty for a choice or a moment. */
  readonly unit: string;
  /** Rounded to this when shown, unless asked otherwise. */
  readonly step: Exact;
  readonly way: Rounding;
  /** A ceiling rounds down (a least amount up) whatever was asked. */
  readonly fixed: boolean;
};
export type Gives = Readonly<Record<string, Give>>;

export type Line = {
  readonly key: string;
  readonly shown: Shown;
  /** Before rounding; null for a choice or a moment. */
  readonly exact: Exact | null;
  readonly working: Working;
};
export type NumberLine = Line & Known;

/** What a calculation writes its results on. */
export type Sheet<K extends string> = {
  readonly number: (
    key: K,
    equation: string,
    from: readonly Known[],
    value: Exact,
    source?: SourceId | 'arithmetic',
  ) => NumberLine;
  readonly choice: (
    key: K,
    equation: string,
    from: readonly Known[],
    code: string,
    source?: SourceId,
  ) => Line;
  readonly shown: (key: K, equation: string, from: readonly Known[], is: Shown, source?: SourceId) => Line;
  /** The result as it is shown, to be worked on from: what is really programmed, poured or given. */
  readonly rounded: (line: NumberLine) => Known;
  /** A constant that is printed in a source. */
  readonly printed: (symbol: string, value: Exact, unit: string, source?: SourceId) => Known;
  readonly conventions: Conventions;
  /** Says that an ounce or a pound was used. */
  readonly note: (by: 'ounce' | 'pound') => void;
  /** The ounce and the pound of the convention in use; using one says so. */
  readonly ounce: () => Known;
  readonly pound: () => Known;
  /** What was given does not hold together: a code at one of the inputs. */
  readonly refuse: (key: string, code: string, data?: Issue['data']) => Bad;
  readonly caution: (code: string) => void;
  /** Says which convention was used where the choice was the calculation's own. */
  readonly used: (convention: string, value: string, others: readonly string[]) => void;
};

export type Declaration<A extends Asks, G extends Gives> = {
  readonly name: string;
  readonly also: readonly string[];
  readonly asks: A;
  /** Exactly one alternative of each group is given in full. */
  readonly oneOf: readonly (readonly (readonly string[])[])[];
  readonly gives: G;
  readonly equations: readonly string[];
  /** The first is where the equation is printed; further ones are named by the lines that rest on them. */
  readonly sources: readonly SourceId[];
  readonly rule: string;
  readonly example: Readonly<Record<string, string>>;
  readonly cautions: readonly string[];
  readonly compute: (given: Given<A>, sheet: Sheet<keyof G & string>) => readonly Line[] | Bad;
};

export type Calculation = Declaration<Asks, Gives>;

type Written<A extends Asks, G extends Gives> = Omit<Declaration<A, G>, 'also' | 'oneOf' | 'cautions'> &
  Partial<Pick<Declaration<A, G>, 'also' | 'oneOf' | 'cautions'>>;

/** Declares a calculation; its `compute` sees each input with its own type. */
export const calculation = <const A extends Asks, const G extends Gives>(
  written: Written<A, G>,
): Calculation => ({ also: [], oneOf: [], cautions: [], ...written }) as unknown as Calculation;
