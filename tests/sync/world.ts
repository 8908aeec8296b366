import fc from 'fast-check';
import type { LogEvent } from '../../src/core/index.ts';
import { type DeviceLog, eventLine, type HubPage, memoryDeviceLog } from '../../src/store/index.ts';
import { type Called, exchange, type Parties, type Push } from '../../src/sync/index.ts';
import { readAll } from '../store/contract.ts';
import { events } from '../store/sample.ts';
import { calmLine, type Fate, Network, type Planted, SimulatedHub } from './simulated.ts';

/** One step of a world: something a keeper, a phone or a hub does. */
export type Act =
  | { readonly do: 'log'; readonly device: number; readonly count: number }
  | { readonly do: 'sync'; readonly device: number }
  | { readonly do: 'pass'; readonly steps: number }
  | { readonly do: 'backup' | 'restore' };

/** The number of devices in every world. */
export const DEVICES = 3;
const NOW = Date.UTC(2026, 2, 9, 9);

/** Steps in any order. */
export const acts: fc.Arbitrary<readonly Act[]> = fc.array(
  fc.oneof<fc.WeightedArbitrary<Act>[]>(
    { weight: 3, arbitrary: actOf('log', { device: device(), count: fc.integer({ min: 1, max: 5 }) }) },
    { weight: 4, arbitrary: actOf('sync', { device: device() }) },
    { weight: 3, arbitrary: actOf('pass', { steps: fc.integer({ min: 1, max: 8 }) }) },
    { weight: 1, arbitrary: actOf('backup', {}) },
    { weight: 1, arbitrary: actOf('restore', {}) },
  ),
  { maxLength: 40 },
);

function device(): fc.Arbitrary<number> {
  return fc.nat(DEVICES - 1);
}

function actOf<K extends Act['do'], T>(what: K, rest: { [P in keyof T]: fc.Arbitrary<T[P]> }) {
  return fc.record({ do: fc.constant(what), ...rest }) as unknown as fc.Arbitrary<Extract<Act, { do: K }>>;
}

/** The fates of the messages in the order in which they are sent; used round and round. */
export const fates: fc.Arbitrary<readonly Fate[]> = fc.array(
  fc.constantFrom<Fate>('well', 'well', 'well', 'reply late', 'request lost', 'reply lost', 'twice', 'hub full'),
  { minLength: 1, maxLength: 30 },
);

/** Runs a world with faults, then in peace, and says what is wrong in the end; an empty list is the law. */
export async function live(
  steps: readonly Act[],
  given: readonly Fate[],
  scheduler: fc.Scheduler,
  planted: Planted = 'none',
): Promise<readonly string[]> {
  const hub = new SimulatedHub(planted);
  const net = new Network(hub, scheduler, given);
  const logs = Array.from({ length: DEVICES }, (_, at) => spoil(memoryDeviceLog(at), planted));
  const parties = logs.map(
    (log, at): Parties => ({ log, hub: net.lineFor(log, planted), name: `${at}`, now: () => NOW }),
  );
  const logged: LogEvent[] = [];
  const running: Promise<unknown>[] = [];
  for (const step of steps) await act(step);
  await scheduler.waitFor(Promise.all(running));
  net.calm();
  for (let round = 0; round < 3; round++) for (const party of parties) await exchange(party);
  return wrong(hub, logs, logged);

  async function act(step: Act): Promise<void> {
    const party = 'device' in step ? parties[step.device] : undefined;
    if (step.do === 'log' && party !== undefined) logged.push(...(await write(party.log, logged.length, step.count)));
    else if (step.do === 'sync' && party !== undefined) running.push(exchange(party));
    else if (step.do === 'pass') await pass(step.steps);
    else if (step.do === 'backup') hub.backUp();
    else if (step.do === 'restore') await hub.restore();
  }

  async function pass(count: number): Promise<void> {
    for (let n = 0; n < count; n++) {
      await breathe();
      if (scheduler.count() > 0) await scheduler.waitNext(1);
    }
  }
}

/**
 * One schedule by hand, which chance finds too seldom: a page of before a restore arrives in one tab while another tab
 * has begun the new epoch and pushed, but not pulled yet.
 */
export async function lateReply(planted: Planted): Promise<readonly string[]> {
  const hub = new SimulatedHub(planted);
  const logs = [0, 1].map((at) => spoil(memoryDeviceLog(at), planted));
  const [first, second] = logs.map((log): Parties => ({ log, hub: calmLine(hub), name: 'phone', now: () => NOW }));
  if (first === undefined || second === undefined) throw new Error('two devices were made');
  const logged = [...(await write(first.log, 0, 3)), ...(await write(second.log, 3, 3))];
  const late = gate();
  const asked = gate();
  const slow = exchange({ ...first, hub: { ...first.hub, pull: pullLate } });
  await asked.promise;
  await hub.restore();
  await exchange(second);
  await exchange({ ...first, hub: { ...first.hub, push: pushThenLate } });
  for (const party of [first, second, first]) await exchange(party);
  return wrong(hub, logs, logged);

  async function pullLate(after: number, limit: number): Promise<Called<never>> {
    const reply = hub.pull(after, limit);
    asked.resolve();
    await late.promise;
    return reply;
  }

  async function pushThenLate(message: Push): Promise<Called<never>> {
    const reply = await hub.push(message, false);
    if (reply.how !== 'answered') return reply;
    late.resolve();
    await slow;
    return reply;
  }
}

/**
 * Another schedule by hand: the hub took a push and was put back to before it; the device has learned of the new epoch
 * in another tab, and has not sent anew when the old acknowledgement arrives.
 */
export async function lateAcknowledgement(planted: Planted): Promise<readonly string[]> {
  const hub = new SimulatedHub(planted);
  const log = spoil(memoryDeviceLog(0), planted);
  const line = calmLine(hub);
  const party = (changed: Partial<typeof line>): Parties => ({
    log,
    hub: { ...line, ...changed },
    name: 'phone',
    now: () => NOW,
  });
  const logged = await write(log, 0, 3);
  const late = gate();
  const taken = gate();
  const slow = exchange(party({ push: pushLate }));
  await taken.promise;
  await hub.restore();
  // The other tab sends nothing in its old epoch, hears of the new one, and is held up before it sends.
  await exchange(party({ push: pushAfterTheLateOne }));
  await exchange(party({}));
  return wrong(hub, [log], logged);

  async function pushLate(message: Push): Promise<Called<never>> {
    const reply = await hub.push(message, false);
    taken.resolve();
    await late.promise;
    return reply;
  }

  async function pushAfterTheLateOne(message: Push): Promise<Called<never>> {
    if (message.epoch === hub.epoch) {
      late.resolve();
      await slow;
    }
    return hub.push({ ...message, events: message.epoch === hub.epoch ? [] : message.events }, false);
  }
}

/** Lets exchanges run up to their next message. */
async function breathe(): Promise<void> {
  for (let n = 0; n < 40; n++) await Promise.resolve();
}

function gate(): { readonly promise: Promise<void>; readonly resolve: () => void } {
  let resolve = () => {};
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
}

function write(log: DeviceLog, from: number, count: number): Promise<readonly LogEvent[]> {
  return log.log(NOW + from, (stamper) => events(from, from + count).map((draft) => ({ ...draft, ...stamper.next() })));
}

async function wrong(
  hub: SimulatedHub,
  logs: readonly DeviceLog[],
  logged: readonly LogEvent[],
): Promise<readonly string[]> {
  const wanted = logged.map(eventLine).sort();
  const said: string[] = [];
  const compare = (who: string, lines: readonly string[]) => {
    if (lines.join('\n') !== wanted.join('\n')) said.push(`${who} has ${lines.length} of ${wanted.length} events`);
  };
  compare('the hub', hub.rows.map(eventLine).sort());
  for (const [at, log] of logs.entries()) {
    compare(`device ${at}`, (await readAll(log, 7)).map(eventLine).sort());
    const { count } = await log.unsent();
    if (count > 0) said.push(`device ${at} has ${count} events unsent`);
    if ((await log.parked()).length + (await log.refused()).length > 0) said.push(`device ${at} put events aside`);
  }
  return said;
}

function spoil(log: DeviceLog, planted: Planted): DeviceLog {
  const applyPage = async (page: HubPage, nowMs: number) => {
    const { hubCursor, epoch } = await log.device();
    if (planted === 'stale page accepted')
      return log.applyPage({ ...page, after: hubCursor, epoch: epoch ?? '' }, nowMs);
    return log.applyPage(page.next % 2 === 0 ? { ...page, events: [] } : page, nowMs);
  };
  const clearOutbox: DeviceLog['clearOutbox'] = async (_epoch, ids, refused) =>
    log.clearOutbox((await log.device()).epoch, ids, refused);
  const spoilt = new Map<Planted, Partial<DeviceLog>>([
    ['stale page accepted', { applyPage }],
    ['cursor moved without its events', { applyPage }],
    ['stale acknowledgement accepted', { clearOutbox }],
  ]).get(planted);
  if (spoilt === undefined) return log;
  return new Proxy(log, {
    get(target, name) {
      if (Reflect.has(spoilt, name)) return Reflect.get(spoilt, name);
      const found: unknown = Reflect.get(target, name);
      return typeof found === 'function' ? found.bind(target) : found;
    },
  });
}
