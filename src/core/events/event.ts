import * as z from 'zod/mini';
import { type Day, isDay } from '../days.ts';
import { type EventId, type Id, isEventId, isId } from '../ids.ts';
import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { type EventKind, isEventKind, PAYLOADS, type Payload } from './payloads.ts';
import { swiftReader } from './swiftReader.ts';
import { upgrade } from './upgrade.ts';

/** The version of the event shape that this program writes. */
export const EVENT_VERSION = 1;

/** A hybrid logical clock: milliseconds since 1970 and a counter within them (Kulkarni et al. 2014, "Logical Physical Clocks"). */
export type Clock = readonly [ms: number, count: number];

interface Envelope {
  readonly v: number;
  readonly id: EventId;
  /** The instant, RFC 3339 in UTC. */
  readonly at: string;
  /** The site's local day of that instant. */
  readonly day: Day;
  /** Whom it happened to; the first is the one it is about. */
  readonly subjects: readonly Id[];
  readonly keeper: string;
  readonly device: number;
  readonly seq: number;
  readonly clock: Clock;
}

/** One thing that happened, never changed afterwards. */
export type SiteEvent = { [K in EventKind]: Envelope & { readonly kind: K; readonly payload: Payload<K> } }[EventKind];
/** An event of one kind. */
export type EventOf<K extends EventKind> = Extract<SiteEvent, { kind: K }>;
/** An event of a kind or version that this program does not know: kept, passed on, shown as unknown. */
export type UnknownEvent = Envelope & { readonly kind: string; readonly payload: unknown; readonly unknown: true };
/** Whatever a log holds. */
export type LogEvent = SiteEvent | UnknownEvent;

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,9})?Z$/;
const whole = z.int().check(z.gte(0));
/** The envelope of foreign data; what is in it is read by its kind. */
export const envelopeSchema = z.object({
  v: z.int().check(z.gte(1)),
  id: z.string().check(z.refine(isEventId, 'id is not a UUIDv7')),
  kind: z.string().check(z.regex(/^[a-z]+(-[a-z]+)+$/), z.maxLength(40)),
  at: z.string().check(z.regex(INSTANT, 'at is not an instant in UTC')),
  day: z.string().check(z.refine(isDay, 'day is not a day as 2026-03-09')),
  subjects: z.array(z.string().check(z.refine(isId, 'a subject is not an id'))).check(z.maxLength(500)),
  keeper: z.string().check(z.maxLength(40)),
  device: whole,
  seq: whole,
  clock: z.tuple([whole, whole]),
  payload: z.unknown(),
});

/** Reads one event of foreign data; older shapes are brought up to date first. Errors: `event-malformed`. */
export function parseEvent(data: unknown): Result<LogEvent> {
  const read = readEnvelope(upgrade(data));
  if (!read.success) return malformed(read.error);
  const head = read.data as unknown as Envelope & { kind: string; payload: unknown };
  const readPayload = head.v > EVENT_VERSION ? null : payloadReader(head.kind);
  if (readPayload === null) return ok({ ...head, unknown: true });
  const payload = readPayload(head.payload);
  if (!payload.success) return malformed(payload.error, 'payload');
  return ok(eventOf(head, payload.data));
}

/** Written out, because an object whose fields are all named at once takes half the room of one that grew: a log has many. */
function eventOf(head: Envelope & { kind: string }, payload: unknown): SiteEvent {
  const { v, id, kind, at, day, subjects, keeper, device, seq, clock } = head;
  return { v, id, kind, at, day, subjects, keeper, device, seq, clock, payload } as SiteEvent;
}

const readEnvelope = swiftReader(envelopeSchema);
const payloadReaders = new Map<string, (payload: unknown) => z.core.util.SafeParseResult<unknown>>();

/** The reader of a kind's payload, made when the first event of it comes; null for a kind that is not known here. */
function payloadReader(kind: string) {
  const made = payloadReaders.get(kind);
  if (made !== undefined) return made;
  if (!isEventKind(kind)) return null;
  const reader = swiftReader(PAYLOADS[kind] as z.ZodMiniType);
  payloadReaders.set(kind, reader);
  return reader;
}

/** True for an event whose kind and version are known here. */
export function isKnown(event: LogEvent): event is SiteEvent {
  return !('unknown' in event);
}

/**
 * The order in which things happened: day, instant, then clock, device and id, so that ties fall the same way everywhere.
 * The day comes first because what is written down later may carry the instant of writing.
 */
export function inOrder(a: LogEvent, b: LogEvent): number {
  return compare(a.day, b.day) || compareInstants(a.at, b.at) || laterWriter(a, b);
}

/** Which of two writers wins where a fact has one value: the later clock, then device, then id. */
export function laterWriter(a: LogEvent, b: LogEvent): number {
  return a.clock[0] - b.clock[0] || a.clock[1] - b.clock[1] || a.device - b.device || compare(a.id, b.id);
}

/** The clock of the next event: never before the last one, nor before the wall clock. */
export function tick(last: Clock, nowMs: number): Clock {
  return nowMs > last[0] ? [nowMs, 0] : [last[0], last[1] + 1];
}

/** The clock after hearing another device's event. */
export function hear(mine: Clock, heard: Clock, nowMs: number): Clock {
  const ms = Math.max(mine[0], heard[0], nowMs);
  const counts = [mine, heard].filter((clock) => clock[0] === ms).map((clock) => clock[1]);
  return [ms, counts.length === 0 ? 0 : Math.max(...counts) + 1];
}

/** What two events of the same id and other content amount to. */
export function clash(id: EventId): Problem {
  return problem('event-clash', { id });
}

/** Texts of one length sort as they stand; else `…08Z` would come after `…08.5Z`, and `.5` apart from `.500`. */
function compareInstants(a: string, b: string): number {
  return a.length === b.length ? compare(a, b) : compare(bare(a), bare(b));
}

function bare(instant: string): string {
  return instant.replace(instant.includes('.') ? /\.?0*Z$/ : 'Z', '');
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

function malformed(error: z.core.$ZodError, root = ''): Result<never> {
  const first = error.issues[0];
  const path = [root, ...(first?.path ?? []).map(String)].filter((part) => part !== '').join('.');
  return refuse('event-malformed', { why: `${path}${path ? ': ' : ''}${first?.message ?? 'no event'}` }, path);
}
