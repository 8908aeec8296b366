import { clash, type EventId, type Facility, type Id, isKnown, type LogEvent, type Problem } from '../core/index.ts';
import { eventLine } from '../store/index.ts';

/** What stands out in a log, beyond its lines. */
export interface Findings {
  /** Two different events with one id. */
  readonly clashes: readonly Problem[];
  /** Kinds that this program does not know, with how many there are. */
  readonly unknown: ReadonlyMap<string, number>;
  /** Ids that no event has added, with how many events are about them. */
  readonly strangers: ReadonlyMap<Id, number>;
  /** Slips whose event is not here. */
  readonly loose: number;
  /** Events that stand here again, letter for letter. */
  readonly twice: number;
  /** How many numbers each device has left out; a device numbers its events one by one. */
  readonly missing: ReadonlyMap<number, number>;
}

/** Looks a log and its fold through. */
export function findings(events: readonly LogEvent[], facility: Facility): Findings {
  const { lines, clashes, twice } = byId(events);
  const unknown = new Map<string, number>();
  for (const event of events) if (!isKnown(event)) unknown.set(event.kind, (unknown.get(event.kind) ?? 0) + 1);
  const loose = events.filter((event) => isKnown(event) && isLoose(event, lines)).length;
  const strangers = new Map([...facility.strangers].filter(([, count]) => count > 0));
  return { clashes: [...clashes].map(clash), unknown, strangers, loose, twice, missing: missingNumbers(events) };
}

function byId(events: readonly LogEvent[]) {
  const lines = new Map<EventId, string>();
  const clashes = new Set<EventId>();
  let twice = 0;
  for (const event of events) {
    const line = eventLine(event);
    const held = lines.get(event.id);
    if (held === undefined) lines.set(event.id, line);
    else if (held === line) twice += 1;
    else clashes.add(event.id);
  }
  return { lines, clashes, twice };
}

function isLoose(event: LogEvent, lines: ReadonlyMap<string, string>): boolean {
  return isKnown(event) && event.kind === 'slip-made' && !lines.has(event.payload.corrects);
}

function missingNumbers(events: readonly LogEvent[]): ReadonlyMap<number, number> {
  const numbers = new Map<number, Set<number>>();
  for (const { device, seq } of events) numbers.set(device, (numbers.get(device) ?? new Set()).add(seq));
  const missing = new Map<number, number>();
  for (const [device, seen] of numbers) {
    const [least, most] = ends(seen);
    const gap = most - least + 1 - seen.size;
    if (gap > 0) missing.set(device, gap);
  }
  return missing;
}

function ends(numbers: ReadonlySet<number>): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const number of numbers) {
    least = Math.min(least, number);
    most = Math.max(most, number);
  }
  return [least, most];
}
