import type { EventId, LogEvent } from '../../core/index.ts';
import type { Cursor } from '../eventLog.ts';
import { type Entry, readLine } from '../line.ts';
import type { State } from './schema.ts';
import type { Reading, Writing } from './transact.ts';

/** A line of the tail with its place in the order; `event` is missing when the line rotted on the disk. */
export interface TailEntry {
  readonly number: Cursor;
  readonly line: string;
  readonly event?: LogEvent;
}

/**
 * What this tab has read of the tail. Other tabs write too, so every transaction catches up first; only what is
 * committed is ever read into it, so an aborted writing leaves it true.
 */
export class Tail {
  #floor: Cursor = 0;
  #entries: TailEntry[] = [];
  readonly #byId = new Map<EventId, TailEntry>();

  /** Reads what came since, and forgets what was packed away. */
  async catchUp(tx: Reading, { floor, head }: State): Promise<void> {
    if (floor !== this.#floor) this.#forget(floor);
    if (this.#known() >= head) return;
    const batches = await tx.objectStore('tail').getAll(IDBKeyRange.lowerBound(this.#known(), true));
    for (const { first, text } of batches) {
      // Two readings may catch up side by side; whichever comes second finds the batch here already.
      if (first !== this.#known() + 1) continue;
      text.split('\n').forEach((line, at) => {
        this.#add(first + at, line);
      });
    }
  }

  /** The lines after one arrival, at most `limit` of them. */
  after(cursor: Cursor, limit: number): readonly TailEntry[] {
    const from = Math.max(cursor - this.#floor, 0);
    return this.#entries.slice(from, from + limit);
  }

  /** All lines. */
  all(): readonly TailEntry[] {
    return this.#entries;
  }

  find(id: EventId): TailEntry | undefined {
    return this.#byId.get(id);
  }

  #known(): Cursor {
    return this.#floor + this.#entries.length;
  }

  #add(number: Cursor, line: string): void {
    const read = readLine(line);
    const entry = read.ok ? { number, line, event: read.value } : { number, line };
    this.#entries.push(entry);
    if (read.ok) this.#byId.set(read.value.id, entry);
  }

  #forget(floor: Cursor): void {
    const packed = this.#entries.filter(({ number }) => number <= floor);
    for (const { event } of packed) if (event !== undefined) this.#byId.delete(event.id);
    this.#entries = this.#entries.slice(packed.length);
    this.#floor = floor;
  }
}

/** Writes one batch behind the head and gives the new head. */
export async function putBatch(tx: Writing, head: Cursor, fresh: readonly Entry[]): Promise<Cursor> {
  if (fresh.length === 0) return head;
  const last = head + fresh.length;
  await tx.objectStore('tail').put({ first: head + 1, text: fresh.map(({ line }) => line).join('\n') }, last);
  return last;
}
