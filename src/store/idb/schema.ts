import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import type { DeviceState, Refusal, Snapshot } from '../deviceLog.ts';
import type { Cursor } from '../eventLog.ts';
import type { Range } from '../ranges.ts';

/** One writing: its lines, joined by newlines, have the arrivals `first` up to the record's key. */
export interface TailBatch {
  readonly first: Cursor;
  readonly text: string;
}

/** The lines of one subject within a block, joined by newlines, and the arrival of each. */
export interface HistRecord {
  readonly numbers: readonly Cursor[];
  readonly text: string;
}

/** Packed arrivals: their ids in order of arrival, 36 characters each, and the least and greatest of them. */
export interface Block {
  readonly first: Cursor;
  readonly last: Cursor;
  readonly ids: string;
  readonly least: string;
  readonly most: string;
}

/** The device's state and the ends of its log: packed away up to `floor`, in `tail` from there to `head`. */
export interface State extends DeviceState {
  readonly head: Cursor;
  readonly floor: Cursor;
}

/** The layout; history is never one record an event, which loads thirty times slower. */
export interface Layout extends DBSchema {
  meta: { key: 'state'; value: State };
  tail: { key: Cursor; value: TailBatch };
  hist: { key: [block: number, home: string]; value: HistRecord };
  blocks: { key: number; value: Block };
  outbox: { key: 'unsent'; value: readonly Range[] };
  parked: { key: string; value: string };
  refused: { key: string; value: Refusal };
  snap: { key: 'snap'; value: Snapshot & { readonly hash: string } };
}

/** An open database. */
export type Database = IDBPDatabase<Layout>;

/** All rooms of the layout. */
export const ROOMS = ['meta', 'tail', 'hist', 'blocks', 'outbox', 'parked', 'refused', 'snap'] as const;

/** Opens or makes the database; another tab that wants to bring it up to date makes this one let go. */
export function openDatabase(name: string): Promise<Database> {
  return openDB<Layout>(name, 1, {
    upgrade(db) {
      for (const room of ROOMS) db.createObjectStore(room);
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });
}
