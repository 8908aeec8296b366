import type { IDBPTransaction } from 'idb';
import { problem } from '../../core/index.ts';
import { LogFailure } from '../eventLog.ts';
import { type Database, type Layout, ROOMS } from './schema.ts';

/** A transaction over the whole layout, in which everything that belongs together is read and written. */
export type Writing = IDBPTransaction<Layout, typeof ROOMS, 'readwrite'>;
/** The same for reading; a writing will do as well. */
export type Reading = IDBPTransaction<Layout, typeof ROOMS, 'readonly' | 'readwrite'>;

/**
 * Runs the work in one transaction and resolves only when the disk has it: all of it or nothing. `strict` waits for
 * the disk itself, `relaxed` for the operating system. Rejects with `storage-full` or `storage-failed`; what the work
 * itself throws passes through.
 */
export async function write<T>(
  db: Database,
  durability: 'strict' | 'relaxed',
  work: (tx: Writing) => Promise<T>,
): Promise<T> {
  const tx = await begin(() => db.transaction(ROOMS, 'readwrite', { durability }));
  return finish(tx, work);
}

/** Runs the work on one consistent state. */
export async function look<T>(db: Database, work: (tx: Reading) => Promise<T>): Promise<T> {
  const tx = await begin(() => db.transaction(ROOMS, 'readonly'));
  return finish(tx, work);
}

/** A failure of the browser's storage in our words; any other error as it is. */
export function asFailure(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  if (error.name === 'QuotaExceededError') return new LogFailure(problem('storage-full'));
  return new LogFailure(problem('storage-failed', { why: `${error.name}: ${error.message}` }));
}

async function begin<T>(open: () => T): Promise<T> {
  try {
    return open();
  } catch (error) {
    throw asFailure(error);
  }
}

async function finish<T, M extends 'readonly' | 'readwrite'>(
  tx: IDBPTransaction<Layout, typeof ROOMS, M>,
  work: (tx: IDBPTransaction<Layout, typeof ROOMS, M>) => Promise<T>,
): Promise<T> {
  // The end is awaited below; without this a failing work would leave its rejection unheard.
  tx.done.catch(() => undefined);
  try {
    const result = await work(tx);
    await tx.done;
    return result;
  } catch (error) {
    stop(tx);
    throw asFailure(tx.error ?? error);
  }
}

function stop(tx: { abort(): void }): void {
  try {
    tx.abort();
  } catch {
    // It has ended already.
  }
}
