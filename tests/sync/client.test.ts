import { describe, expect, test } from 'vitest';
import { problem } from '../../src/core/index.ts';
import { type DeviceLog, eventLine, LogFailure, memoryDeviceLog, memoryLog } from '../../src/store/index.ts';
import {
  answerPush,
  exchange,
  type Fetch,
  hubOver,
  pageLimit,
  type SyncState,
  syncClient,
} from '../../src/sync/index.ts';
import { ids, readAll } from '../store/contract.ts';
import { data, event, events, idOf } from '../store/sample.ts';

const NOW = Date.UTC(2026, 2, 9, 9);

/** A hub behind a `fetch`, with a switch for its network and room for rows that it should not hold. */
function hubBehindFetch(rows: unknown[] = []) {
  const log = memoryLog();
  const state = { up: true, status: 200, calls: 0, bytes: 0 };
  const fetch: Fetch = async (url, init) => {
    state.calls += 1;
    if (!state.up) throw new TypeError('network is down');
    if (state.status !== 200) return new Response('{}', { status: state.status });
    const { pathname, searchParams } = new URL(url);
    const body = typeof init.body === 'string' ? init.body : '';
    state.bytes = Math.max(state.bytes, body.length);
    if (pathname === '/enrol') return Response.json({ device: 4, site: 'Fernhollow', epoch: 'e1' });
    if (pathname === '/push') {
      const before = await log.head();
      const reply = await answerPush(log, 'e1', JSON.parse(body));
      rows.push(...(await log.read(before, 500)).events.map((one) => JSON.parse(eventLine(one))));
      return Response.json(reply.body, { status: reply.status });
    }
    const after = Number(searchParams.get('after'));
    const page = rows.slice(after, after + pageLimit(Number(searchParams.get('limit'))));
    return Response.json({ epoch: 'e1', after, rows: page, next: after + page.length, head: rows.length });
  };
  return { state, rows, hub: hubOver(fetch, 'http://hub.local') };
}

function client(log: DeviceLog, hub = hubBehindFetch()) {
  return { ...hub, sync: syncClient({ log, hub: hub.hub, name: 'phone', now: () => NOW }) };
}

describe('the sync client', () => {
  test('says how it stands: online, nothing unsent, when the hub was last heard', async () => {
    const log = memoryDeviceLog(1);
    await log.append(events(0, 3));
    expect(await client(log).sync.syncNow()).toEqual({
      link: 'online',
      unsent: 0,
      oldestUnsentAt: null,
      lastSeenMs: NOW,
      problem: null,
    });
    expect((await log.device()).number).toBe(4);
  });

  test('offline it counts what is unsent, and sends it when the hub is back', async () => {
    const log = memoryDeviceLog(1);
    const { sync, state, rows } = client(log);
    state.up = false;
    await log.append(events(0, 3));
    expect(await sync.syncNow()).toMatchObject({
      link: 'offline',
      unsent: 3,
      oldestUnsentAt: event(0).at,
      lastSeenMs: null,
      problem: { code: 'hub-unreachable' },
    });
    state.up = true;
    expect(await sync.syncNow()).toMatchObject({ link: 'online', unsent: 0 });
    expect(rows).toHaveLength(3);
  });

  test.each([
    [503, 'hub-refused'],
    [401, 'hub-refused'],
    [404, 'hub-refused'],
  ])('a hub that answers %i keeps everything here', async (status, code) => {
    const log = memoryDeviceLog(1);
    const { sync, state } = client(log);
    state.status = status;
    await log.append(events(0, 3));
    expect(await sync.syncNow()).toMatchObject({ link: 'offline', unsent: 3, problem: { code } });
  });

  test.each(['{}', '[]', '"x"', 'no json', '{"epoch":7,"after":0,"rows":[],"next":0,"head":0}'])(
    'an answer such as %s is a problem, not a crash',
    async (text) => {
      const hub = hubOver(async () => new Response(text));
      const done = await exchange({ log: memoryDeviceLog(1), hub, name: 'phone', now: () => NOW });
      expect(done.ok).toBe(false);
    },
  );

  test('a row that cannot be read is counted and passed over, the others come in', async () => {
    const log = memoryDeviceLog(1);
    const { hub } = hubBehindFetch([data({ n: 1 }), { id: 7 }, data({ n: 2 })]);
    const done = await exchange({ log, hub, name: 'phone', now: () => NOW });
    expect(done).toEqual({ ok: true, value: { sent: 0, received: 2, unreadable: 1 } });
    expect(ids(await readAll(log, 10))).toEqual([idOf(1), idOf(2)]);
    expect((await log.device()).hubCursor).toBe(3);
  });

  test('long notes go in several messages, each below a megabyte', async () => {
    const log = memoryDeviceLog(1);
    const words = 'ü'.repeat(2000);
    await log.append(Array.from({ length: 500 }, (_, n) => event({ n, kind: 'note-made', payload: { words } })));
    const { sync, state, rows } = client(log);
    expect(await sync.syncNow()).toMatchObject({ unsent: 0 });
    expect(rows).toHaveLength(500);
    expect(Buffer.byteLength('ü') * state.bytes).toBeLessThan(2_000_000);
    expect(state.bytes).toBeLessThan(1_000_000);
  });

  test('an event that the hub has with other content is put aside in sight', async () => {
    const other = hubBehindFetch();
    const first = memoryDeviceLog(1);
    const second = memoryDeviceLog(2);
    await first.append([event(1)]);
    await second.append([event({ n: 1, payload: { weightG: 9 } }), event(2)]);
    await client(first, other).sync.syncNow();
    expect(await client(second, other).sync.syncNow()).toMatchObject({ link: 'online', unsent: 0 });
    expect(await second.refused()).toEqual([{ id: idOf(1), code: 'event-clash' }]);
    expect(await second.parked()).toEqual([event(1)]);
  });

  test('a device that is full says so and goes on when there is room', async () => {
    let full = true;
    const log = memoryDeviceLog(1);
    const limited: DeviceLog = new Proxy(log, {
      get(target, name) {
        if (name === 'applyPage' && full) return () => Promise.reject(new LogFailure(problem('storage-full')));
        const found: unknown = Reflect.get(target, name);
        return typeof found === 'function' ? found.bind(target) : found;
      },
    });
    const { sync } = client(limited, hubBehindFetch([data({ n: 1 })]));
    expect(await sync.syncNow()).toMatchObject({ problem: { code: 'storage-full' } });
    full = false;
    expect(await sync.syncNow()).toMatchObject({ link: 'online', problem: null });
    expect(await log.head()).toBe(1);
  });

  test('two calls at once share one exchange', async () => {
    const { sync, state } = client(memoryDeviceLog(1));
    await Promise.all([sync.syncNow(), sync.syncNow()]);
    expect(state.calls).toBe(2);
  });

  test('started it goes on by itself until it is stopped, and tells its listeners', async () => {
    const log = memoryDeviceLog(1);
    const { hub, rows } = hubBehindFetch();
    const sync = syncClient({ log, hub, name: 'phone', now: () => NOW }, { restMs: 5, longestMs: 20 });
    const heard: SyncState[] = [];
    const deaf = sync.listen((state) => heard.push(state));
    sync.start();
    await log.append([event(1)]);
    await until(() => rows.length === 1);
    await log.append([event(2)]);
    await until(() => rows.length === 2);
    sync.stop();
    await sync.syncNow();
    const count = heard.length;
    await log.append([event(3)]);
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(rows).toHaveLength(2);
    expect(heard).toHaveLength(count);
    deaf();
  });
});

async function until(isSo: () => boolean): Promise<void> {
  for (let n = 0; n < 400 && !isSo(); n++) await new Promise((resolve) => setTimeout(resolve, 5));
  expect(isSo()).toBe(true);
}
