import {
  type Clock,
  ENROLLED,
  hear,
  type Id,
  type LogEvent,
  mintId,
  mintUnenrolledId,
  type Result,
  tick,
} from '../core/index.ts';

/** Who a device is, and how far its own numbers have come. */
export interface Identity {
  /** The hub's number for it, or 17 random bits while no hub has enrolled it. */
  readonly number: number;
  readonly enrolled: boolean;
  /** The sequence number of its last event. */
  readonly seq: number;
  /** How many ids it has minted. */
  readonly counter: number;
  readonly clock: Clock;
}

/** What goes into the envelope of one event. */
export interface Stamp {
  readonly device: number;
  readonly seq: number;
  readonly clock: Clock;
}

/** Hands out stamps and ids inside one transaction. */
export interface Stamper {
  /** The stamp of one more event. */
  next(): Stamp;
  /** A new printed id. Errors: `counter-spent`. */
  mint(): Result<Id>;
}

/** A clock further ahead than this is not followed: one wrong phone must not drag the site into the future. */
const FOLLOW_MS = 24 * 3600 * 1000;

/** A stamper and a look at the identity that results from what it handed out. */
export function startStamping(identity: Identity, nowMs: number): { stamper: Stamper; result(): Identity } {
  let { seq, counter, clock } = identity;
  const device = deviceOf(identity);
  const mint = identity.enrolled ? mintId : mintUnenrolledId;
  const stamper: Stamper = {
    next() {
      seq += 1;
      clock = tick(clock, nowMs);
      return { device, seq, clock };
    },
    mint() {
      const minted = mint(identity.number, counter);
      counter += 1;
      return minted;
    },
  };
  return { stamper, result: () => ({ ...identity, seq, counter, clock }) };
}

/** The number in a device's events; devices without a hub have theirs above all that hubs give. */
export function deviceOf(identity: Identity): number {
  return identity.enrolled ? identity.number : ENROLLED.devices + identity.number;
}

/** The clock after reading other devices' events. */
export function hearAll(mine: Clock, events: readonly LogEvent[], nowMs: number): Clock {
  const limit = nowMs + FOLLOW_MS;
  return events.reduce<Clock>(
    (clock, { clock: heard }) => (heard[0] > limit ? clock : later(clock, heard, nowMs)),
    mine,
  );
}

function later(mine: Clock, heard: Clock, nowMs: number): Clock {
  const behind = mine[0] > heard[0] || (mine[0] === heard[0] && mine[1] > heard[1]);
  return behind ? mine : hear(mine, heard, nowMs);
}
