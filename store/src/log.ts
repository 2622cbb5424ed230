/**
 * How is a ledger kept? The port: append a batch once and for good, read a course or a ward from a position on, follow
 * what comes. A log keeps the bytes of an entry as they were received and never looks inside them.
 */

/** What is handed in: the entry's text, and the three names by which it is found again. */
export type Submitted = {
  readonly id: string;
  readonly course: string;
  readonly ward: string;
  /** The entry's JSON text, to the byte as it was received. */
  readonly text: string;
};

/** An entry as the log holds it. Positions count up over the whole log from 1, without gaps, in the order accepted. */
export type Stored = Submitted & {
  readonly position: number;
  /** The head of the course's chain once this entry is in it, in hexadecimal. */
  readonly head: string;
};

/** What the log answers for each entry: where it stands, and whether it had been there before. */
export type Acknowledged = {
  readonly id: string;
  readonly position: number;
  readonly head: string;
  readonly duplicate: boolean;
};

/** A course's chain: how many entries, the last one's position, and the head that commits to all of them. */
export type Head = {
  readonly course: string;
  readonly count: number;
  readonly position: number;
  readonly head: string;
};

/** A saved standing of a course: opaque text, true of its first `count` entries, made by the release `version`. */
export type Checkpoint = {
  readonly course: string;
  readonly count: number;
  readonly position: number;
  readonly version: string;
  readonly text: string;
};

export type LogErrorCode =
  | 'log/id-conflict'
  | 'log/malformed'
  | 'log/in-use'
  | 'log/disk-full'
  | 'log/read-only'
  | 'log/corrupt'
  | 'log/newer-version'
  | 'log/not-a-log'
  | 'log/closed';

/** The handful of things that can go wrong with keeping; caught once at the app's edge. Nothing was acknowledged. */
export class LogError extends Error {
  readonly code: LogErrorCode;
  readonly data: Readonly<Record<string, unknown>>;
  constructor(code: LogErrorCode, data: Readonly<Record<string, unknown>> = {}) {
    super(`${code} ${JSON.stringify(data)}`);
    this.code = code;
    this.data = data;
  }
}

export type ReadFrom = { readonly after?: number; readonly most?: number };

export interface Log {
  /** Names this history: positions of one epoch mean nothing in another. A restored log has a new one. */
  readonly epoch: string;
  /**
   * Keeps a batch, all of it or none. An id that is there already with the same text is acknowledged as a duplicate; with
   * another text the whole batch is refused with `log/id-conflict`. Resolves when every entry is durable.
   */
  append(batch: readonly Submitted[]): Promise<readonly Acknowledged[]>;
  /** A course's entries after a position, in the order accepted. */
  course(course: string, from?: ReadFrom): readonly Stored[];
  /** A ward's entries after a position: those that were accepted under it. */
  ward(ward: string, from?: ReadFrom): readonly Stored[];
  /** Everything after a position, in order; for export and for followers that catch up. */
  all(from?: ReadFrom): readonly Stored[];
  heads(): readonly Head[];
  head(course: string): Head | null;
  /** Calls back with each batch once it is durable, in order; returns how to stop. */
  follow(listener: (entries: readonly Stored[]) => void): () => void;
  saveCheckpoint(checkpoint: Checkpoint): void;
  checkpoint(course: string): Checkpoint | null;
  close(): void;
}
