import {
  type AnimalRecord,
  type Day,
  type EventId,
  type EventKind,
  eventIdFrom,
  type Facility,
  foldFacility,
  type Id,
  type LogEvent,
  mintId,
  type Payload,
  parseDay,
  parseEvent,
  type Result,
} from '../../src/core/index.ts';

/** What a line may say beyond day, kind and payload. */
export interface More {
  readonly subjects?: readonly Id[];
  readonly at?: string;
  readonly clock?: readonly [number, number];
  readonly device?: number;
  /** The n of {@link eventId}; without it the line's place in the log. */
  readonly n?: number;
}

/** One event as a test writes it: a line of day, kind and payload. */
export type Line = {
  [K in EventKind]: readonly [day: string, kind: K, payload: Payload<K>, more?: More];
}[EventKind];

/** The n-th id of device 1. */
export function id(n: number): Id {
  return value(mintId(1, n));
}

export const REX = id(0);
export const DAM = id(1);
export const SIRE = id(2);
export const RACK = id(10);
export const TUB = id(11);
export const LOT = id(20);
export const CLUTCH = id(30);

/** The n-th event id; a later n has a later id. */
export function eventId(n: number): EventId {
  const bytes = new Uint8Array(10);
  new DataView(bytes.buffer).setUint32(4, n);
  return eventIdFrom(Date.UTC(2026, 0, 1) + n, bytes);
}

/** The n of an event that was written at this instant: its id tells when. */
export function writtenAt(instant: string): number {
  return Date.parse(instant) - Date.UTC(2026, 0, 1);
}

/** A day from its text. */
export function day(text: string): Day {
  return value(parseDay(text));
}

/** The value of a result that must have gone well. */
export function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.message}`);
  return result.value;
}

/** The code of a result that must have been refused. */
export function refusal(result: Result<unknown>): string {
  if (result.ok) throw new Error(`was not refused: ${JSON.stringify(result.value)}`);
  return result.problem.code;
}

/** The foreign data of one line; lines of one day happen in the order in which they stand. */
export function data([on, kind, payload, more = {}]: Line, at: number): Record<string, unknown> {
  const n = more.n ?? at;
  const ms = Date.parse(`${on}T08:00:00Z`) + at * 1000;
  const { subjects = [REX], device = 3, clock = [ms, 0] } = more;
  const instant = more.at ?? new Date(ms).toISOString();
  return { v: 1, id: eventId(n), kind, at: instant, day: on, subjects, keeper: 'Ada', device, seq: n, clock, payload };
}

/** Lines as events, each read like foreign data. */
export function log(...lines: readonly Line[]): LogEvent[] {
  return lines.map((line, at) => value(parseEvent(data(line, at))));
}

/** What these lines make of a site. */
export function site(...lines: readonly Line[]): Facility {
  return foldFacility(log(...lines));
}

/** The line that adds an animal. */
export function added(facts: Partial<Payload<'animal-added'>> = {}, more: More = {}, on = '2025-01-01'): Line {
  return [on, 'animal-added', { species: 'Python regius', sex: 'unsexed', ...facts }, more];
}

/** The record of one animal, a ball python unless the facts say otherwise, after these lines. */
export function rex(facts: Partial<Payload<'animal-added'>>, ...lines: readonly Line[]): AnimalRecord {
  const found = site(added(facts), ...lines).animals.get(REX);
  if (found === undefined) throw new Error('the lines leave no such animal');
  return found;
}

/** A meal of one rat pup, 30 g, taken on that day. */
export function fed(on: string, totalG = 30, more: More = {}): Line {
  return [on, 'prey-offered', { prey: 'rat-pup', count: 1, totalG, outcome: 'taken' }, more];
}

/** The same refused. */
export function refused(on: string): Line {
  return [on, 'prey-offered', { prey: 'rat-pup', count: 1, totalG: 30, outcome: 'refused' }];
}

/** A weighing. */
export function weighed(on: string, weightG: number): Line {
  return [on, 'animal-weighed', { weightG }];
}

/** A slip that takes back the event of the n-th line. */
export function undo(on: string, n: number, more: More = {}): Line {
  return [on, 'slip-made', { corrects: eventId(n), how: 'undo' }, more];
}
