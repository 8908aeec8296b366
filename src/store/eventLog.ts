import type { EventId, Id, LogEvent, Problem, SITE } from '../core/index.ts';

/** How far a reader has come in the order of arrival; 0 is the beginning. */
export type Cursor = number;

/** What became of a batch. */
export interface Appended {
  /** How many were new and are now stored for good. */
  readonly stored: number;
  /** How many were here already, letter for letter. */
  readonly known: number;
  /** Same id, other content: both are kept, the newcomer is parked. */
  readonly clashes: readonly EventId[];
}

/** Some events in the order in which they arrived here. */
export interface Page {
  readonly events: readonly LogEvent[];
  readonly next: Cursor;
  readonly head: Cursor;
}

/** A failed write: the log is as it was before, nothing of the batch is stored. */
export class LogFailure extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(`${problem.message} ${problem.remedy}`);
    this.name = 'LogFailure';
    this.problem = problem;
  }
}

/**
 * An append-only log of events. Invariants, held by every store and tested by one suite:
 * a resolved `append` is durable; a batch is stored whole or not at all; the same event twice is stored once;
 * same id with other content is kept apart and reported; arrival order never changes; nothing is ever removed.
 * A full or broken device rejects with {@link LogFailure} (`storage-full`, `storage-failed`).
 */
export interface EventLog {
  append(events: readonly LogEvent[]): Promise<Appended>;
  /** At most `limit` events after the cursor. */
  read(after: Cursor, limit: number): Promise<Page>;
  /** All events of one subject, or of the site itself, and the slips that correct them, in no particular order. */
  history(subject: Id | typeof SITE): Promise<readonly LogEvent[]>;
  /** The newcomers whose id was taken by other content. */
  parked(): Promise<readonly LogEvent[]>;
  head(): Promise<Cursor>;
  close(): Promise<void>;
}
