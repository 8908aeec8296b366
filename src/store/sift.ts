import type { EventId, LogEvent } from '../core/index.ts';
import { type Entry, eventLine } from './line.ts';

/** A batch, told apart into what is new, what is here already and what took another event's id. */
export interface Sifted {
  readonly fresh: readonly Entry[];
  readonly known: number;
  readonly clashes: readonly Entry[];
}

/** What a store holds under an id when it is sure to differ from any newcomer. */
export const OTHER_CONTENT = '';

/** Tells a batch apart; `held` gives the stored line of every id of the batch that is taken. */
export function sift(events: readonly LogEvent[], held: ReadonlyMap<EventId, string>): Sifted {
  const lines = new Map(held);
  const fresh: Entry[] = [];
  const clashes: Entry[] = [];
  let known = 0;
  for (const event of events) {
    const line = eventLine(event);
    const taken = lines.get(event.id);
    if (taken === undefined) {
      lines.set(event.id, line);
      fresh.push({ event, line });
    } else if (taken === line) known += 1;
    else clashes.push({ event, line });
  }
  return { fresh, known, clashes };
}
