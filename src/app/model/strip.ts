import { type ReadonlySignal, signal } from '@preact/signals';
import type { EventId, Id, LogEvent, Problem } from '../../core/index.ts';

/** One of the last five entries: what was written, on whom, and whether it was taken back. */
export interface StripEntry {
  readonly key: number;
  readonly subject: Id | null;
  readonly name: string;
  readonly said: string;
  readonly result: 'accepted' | 'asks' | 'refused';
  readonly problem: Problem | null;
  /** What undo takes back; empty where nothing was written. */
  readonly events: readonly { readonly id: EventId; readonly subjects: readonly Id[] }[];
  readonly undone: boolean;
}

/** The strip of the last five entries, newest first. */
export interface StripModel {
  readonly entries: ReadonlySignal<readonly StripEntry[]>;
  add(entry: Omit<StripEntry, 'key' | 'undone' | 'events'> & { readonly events?: readonly LogEvent[] }): void;
  markUndone(key: number): void;
}

const KEPT = 5;

export function createStrip(): StripModel {
  const entries = signal<readonly StripEntry[]>([]);
  let next = 1;
  return {
    entries,
    add({ events = [], ...entry }) {
      const kept = events.map(({ id, subjects }) => ({ id, subjects }));
      entries.value = [{ ...entry, events: kept, key: next++, undone: false }, ...entries.value].slice(0, KEPT);
    },
    markUndone(key) {
      entries.value = entries.value.map((entry) => (entry.key === key ? { ...entry, undone: true } : entry));
    },
  };
}
