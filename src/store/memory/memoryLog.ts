import { type EventId, type Id, type LogEvent, SITE } from '../../core/index.ts';
import type { Appended, Cursor, EventLog, Page } from '../eventLog.ts';
import type { Entry } from '../line.ts';
import { correctedBy } from '../line.ts';
import { sift } from '../sift.ts';
import { addTo, withSlips } from '../slips.ts';

/** An event log that lives as long as the program: for tests, demos and browsers without storage. */
export function memoryLog(): EventLog {
  return new MemoryLog();
}

/** The indexes behind {@link memoryLog}; the memory device log builds on it. */
export class MemoryLog implements EventLog {
  readonly #entries: Entry[] = [];
  readonly #numbers = new Map<EventId, Cursor>();
  readonly #subjects = new Map<Id | typeof SITE, LogEvent[]>();
  readonly #slips = new Map<EventId, LogEvent[]>();
  readonly #parked = new Map<string, LogEvent>();

  async append(events: readonly LogEvent[]): Promise<Appended> {
    return this.appendNow(events);
  }

  /** The same at once, for callers that change something else in the same step. */
  appendNow(events: readonly LogEvent[]): Appended {
    const { fresh, known, clashes } = sift(events, this.#held(events));
    for (const entry of fresh) this.#add(entry);
    for (const { event, line } of clashes) this.#parked.set(line, event);
    return { stored: fresh.length, known, clashes: clashes.map(({ event }) => event.id) };
  }

  async read(after: Cursor, limit: number): Promise<Page> {
    const entries = this.#entries.slice(after, after + limit);
    const next = Math.min(after + entries.length, this.size);
    return { events: entries.map(({ event }) => event), next, head: this.size };
  }

  async history(subject: Id | typeof SITE): Promise<readonly LogEvent[]> {
    return withSlips(this.#subjects.get(subject) ?? [], (id) => this.#slips.get(id) ?? []);
  }

  async parked(): Promise<readonly LogEvent[]> {
    return [...this.#parked.values()];
  }

  async head(): Promise<Cursor> {
    return this.size;
  }

  async close(): Promise<void> {}

  get size(): Cursor {
    return this.#entries.length;
  }

  /** The place of an event in the order of arrival. */
  numberOf(id: EventId): Cursor | undefined {
    return this.#numbers.get(id);
  }

  #held(events: readonly LogEvent[]): Map<EventId, string> {
    const held = new Map<EventId, string>();
    for (const { id } of events) {
      const entry = this.#entries[(this.#numbers.get(id) ?? 0) - 1];
      if (entry !== undefined) held.set(id, entry.line);
    }
    return held;
  }

  #add(entry: Entry): void {
    const { event } = entry;
    this.#numbers.set(event.id, this.#entries.push(entry));
    if (event.subjects.length === 0) addTo(this.#subjects, SITE, event);
    for (const subject of new Set(event.subjects)) addTo(this.#subjects, subject, event);
    const corrected = correctedBy(event);
    if (corrected !== null) addTo(this.#slips, corrected, event);
  }
}
