import type { EventId, LogEvent } from '../../core/index.ts';
import type { DeviceLog, DeviceState, Enrolment, HubPage, Refusal, Snapshot, Unsent } from '../deviceLog.ts';
import type { Appended, Cursor } from '../eventLog.ts';
import { addRange, countOf, dropNumbers, type Range } from '../ranges.ts';
import { hearAll, type Stamper, startStamping } from '../stamp.ts';
import { MemoryLog } from './memoryLog.ts';

/** A device's log in memory; `randomBits` are the 17 bits that tell it from other devices without a hub. */
export function memoryDeviceLog(randomBits: number): DeviceLog {
  return new MemoryDeviceLog(randomBits);
}

class MemoryDeviceLog extends MemoryLog implements DeviceLog {
  #state: DeviceState;
  #unsent: readonly Range[] = [];
  #snapshot: Snapshot | null = null;
  readonly #refused = new Map<EventId, Refusal>();

  constructor(randomBits: number) {
    super();
    this.#state = {
      number: randomBits,
      enrolled: false,
      seq: 0,
      counter: 0,
      clock: [0, 0],
      site: null,
      epoch: null,
      hubCursor: 0,
    };
  }

  override async append(events: readonly LogEvent[]): Promise<Appended> {
    return this.#queue(events);
  }

  async log(nowMs: number, write: (stamp: Stamper) => readonly LogEvent[]): Promise<readonly LogEvent[]> {
    const { stamper, result } = startStamping(this.#state, nowMs);
    const events = write(stamper);
    if (events.length === 0) return events;
    this.#queue(events);
    this.#state = { ...this.#state, ...result() };
    return events;
  }

  async outbox(limit: number): Promise<readonly LogEvent[]> {
    const events: LogEvent[] = [];
    for (const { after, until } of this.#unsent) {
      const room = Math.min(limit - events.length, until - after);
      if (room > 0) events.push(...(await this.read(after, room)).events);
    }
    return events;
  }

  async unsent(): Promise<Unsent> {
    const [oldest] = await this.outbox(1);
    return { count: countOf(this.#unsent), oldestAt: oldest?.at ?? null };
  }

  async clearOutbox(epoch: string | null, ids: readonly EventId[], refused: readonly Refusal[] = []): Promise<void> {
    if (epoch !== this.#state.epoch) return;
    for (const refusal of refused) this.#refused.set(refusal.id, refusal);
    const settled = [...ids, ...refused.map(({ id }) => id)];
    const numbers = settled.map((id) => this.numberOf(id)).filter((number): number is Cursor => number !== undefined);
    this.#unsent = dropNumbers(this.#unsent, numbers);
  }

  async refused(): Promise<readonly Refusal[]> {
    return [...this.#refused.values()];
  }

  async applyPage(page: HubPage, nowMs: number): Promise<'applied' | 'stale'> {
    const { epoch, hubCursor, clock } = this.#state;
    if (page.epoch !== epoch || page.after !== hubCursor) return 'stale';
    this.appendNow(page.events);
    this.#state = { ...this.#state, hubCursor: page.next, clock: hearAll(clock, page.events, nowMs) };
    return 'applied';
  }

  async enrol({ device, site, epoch }: Enrolment): Promise<void> {
    this.#state = { ...this.#state, number: device, enrolled: true, seq: 0, counter: 0, site };
    await this.startEpoch(epoch);
  }

  async startEpoch(epoch: string): Promise<void> {
    this.#state = { ...this.#state, epoch, hubCursor: 0 };
    this.#unsent = addRange([], { after: 0, until: this.size });
  }

  async device(): Promise<DeviceState> {
    return this.#state;
  }

  async readSnapshot(version: number): Promise<Snapshot | null> {
    return this.#snapshot?.version === version ? this.#snapshot : null;
  }

  async writeSnapshot(snapshot: Snapshot): Promise<void> {
    this.#snapshot = snapshot;
  }

  async compact(): Promise<number> {
    return 0;
  }

  #queue(events: readonly LogEvent[]): Appended {
    const before = this.size;
    const appended = this.appendNow(events);
    this.#unsent = addRange(this.#unsent, { after: before, until: this.size });
    return appended;
  }
}
