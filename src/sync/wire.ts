import * as z from 'zod/mini';
import { type EventId, isEventId, ok, PROBLEMS, type ProblemCode, type Result, refuse } from '../core/index.ts';
import type { Refusal } from '../store/index.ts';

/** A push carries at most so many events; a page at most so many rows. */
export const LIMITS = { pushEvents: 500, pageEvents: 5000, pushBytes: 900_000 } as const;

const cursor = z.int().check(z.gte(0));
const epoch = z.string().check(z.minLength(1), z.maxLength(64));
const eventId = z.string().check(z.refine(isEventId, 'not an event id'));
const code = z.string().check(z.refine((text) => Object.hasOwn(PROBLEMS, text), 'not a problem of ours'));

const pushSchema = z.object({ epoch, events: z.array(z.unknown()).check(z.maxLength(LIMITS.pushEvents)) });
const pushedSchema = z.object({
  epoch,
  ack: z.array(eventId),
  rejected: z.array(z.object({ id: eventId, code })),
  head: cursor,
});
const pulledSchema = z.object({ epoch, after: cursor, rows: z.array(z.unknown()), next: cursor, head: cursor });
const enrolSchema = z.object({ name: z.string().check(z.minLength(1), z.maxLength(80)) });
const enrolledSchema = z.object({ device: cursor, site: z.string().check(z.maxLength(200)), epoch });

/** What a device sends. */
export interface Push {
  readonly epoch: string;
  readonly events: readonly unknown[];
}

/** What became of it: every id is acknowledged, refused or not mentioned, and then still unsent. */
export interface Pushed {
  readonly epoch: string;
  readonly ack: readonly EventId[];
  readonly rejected: readonly Refusal[];
  readonly head: number;
}

/** A page of the hub's order. */
export interface Pulled {
  readonly epoch: string;
  readonly after: number;
  readonly rows: readonly unknown[];
  readonly next: number;
  readonly head: number;
}

/** What a device gives itself for when it enrols. */
export interface Enrol {
  readonly name: string;
}

/** The device's number at this hub, never given to another. */
export interface Enrolled {
  readonly device: number;
  readonly site: string;
  readonly epoch: string;
}

/** Reads a message. Errors: `message-malformed`. */
export const readPush = (data: unknown) => read<Push>(pushSchema, data);
/** Reads a message. Errors: `message-malformed`. */
export const readPushed = (data: unknown) => read<Pushed>(pushedSchema, data);
/** Reads a message. Errors: `message-malformed`. */
export const readPulled = (data: unknown) => read<Pulled>(pulledSchema, data);
/** Reads a message. Errors: `message-malformed`. */
export const readEnrol = (data: unknown) => read<Enrol>(enrolSchema, data);
/** Reads a message. Errors: `message-malformed`. */
export const readEnrolled = (data: unknown) => read<Enrolled>(enrolledSchema, data);

/** The event's id if it has one that can be answered to; null otherwise. */
export function idIn(data: unknown): EventId | null {
  const id = typeof data === 'object' && data !== null && 'id' in data ? data.id : null;
  return typeof id === 'string' && isEventId(id) ? id : null;
}

/** A refusal of one event. */
export function refusal(id: EventId, why: ProblemCode): Refusal {
  return { id, code: why };
}

function read<T>(schema: z.ZodMiniType, data: unknown): Result<T> {
  const parsed = schema.safeParse(data);
  if (parsed.success) return ok(parsed.data as T);
  const [first] = parsed.error.issues;
  return refuse('message-malformed', { why: `${first?.path.join('.') ?? ''} ${first?.message ?? ''}`.trim() });
}
