import { type LogEvent, ok, type Problem, type Result } from '../core/index.ts';
import { type DeviceLog, eventLine, readEvent } from '../store/index.ts';
import type { Called, Hub } from './transport.ts';
import { LIMITS, type Pulled, refusal } from './wire.ts';

/** What an exchange moved. */
export interface Exchanged {
  readonly sent: number;
  readonly received: number;
  /** Rows of the hub that this program cannot read; they stay at the hub. */
  readonly unreadable: number;
}

/** One device's exchange with its hub. */
export interface Parties {
  readonly log: DeviceLog;
  readonly hub: Hub;
  /** The device's name, as the hub's screen will list it. */
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}

/** After receiving so many events a device packs them away by subject, as they are slow to open one by one. */
const PACK_FROM = 2_000;
/** A hub that is rebuilt again and again while we talk must not hold us for ever. */
const MOST_STEPS = 10_000;

/**
 * Enrols if need be, sends what is unsent, fetches what is new, until neither is left. It may be broken off and begun
 * again at any point, and run twice at once: whatever it did is durable, and nothing is counted as sent or read
 * before its acknowledgement is. Errors: those of {@link Hub}.
 */
export async function exchange(parties: Parties): Promise<Result<Exchanged>> {
  const total = { sent: 0, received: 0, unreadable: 0 };
  for (let step = 0; step < MOST_STEPS; step++) {
    const done = (await enrolStep(parties)) ?? (await pushStep(parties, total)) ?? (await pullStep(parties, total));
    if (done === 'idle') break;
    if (done !== 'moved') return { ok: false, problem: done };
  }
  if (total.received >= PACK_FROM) await parties.log.compact();
  return ok(total);
}

/** `moved`: look again. `idle`: nothing left. Otherwise what went wrong. */
type Step = 'moved' | 'idle' | Problem;
type Total = { -readonly [K in keyof Exchanged]: Exchanged[K] };

async function enrolStep({ log, hub, name }: Parties): Promise<Step | null> {
  const { enrolled, epoch } = await log.device();
  if (enrolled && epoch !== null) return null;
  const called = await hub.enrol({ name });
  if (called.how !== 'answered') return lost(log, called);
  await log.enrol(called.value);
  return 'moved';
}

async function pushStep({ log, hub }: Parties, total: Total): Promise<Step | null> {
  const { epoch } = await log.device();
  const events = await log.outbox(LIMITS.pushEvents);
  const batch = fitting(events);
  const [first] = batch;
  if (epoch === null || first === undefined) return null;
  const called = await hub.push({ epoch, events: batch.map(written) });
  if (called.how === 'too-large' && batch.length === 1) {
    await log.clearOutbox(epoch, [], [refusal(first.id, 'event-malformed')]);
    return 'moved';
  }
  if (called.how !== 'answered') return lost(log, called);
  const { ack, rejected } = called.value;
  await log.clearOutbox(called.value.epoch, ack, rejected);
  total.sent += ack.length;
  // A hub that neither takes nor refuses would be asked for ever.
  return ack.length + rejected.length > 0 ? 'moved' : null;
}

async function pullStep({ log, hub, now }: Parties, total: Total): Promise<Step> {
  const { hubCursor, epoch } = await log.device();
  const called = await hub.pull(hubCursor, LIMITS.pageEvents);
  if (called.how !== 'answered') return lost(log, called);
  const page = called.value;
  if (page.epoch !== epoch || page.head < hubCursor) return startOver(log, page.epoch);
  if (page.next <= hubCursor) return 'idle';
  return apply(log, page, now(), total);
}

async function apply(log: DeviceLog, page: Pulled, nowMs: number, total: Total): Promise<Step> {
  const read = page.rows.map(readEvent);
  const events = read.flatMap((row) => (row.ok ? [row.value] : []));
  const applied = await log.applyPage({ epoch: page.epoch, after: page.after, events, next: page.next }, nowMs);
  if (applied === 'applied') {
    total.received += events.length;
    total.unreadable += read.length - events.length;
  }
  return 'moved';
}

async function startOver(log: DeviceLog, epoch: string): Promise<Step> {
  await log.startEpoch(epoch);
  return 'moved';
}

async function lost(log: DeviceLog, called: Exclude<Called<unknown>, { how: 'answered' }>): Promise<Step> {
  switch (called.how) {
    case 'failed':
      return called.problem;
    case 'other-epoch':
      return startOver(log, called.epoch);
    case 'too-large':
      return 'idle';
    default:
      return called satisfies never;
  }
}

/** As many events from the front as fit into one message, at least one. */
function fitting(events: readonly LogEvent[]): readonly LogEvent[] {
  let bytes = 0;
  const end = events.findIndex((event, at) => {
    bytes += new TextEncoder().encode(eventLine(event)).length;
    return at > 0 && bytes > LIMITS.pushBytes;
  });
  return end < 0 ? events : events.slice(0, end);
}

/** The event as it is written, without our mark for unknown kinds. */
function written(event: LogEvent): unknown {
  return JSON.parse(eventLine(event));
}
