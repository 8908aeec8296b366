import {
  canonicalJson,
  type EventId,
  isKnown,
  type LogEvent,
  ok,
  parseEvent,
  type Result,
  refuse,
} from '../core/index.ts';

/** An event with the one line of text that stands for it in every store and file. */
export interface Entry {
  readonly event: LogEvent;
  readonly line: string;
}

/** The event as one line of canonical JSON, without its newline: equal events give equal lines. */
export function eventLine(event: LogEvent): string {
  if (isKnown(event)) return canonicalJson(event);
  const { unknown: _mark, ...written } = event;
  return canonicalJson(written);
}

/** Deeper data than this is no event of anybody's; a million levels would end the program that walks them. */
const DEEPEST = 32;

/** Reads one event of foreign data; what a newer program added to an unknown event is kept. Errors: `event-malformed`. */
export function readEvent(data: unknown): Result<LogEvent> {
  const harm = isHarmless(data, 0) ? null : harmIn(data);
  if (harm !== null) return refuse('event-malformed', { why: harm });
  const read = parseEvent(data);
  if (!read.ok || isKnown(read.value) || typeof data !== 'object') return read;
  return ok({ ...data, ...read.value });
}

/** Reads one line of a log. Errors: `event-malformed`. */
export function readLine(line: string): Result<LogEvent> {
  const data = parseJson(line);
  return data.ok ? readEvent(data.value) : data;
}

/** Reads lines that a store wrote itself; one that rotted on the disk is left out, its place in the order stays. */
export function readOwnLines(lines: readonly string[]): LogEvent[] {
  return lines.map(readLine).flatMap((read) => (read.ok ? [read.value] : []));
}

/** The event that a slip corrects; null for every other event. */
export function correctedBy(event: LogEvent): EventId | null {
  return isKnown(event) && event.kind === 'slip-made' ? (event.payload.corrects as EventId) : null;
}

/** The JSON value of a text. Errors: `event-malformed`. */
export function parseJson(text: string): Result<unknown> {
  try {
    return ok(JSON.parse(text));
  } catch {
    return refuse('event-malformed', { why: 'it is not JSON' });
  }
}

/**
 * True for data in which {@link harmIn} finds nothing. It goes down branch by branch and collects nothing, because every line of
 * a log passes it; it stops where that would become deep.
 */
function isHarmless(data: unknown, depth: number): boolean {
  if (typeof data !== 'object' || data === null) return true;
  if (depth >= DEEPEST || Object.hasOwn(data, '__proto__')) return false;
  if (Array.isArray(data)) {
    for (const inner of data) if (typeof inner === 'object' && !isHarmless(inner, depth + 1)) return false;
    return true;
  }
  for (const key in data) {
    const inner = (data as Record<string, unknown>)[key];
    if (typeof inner === 'object' && !isHarmless(inner, depth + 1)) return false;
  }
  return true;
}

/** What makes foreign data dangerous to carry about, looked for level by level without recursion. */
function harmIn(data: unknown): string | null {
  let level = [data];
  for (let depth = 0; level.length > 0; depth++) {
    if (depth > DEEPEST) return `it is nested deeper than ${DEEPEST} levels`;
    const below: unknown[] = [];
    for (const value of level) {
      if (typeof value !== 'object' || value === null) continue;
      if (Object.hasOwn(value, '__proto__')) return 'it has a key __proto__';
      for (const inner of Object.values(value)) below.push(inner);
    }
    level = below;
  }
  return null;
}
