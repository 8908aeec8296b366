import { type EventId, type LogEvent, type Problem, problem } from '../core/index.ts';
import { type Appended, type Cursor, LogFailure, readEvent } from '../store/index.ts';
import { idIn, LIMITS, type Pushed, readPush, refusal } from './wire.ts';

/** What the rules need of a hub's store. */
export interface HubStore {
  append(events: readonly LogEvent[]): Promise<Appended>;
  head(): Promise<Cursor>;
}

/** A reply of the hub: a message or a problem, with the HTTP status that says which. */
export type Reply<T> =
  | { readonly status: 200; readonly body: T }
  | { readonly status: 400 | 409 | 503; readonly body: { readonly epoch: string; readonly problem: Problem } };

/**
 * Takes a push: what is sound is stored, and acknowledged only then; what is not is refused one by one. The same push
 * twice gives the same answer. Status 400 malformed, 409 another epoch, 503 nothing stored and nothing acknowledged.
 */
export async function answerPush(store: HubStore, epoch: string, body: unknown): Promise<Reply<Pushed>> {
  const push = readPush(body);
  if (!push.ok) return no(400, epoch, push.problem);
  if (push.value.epoch !== epoch) return no(409, epoch, problem('epoch-changed', { epoch }));
  const sorted = sort(push.value.events);
  if (sorted === null) return no(400, epoch, problem('message-malformed', { why: 'an event has no id' }));
  try {
    const { clashes } = await store.append(sorted.sound);
    return { status: 200, body: pushed(epoch, sorted, clashes, await store.head()) };
  } catch (error) {
    if (error instanceof LogFailure) return no(503, epoch, error.problem);
    throw error;
  }
}

/** How much of the order a page may hold: what was asked, within the limit. */
export function pageLimit(asked: number): number {
  return Math.min(Math.max(Math.trunc(asked), 1), LIMITS.pageEvents);
}

interface Sorted {
  readonly sound: readonly LogEvent[];
  readonly malformed: readonly EventId[];
}

function sort(list: readonly unknown[]): Sorted | null {
  const sound: LogEvent[] = [];
  const malformed: EventId[] = [];
  for (const data of list) {
    const read = readEvent(data);
    const id = idIn(data);
    if (read.ok) sound.push(read.value);
    else if (id !== null) malformed.push(id);
    else return null;
  }
  return { sound, malformed };
}

function pushed(epoch: string, { sound, malformed }: Sorted, clashes: readonly EventId[], head: Cursor): Pushed {
  const refused = new Set(clashes);
  const ack = [...new Set(sound.map(({ id }) => id))].filter((id) => !refused.has(id));
  const rejected = [
    ...[...refused].map((id) => refusal(id, 'event-clash')),
    ...malformed.map((id) => refusal(id, 'event-malformed')),
  ];
  return { epoch, ack, rejected, head };
}

function no(status: 400 | 409 | 503, epoch: string, why: Problem): Reply<never> {
  return { status, body: { epoch, problem: why } };
}
