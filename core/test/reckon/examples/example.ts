/**
 * What does a printed example say, and what must come out? Facts from print in our own words: the source is a number of
 * section “Worked examples” in docs/sources.md.
 */
import type { ExampleSource } from '@feedwright/core/reckon/printed-examples';

export type Run = {
  readonly work: string;
  readonly given: Readonly<Record<string, string>>;
  /** As printed, at the rounding that the source uses (`given.round` where it is not the usual one). */
  readonly shows?: Readonly<Record<string, number | string>>;
  /** Before rounding, to six decimals. */
  readonly exact?: Readonly<Record<string, number>>;
};

export type Example = {
  readonly id: string;
  readonly source: ExampleSource;
  /** `printed`: the answer stands in the source. `own`: rule from the source, numbers our own, or answer not printed. */
  readonly kind: 'printed' | 'own';
  readonly runs: readonly Run[];
  /** An input that the source does not print, or how it rounds. */
  readonly note?: string;
};

/** A wrong printed answer: what is printed, what is right, and what went wrong. */
export type Trap = {
  readonly id: string;
  readonly source: ExampleSource;
  readonly run: Run;
  readonly printed: Readonly<Record<string, number>>;
  readonly because: string;
};
