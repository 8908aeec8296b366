import { type EventId, type Id, isEventId, SITE } from '../../core/index.ts';
import type { Cursor } from '../eventLog.ts';
import { parseJson } from '../line.ts';
import { addTo } from '../slips.ts';

/** The span of bytes of a line, without its newline. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where each line of a log file is, and which events and subjects it holds; the lines stay on the disk. */
export class LineIndex {
  readonly #starts: number[] = [0];
  readonly #numbers = new Map<EventId, Cursor>();
  readonly #subjects = new Map<string, Cursor[]>();
  readonly #slips = new Map<string, Cursor[]>();
  readonly #broken = new Set<Cursor>();

  /** How many lines there are; the n-th has the arrival n. */
  get size(): Cursor {
    return this.#starts.length - 1;
  }

  /** How many bytes they take, newlines included. */
  get bytes(): number {
    return this.#starts.at(-1) ?? 0;
  }

  /** Adds the next line of that many bytes, newline included; false when it is no event, but its place is kept. */
  add(line: string, bytes: number): boolean {
    const number = this.#starts.push(this.bytes + bytes) - 1;
    const data = parseJson(line);
    const head = data.ok ? headOf(data.value) : null;
    if (head === null) {
      this.#broken.add(number);
      return false;
    }
    if (!this.#numbers.has(head.id)) this.#numbers.set(head.id, number);
    if (head.subjects.size === 0) addTo(this.#subjects, SITE, number);
    for (const subject of head.subjects) addTo(this.#subjects, subject, number);
    if (head.corrects !== null) addTo(this.#slips, head.corrects, number);
    return true;
  }

  /** True for a line that holds no event; it is never passed on. */
  isBroken(number: Cursor): boolean {
    return this.#broken.has(number);
  }

  numberOf(id: EventId): Cursor | undefined {
    return this.#numbers.get(id);
  }

  /** The arrivals of the events of a subject, or of the site itself. */
  linesOf(subject: Id | typeof SITE): readonly Cursor[] {
    return this.#subjects.get(subject) ?? [];
  }

  /** The arrivals of the slips that correct an event. */
  slipsOf(id: EventId): readonly Cursor[] {
    return this.#slips.get(id) ?? [];
  }

  /** The bytes of the lines after one arrival up to and with another. */
  span(after: Cursor, until: Cursor): Span {
    const from = this.#starts[after] ?? this.bytes;
    return { from, to: Math.max((this.#starts[until] ?? this.bytes) - 1, from) };
  }
}

interface Head {
  readonly id: EventId;
  readonly subjects: ReadonlySet<string>;
  readonly corrects: string | null;
}

/** A light look: every line was checked when it was written, and the seals say whether it is still the same. */
function headOf(data: unknown): Head | null {
  if (typeof data !== 'object' || data === null || !('id' in data) || !('subjects' in data)) return null;
  const { id, subjects } = data;
  if (typeof id !== 'string' || !isEventId(id) || !Array.isArray(subjects)) return null;
  const names = subjects.filter((subject): subject is string => typeof subject === 'string');
  const payload: unknown = 'payload' in data ? data.payload : null;
  const slip = 'kind' in data && data.kind === 'slip-made' && typeof payload === 'object' && payload !== null;
  const corrects = slip && 'corrects' in payload ? String(payload.corrects) : null;
  return { id, subjects: new Set(names), corrects };
}
