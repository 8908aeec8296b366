import type fc from 'fast-check';
import { type EventId, type LogEvent, problem } from '../../src/core/index.ts';
import { type DeviceLog, eventLine, LogFailure, memoryLog } from '../../src/store/index.ts';
import { answerPush, type Called, type Hub, type Push, pageLimit } from '../../src/sync/index.ts';

/** What happens to one message on its way. */
export type Fate = 'well' | 'reply late' | 'request lost' | 'reply lost' | 'twice' | 'hub full';

/** A fault that is put in on purpose, to see that the law would notice it. */
export type Planted =
  | 'none'
  | 'outbox cleared on sending'
  | 'stale page accepted'
  | 'stale acknowledgement accepted'
  | 'old epoch kept after a restore'
  | 'acknowledged before it is stored'
  | 'cursor moved without its events'
  | 'hub stores twice';

/** So many times a late reply is passed over by what was sent after it. */
const LATE = 12;

/** A hub with the hub's own rules, in memory, that can be put back to a backup. */
export class SimulatedHub {
  readonly #planted: Planted;
  #log = memoryLog();
  #epoch = 1;
  #devices = 0;
  #backup: readonly LogEvent[] = [];
  #last: Promise<unknown> = Promise.resolve();
  rows: LogEvent[] = [];

  constructor(planted: Planted) {
    this.#planted = planted;
  }

  get epoch(): string {
    return `e${this.#epoch}`;
  }

  backUp(): void {
    this.#backup = [...this.rows];
  }

  /** Puts the backup back, between two pushes: a hub is stopped for it. */
  restore(): Promise<void> {
    return this.#alone(() => this.#putBack());
  }

  async #putBack(): Promise<void> {
    if (this.#planted !== 'old epoch kept after a restore') this.#epoch += 1;
    this.#log = memoryLog();
    this.rows = [...this.#backup];
    await this.#log.append(this.rows);
  }

  enrol(): Called<{ device: number; site: string; epoch: string }> {
    this.#devices += 1;
    return { how: 'answered', value: { device: this.#devices, site: 'Fernhollow', epoch: this.epoch } };
  }

  push(message: Push, full: boolean): Promise<Called<never>> {
    return this.#alone(() => this.#take(message, full));
  }

  async #take(message: Push, full: boolean): Promise<Called<never>> {
    const store = { append: (batch: readonly LogEvent[]) => this.#append(batch, full), head: () => this.#log.head() };
    const reply = await answerPush(store, this.epoch, JSON.parse(JSON.stringify(message)));
    if (reply.status === 200) return { how: 'answered', value: reply.body as never };
    if (reply.status === 409) return { how: 'other-epoch', epoch: reply.body.epoch };
    return { how: 'failed', problem: reply.body.problem };
  }

  pull(after: number, limit: number): Called<never> {
    const rows = this.rows.slice(after, after + Math.min(pageLimit(limit), 3));
    const head = this.rows.length;
    const page = { epoch: this.epoch, after, rows: rows.map((row) => JSON.parse(eventLine(row))), head };
    return { how: 'answered', value: { ...page, next: Math.min(after + rows.length, Math.max(head, after)) } as never };
  }

  #alone<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#last.then(work);
    this.#last = done;
    return done;
  }

  async #append(batch: readonly LogEvent[], full: boolean) {
    if (full && this.#planted === 'acknowledged before it is stored') return { stored: 0, known: 0, clashes: [] };
    if (full) throw new LogFailure(problem('storage-full'));
    const before = await this.#log.head();
    const appended = await this.#log.append(batch);
    const fresh = (await this.#log.read(before, batch.length)).events;
    this.rows.push(...(this.#planted === 'hub stores twice' ? batch : fresh));
    return appended;
  }
}

/** Between devices and hub: every message waits until the schedule lets it through, and meets its fate. */
export class Network {
  readonly #hub: SimulatedHub;
  readonly #scheduler: fc.Scheduler;
  readonly #fates: readonly Fate[];
  #sent = 0;
  #calm = false;

  constructor(hub: SimulatedHub, scheduler: fc.Scheduler, given: readonly Fate[]) {
    this.#hub = hub;
    this.#scheduler = scheduler;
    this.#fates = given;
  }

  calm(): void {
    this.#calm = true;
  }

  lineFor(log: DeviceLog, planted: Planted): Hub {
    const push = async (message: Push): Promise<Called<never>> => {
      const ids = message.events.map((sent) => (sent as { id: EventId }).id);
      if (planted === 'outbox cleared on sending') await log.clearOutbox(message.epoch, ids);
      return this.#carry('push', (full) => this.#hub.push(message, full));
    };
    return {
      push,
      enrol: () => this.#carry('enrol', async () => this.#hub.enrol() as Called<never>),
      pull: (after, limit) => this.#carry('pull', async () => this.#hub.pull(after, limit)),
    };
  }

  async #carry(what: string, deliver: (full: boolean) => Promise<Called<never>>): Promise<Called<never>> {
    if (this.#calm) return deliver(false);
    const fate = this.#fates[this.#sent++ % this.#fates.length] ?? 'well';
    const lost: Called<never> = { how: 'failed', problem: problem('hub-unreachable', { why: fate }) };
    await this.#wait(`${what} to the hub`);
    if (fate === 'request lost') return lost;
    const reply = await deliver(fate === 'hub full');
    if (fate === 'twice') await deliver(false);
    for (let n = fate === 'reply late' ? LATE : 1; n > 0; n--) await this.#wait(`${what} back`);
    return fate === 'reply lost' ? lost : reply;
  }

  #wait(label: string): Promise<unknown> {
    return this.#scheduler.schedule(Promise.resolve(), label);
  }
}

/** The hub as a device sees it when nothing goes wrong on the way. */
export function calmLine(hub: SimulatedHub): Hub {
  return {
    enrol: async () => hub.enrol() as Called<never>,
    push: (message) => hub.push(message, false),
    pull: async (after, limit) => hub.pull(after, limit),
  };
}
