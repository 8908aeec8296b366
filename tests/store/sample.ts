import { type Clock, type EventId, eventIdFrom, type Id, type LogEvent, mintId } from '../../src/core/index.ts';
import { readEvent } from '../../src/store/index.ts';

/** Small events for the tests of stores: the n-th differs from all others. */
export interface Sample {
  readonly n: number;
  readonly kind?: string;
  readonly payload?: unknown;
  readonly subjects?: readonly Id[];
  readonly clock?: Clock;
  readonly device?: number;
}

const BEGIN = Date.UTC(2026, 2, 9, 8);

/** The n-th animal of the tests. */
export function animal(n: number): Id {
  const minted = mintId(1, n);
  if (!minted.ok) throw new Error(minted.problem.message);
  return minted.value;
}

/** The n-th event id. */
export function idOf(n: number): EventId {
  const bytes = new Uint8Array(10);
  new DataView(bytes.buffer).setUint32(4, n);
  return eventIdFrom(BEGIN + n, bytes);
}

/** An event of foreign data, as it would come over the wire. */
export function data({ n, kind = 'animal-weighed', payload = { weightG: 100 + n }, ...more }: Sample) {
  const { subjects = [animal(n % 7)], clock = [BEGIN + n, 0], device = 3 } = more;
  const at = new Date(BEGIN + n * 1000).toISOString();
  return { v: 1, id: idOf(n), kind, at, day: '2026-03-09', subjects, keeper: 'Ada', device, seq: n, clock, payload };
}

/** The n-th event. */
export function event(sample: Sample | number): LogEvent {
  const read = readEvent(data(typeof sample === 'number' ? { n: sample } : sample));
  if (!read.ok) throw new Error(read.problem.message);
  return read.value;
}

/** Events from one number up to, without, another. */
export function events(from: number, to: number): LogEvent[] {
  return Array.from({ length: to - from }, (_, at) => event(from + at));
}

/** A slip that undoes the event of another number. */
export function slip(n: number, undoes: number, subjects?: readonly Id[]): LogEvent {
  return event({
    n,
    kind: 'slip-made',
    payload: { corrects: idOf(undoes), how: 'undo' },
    subjects: subjects ?? [animal(undoes % 7)],
  });
}
