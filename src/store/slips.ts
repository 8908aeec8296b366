import type { EventId, LogEvent } from '../core/index.ts';
import { correctedBy } from './line.ts';

/** The events and every slip that corrects one of them, or one of those slips, each once. */
export function withSlips(
  events: readonly LogEvent[],
  slipsOf: (corrected: EventId) => readonly LogEvent[],
): readonly LogEvent[] {
  const found = new Map(events.map((event) => [event.id, event]));
  // A Map visits what is added while it is walked, so slips of slips are followed too.
  for (const event of found.values()) {
    for (const slip of slipsOf(event.id)) found.set(slip.id, slip);
  }
  return [...found.values()];
}

/** Slips by the event that they correct. */
export function bySlipped(events: Iterable<LogEvent>): Map<EventId, LogEvent[]> {
  const slips = new Map<EventId, LogEvent[]>();
  for (const event of events) {
    const corrected = correctedBy(event);
    if (corrected !== null) addTo(slips, corrected, event);
  }
  return slips;
}

/** Adds one more value under a key. */
export function addTo<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}
