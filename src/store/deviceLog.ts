import type { EventId, LogEvent, ProblemCode } from '../core/index.ts';
import type { Cursor, EventLog } from './eventLog.ts';
import type { Identity, Stamper } from './stamp.ts';

/** What a device knows of itself and of its hub; all of it is durable. */
export interface DeviceState extends Identity {
  /** The site's name as the hub gave it; null before enrolment. */
  readonly site: string | null;
  /** The hub's epoch; null before the first contact. */
  readonly epoch: string | null;
  /** How far this device has come in the hub's order. */
  readonly hubCursor: Cursor;
}

/** What a hub gives a device that enrols. */
export interface Enrolment {
  readonly device: number;
  readonly site: string;
  readonly epoch: string;
}

/** A page of the hub's order, read on from `after`. */
export interface HubPage {
  readonly epoch: string;
  readonly after: Cursor;
  readonly events: readonly LogEvent[];
  readonly next: Cursor;
}

/** An event that the hub would not take; it stays here, in sight. */
export interface Refusal {
  readonly id: EventId;
  readonly code: ProblemCode;
}

/** What waits to be sent. */
export interface Unsent {
  readonly count: number;
  /** The instant of the oldest of them, RFC 3339 in UTC. */
  readonly oldestAt: string | null;
}

/** The fold of the log up to a cursor of this device's own order; `version` is the fold's. */
export interface Snapshot {
  readonly cursor: Cursor;
  readonly version: number;
  readonly json: string;
}

/**
 * The log of one device: an {@link EventLog} with an outbox, a device number and a snapshot. Whatever came by `append`
 * or `log` waits in the outbox until the hub has acknowledged it; what came by `applyPage` does not.
 */
export interface DeviceLog extends EventLog {
  /** Stamps, stores and queues in one transaction; an empty list writes nothing. Gives back what was written. */
  log(nowMs: number, write: (stamp: Stamper) => readonly LogEvent[]): Promise<readonly LogEvent[]>;
  /** The oldest unsent events. */
  outbox(limit: number): Promise<readonly LogEvent[]>;
  unsent(): Promise<Unsent>;
  /**
   * Takes acknowledged events out of the outbox, and refused ones aside. Nothing happens when the device has begun
   * another epoch since it sent them: the hub that answered may have lost them again.
   */
  clearOutbox(epoch: string | null, ids: readonly EventId[], refused?: readonly Refusal[]): Promise<void>;
  refused(): Promise<readonly Refusal[]>;
  /** Stores events and hub cursor in one transaction; `stale` when the page does not continue what is here. */
  applyPage(page: HubPage, nowMs: number): Promise<'applied' | 'stale'>;
  /** Takes on the hub's device number: its ids and sequence start afresh, all that is here will be offered. */
  enrol(enrolment: Enrolment): Promise<void>;
  /** The hub began anew: the cursor goes back to 0 and all that is here will be offered. */
  startEpoch(epoch: string): Promise<void>;
  device(): Promise<DeviceState>;
  /** The last snapshot of this version; null when there is none or when it does not fit its own hash. */
  readSnapshot(version: number): Promise<Snapshot | null>;
  writeSnapshot(snapshot: Snapshot): Promise<void>;
  /** Packs the recent events away by subject; gives how many. Nothing that can be asked changes. */
  compact(): Promise<number>;
}
