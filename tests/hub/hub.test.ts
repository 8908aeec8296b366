import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { request as httpRequest } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type HubOptions, type RunningHub, restoreData, startHub } from '../../src/hub/index.ts';
import { checkFile } from '../../src/store/file/index.ts';
import { memoryDeviceLog, writeLog } from '../../src/store/index.ts';
import { exchange, hubOver, type Pulled, type Pushed } from '../../src/sync/index.ts';
import { ids, readAll } from '../store/contract.ts';
import { data, event, events, idOf } from '../store/sample.ts';
import { bundleForNode } from '../tools/bundle.ts';

let folder: string;
let appDir: string;
let dataDir: string;
let hub: RunningHub;
let count = 0;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tubwright-hub-'));
  appDir = join(folder, 'app');
  await mkdir(join(appDir, 'assets'), { recursive: true });
  const files = {
    'index.html': '<!doctype html><title>Tubwright</title>',
    'app.webmanifest': '{}',
    'assets/app-1a2b3c4d.js': 'export const a = 1;'.repeat(200),
    'assets/read-9z8y7x6w.wasm': '\0asm',
    'assets/type-abcdefgh.ttf': 'ttf',
    'assets/type-abcdefgh.woff2': 'woff2',
  };
  for (const [name, text] of Object.entries(files)) await writeFile(join(appDir, name), text);
  await writeFile(join(folder, 'secret.txt'), 'secret');
});
afterAll(() => rm(folder, { recursive: true, force: true }));

beforeEach(async () => {
  dataDir = join(folder, `data-${count++}`);
  hub = await start();
  return () => hub.close();
});

function start(more: Partial<HubOptions> = {}): Promise<RunningHub> {
  return startHub({ port: 0, dataDir, appDir, ...more });
}

async function restart(): Promise<void> {
  await hub.close();
  hub = await start();
}

async function json<T>(path: string, init?: RequestInit): Promise<T> {
  return (await (await fetch(hub.url + path, init)).json()) as T;
}

function post(path: string, body: unknown, headers: Record<string, string> = {}): Promise<Response> {
  const text = typeof body === 'string' ? body : JSON.stringify(body);
  return fetch(hub.url + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: text,
  });
}

const epoch = async () => (await json<{ epoch: string }>('/health')).epoch;
const push = async (...list: unknown[]) =>
  (await post('/push', { epoch: await epoch(), events: list })).json() as Promise<Pushed>;
const pull = (after = 0, limit = 5000) => json<Pulled>(`/pull?after=${after}&limit=${limit}`);

describe('push and pull', () => {
  test('what one device pushes another pulls, in order', async () => {
    expect(await push(data({ n: 1 }), data({ n: 2 }))).toMatchObject({
      ack: [idOf(1), idOf(2)],
      rejected: [],
      head: 2,
    });
    const page = await pull();
    expect(page).toEqual({ epoch: await epoch(), after: 0, rows: [data({ n: 1 }), data({ n: 2 })], next: 2, head: 2 });
    expect(await pull(2)).toMatchObject({ after: 2, rows: [], next: 2, head: 2 });
  });

  test('the same push twice is acknowledged twice and stored once', async () => {
    const first = await push(data({ n: 1 }));
    expect(await push(data({ n: 1 }))).toEqual(first);
    expect((await pull()).rows).toHaveLength(1);
  });

  test('a page holds what was asked for and at most 5,000', async () => {
    for (let n = 0; n < 5500; n += 500) await push(...events(n, n + 500));
    expect((await pull(0, 100)).rows).toHaveLength(100);
    expect(await pull(0, 999_999)).toMatchObject({ next: 5000, head: 5500 });
    expect((await pull(5000)).rows).toHaveLength(500);
  });

  test('a page comes packed for who accepts that, and smaller', async () => {
    await push(...events(0, 500));
    const packed = await fetch(`${hub.url}/pull`, { headers: { 'accept-encoding': 'gzip' } });
    const plain = await fetch(`${hub.url}/pull`, { headers: { 'accept-encoding': 'identity' } });
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    expect(plain.headers.get('content-encoding')).toBeNull();
    const size = (response: Response) => Number(response.headers.get('content-length'));
    expect(size(packed) * 4).toBeLessThan(size(plain));
    expect(await packed.json()).toEqual(await plain.json());
  });

  test('the same id with other content is refused, and both are kept', async () => {
    await push(data({ n: 1 }));
    const other = { ...data({ n: 1 }), keeper: 'Bo' };
    const refused = await push(other, data({ n: 2 }));
    expect(refused).toMatchObject({ ack: [idOf(2)], rejected: [{ id: idOf(1), code: 'event-clash' }] });
    expect((await pull()).rows).toEqual([data({ n: 1 }), data({ n: 2 })]);
    expect(await readFile(join(dataDir, 'events.ndjson.parked'), 'utf8')).toContain('"keeper":"Bo"');
  });

  test('a malformed event is refused, the rest of its push is stored', async () => {
    const broken = { ...data({ n: 1 }), day: 'soon' };
    expect(await push(broken, data({ n: 2 }))).toMatchObject({
      ack: [idOf(2)],
      rejected: [{ id: idOf(1), code: 'event-malformed' }],
    });
  });

  test('an unknown kind is stored and relayed letter for letter', async () => {
    const strange = { ...data({ n: 1, kind: 'moon-seen', payload: { b: [1, null], a: 'ß' } }), v: 7, witness: 'Bo' };
    await push(strange);
    expect((await pull()).rows).toEqual([strange]);
  });

  test('a push of another epoch is told the present one', async () => {
    const reply = await post('/push', { epoch: 'old', events: [data({ n: 1 })] });
    expect(reply.status).toBe(409);
    expect(await reply.json()).toMatchObject({ epoch: await epoch(), problem: { code: 'epoch-changed' } });
    expect((await pull()).head).toBe(0);
  });

  test('two devices come to the same log over real HTTP', async () => {
    const logs = [memoryDeviceLog(1), memoryDeviceLog(2)];
    const parties = logs.map((log, at) => ({ log, hub: hubOver(fetch, hub.url), name: `phone ${at}`, now: Date.now }));
    await logs[0]?.append(events(0, 1200));
    await logs[1]?.append(events(1000, 1300));
    for (const one of [...parties, ...parties]) expect(await exchange(one)).toMatchObject({ ok: true });
    const all = new Set(ids(events(0, 1300)));
    for (const log of logs) expect(new Set(ids(await readAll(log, 500)))).toEqual(all);
    expect(await logs[1]?.unsent()).toEqual({ count: 0, oldestAt: null });
  });
});

describe('enrolment', () => {
  test('gives every device a number of its own, also after a restart', async () => {
    const enrol = async (name: string) => (await post('/enrol', { name })).json() as Promise<{ device: number }>;
    const numbers = [(await enrol('a')).device, (await enrol('a')).device];
    numbers.push(...(await Promise.all(['c', 'd', 'e'].map(enrol))).map(({ device }) => device));
    await restart();
    numbers.push((await enrol('f')).device);
    expect(new Set(numbers).size).toBe(6);
  });

  test('never gives a number that an event carries already', async () => {
    await push(data({ n: 1, device: 41 }), data({ n: 2, device: 90_000 }));
    expect(await (await post('/enrol', { name: 'a' })).json()).toMatchObject({ device: 42 });
  });

  test('ends in words when the numbers are spent', async () => {
    await push(data({ n: 1, device: 1023 }));
    const reply = await post('/enrol', { name: 'a' });
    expect(reply.status).toBe(503);
    expect(await reply.json()).toMatchObject({ problem: { code: 'device-number' } });
  });

  test('says the site’s name, from the latest event that gave one', async () => {
    await push(data({ n: 1, kind: 'site-named', payload: { name: 'Fernhollow', timeZone: 'Europe/Berlin' } }));
    expect(await (await post('/enrol', { name: 'a' })).json()).toMatchObject({ site: 'Fernhollow' });
  });
});

describe('bad requests', () => {
  test.each([
    ['no JSON', '{"epoch":', 400],
    ['no push', '{"events":7}', 400],
    ['another epoch', '{"epoch":"e","events":[]}', 409],
    ['501 events', JSON.stringify({ epoch: 'e', events: Array(501).fill(1) }), 400],
    ['a million levels', `${'['.repeat(450_000)}${']'.repeat(450_000)}`, 400],
    ['more than a megabyte', JSON.stringify({ epoch: 'e', events: ['x'.repeat(1_000_001)] }), 413],
  ])('a body with %s is refused', async (_what, body, status) => {
    expect((await post('/push', body)).status).toBe(status);
    expect((await json<{ ok: boolean }>('/health')).ok).toBe(true);
  });

  test('an event without an id to answer to makes its push malformed, and nothing of it is stored', async () => {
    const reply = await post('/push', { epoch: await epoch(), events: [data({ n: 1 }), { kind: 'opaque-seen' }] });
    expect([reply.status, (await pull()).head]).toEqual([400, 0]);
  });

  test('a body that never says its length is cut off at a megabyte', async () => {
    const status = await new Promise((resolve, reject) => {
      const sending = httpRequest(`${hub.url}/push`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
      });
      sending.once('response', ({ statusCode }) => resolve(statusCode));
      sending.once('error', reject);
      for (let n = 0; n < 11; n++) sending.write('x'.repeat(100_000));
    });
    expect(status).toBe(413);
  });

  test('an event with a key __proto__ is refused and changes no prototype', async () => {
    const hostile = JSON.stringify(data({ n: 1, kind: 'moon-seen', payload: 0 })).replace(
      '"payload":0',
      '"payload":{"__proto__":{"polluted":1}},"__proto__":{"polluted":1}',
    );
    const reply = await post('/push', `{"epoch":"${await epoch()}","events":[${hostile}],"__proto__":{"polluted":1}}`);
    expect(await reply.json()).toMatchObject({ ack: [], rejected: [{ id: idOf(1), code: 'event-malformed' }] });
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
  });

  test.each([
    ['a form', { 'content-type': 'text/plain' }, 415],
    ['a packed body', { 'content-encoding': 'gzip' }, 415],
    ['another origin', { origin: 'https://elsewhere.example' }, 403],
    ['a page of another site', { 'sec-fetch-site': 'cross-site' }, 403],
    ['an origin that is none', { origin: 'null' }, 403],
  ])('a push as %s is refused', async (_what, headers, status) => {
    expect((await post('/push', { epoch: 'e', events: [] }, headers)).status).toBe(status);
  });

  test('a foreign name for our address is refused, the app’s own origin is not', async () => {
    const asked = (host: string) =>
      new Promise((resolve) => {
        httpRequest(`${hub.url}/pull`, { headers: { host } }, ({ statusCode }) => resolve(statusCode)).end();
      });
    expect(await asked('elsewhere.example')).toBe(403);
    expect(await asked('localhost:1')).toBe(200);
    expect((await post('/push', { epoch: 'e', events: [] }, { origin: hub.url })).status).toBe(409);
  });

  test.each(['/pull?after=-1', '/pull?after=x', '/pull?limit=1e3', '/pull?after=99999999999999999999'])(
    '%s is refused in words',
    async (path) => {
      expect(await json(path)).toMatchObject({ problem: { code: 'message-malformed' } });
    },
  );

  test('a wrong method is told the right one', async () => {
    const reply = await fetch(`${hub.url}/push`);
    expect([reply.status, reply.headers.get('allow')]).toEqual([405, 'POST']);
    expect((await fetch(`${hub.url}/`, { method: 'DELETE' })).status).toBe(405);
  });

  test.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%5c..%5csecret.txt',
    '/assets/../../secret.txt',
    '//secret.txt',
    '/%00secret.txt',
    '/%ff',
    'http://elsewhere.example/secret.txt',
  ])('the path %s leads nowhere', async (path) => {
    const reply = await raw(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n`);
    expect(reply).toMatch(/^HTTP\/1\.1 (404|400) /);
    expect(reply).not.toContain('\r\n\r\nsecret');
  });
});

describe('the app', () => {
  test.each([
    ['/', 'text/html; charset=utf-8', 'no-cache'],
    ['/a/7RMBN615', 'text/html; charset=utf-8', 'no-cache'],
    ['/app.webmanifest', 'application/manifest+json; charset=utf-8', 'no-cache'],
    ['/assets/app-1a2b3c4d.js', 'text/javascript; charset=utf-8', 'public, max-age=31536000, immutable'],
    ['/assets/read-9z8y7x6w.wasm', 'application/wasm', 'public, max-age=31536000, immutable'],
    ['/assets/type-abcdefgh.ttf', 'font/ttf', 'public, max-age=31536000, immutable'],
    ['/assets/type-abcdefgh.woff2', 'font/woff2', 'public, max-age=31536000, immutable'],
  ])('%s is served as %s, %s', async (path, type, cache) => {
    const reply = await fetch(hub.url + path);
    expect([reply.status, reply.headers.get('content-type'), reply.headers.get('cache-control')]).toEqual([
      200,
      type,
      cache,
    ]);
  });

  test('a file that is not there is not the start page', async () => {
    expect((await fetch(`${hub.url}/assets/gone-1a2b3c4d.js`)).status).toBe(404);
  });

  test('what the browser has already is not sent again', async () => {
    const tag = (await fetch(`${hub.url}/`)).headers.get('etag') ?? '';
    expect((await fetch(`${hub.url}/`, { headers: { 'if-none-match': tag } })).status).toBe(304);
  });

  test('every reply forbids scripts from elsewhere, frames and guessing types', async () => {
    for (const path of ['/', '/health', '/pull', '/nowhere.js']) {
      const { headers } = await fetch(hub.url + path);
      expect(headers.get('content-security-policy')).toContain(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'",
      );
      expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
    }
  });

  test('that is not built says how to build it', async () => {
    await hub.close();
    hub = await start({ appDir: join(folder, 'nowhere') });
    const reply = await fetch(`${hub.url}/`);
    expect([reply.status, await reply.text()]).toEqual([404, expect.stringContaining('npm run build')]);
  });
});

describe('data', () => {
  test('a restart keeps every event, the epoch and the order', async () => {
    await push(...events(0, 50));
    const before = await pull();
    await restart();
    expect(await pull()).toEqual(before);
    expect(await push(data({ n: 3 }))).toMatchObject({ ack: [idOf(3)], head: 50 });
  });

  test('a seed is the beginning of an empty log only', async () => {
    const seedFile = join(folder, 'seed.ndjson');
    await writeFile(seedFile, writeLog(events(0, 20)));
    await hub.close();
    hub = await start({ seedFile });
    expect((await pull()).head).toBe(20);
    await push(data({ n: 77 }));
    await hub.close();
    hub = await start({ seedFile });
    expect((await pull()).head).toBe(21);
    expect((await readFile(seedFile, 'utf8')).length).toBe(writeLog(events(0, 20)).length);
  });

  test('without a directory the hub remembers while it runs, seeded or not', async () => {
    const seedFile = join(folder, 'seed.ndjson');
    await writeFile(seedFile, writeLog(events(0, 20)));
    await hub.close();
    hub = await startHub({ port: 0, seedFile, appDir });
    await push(data({ n: 50 }));
    expect(ids((await pull(15)).rows as ReturnType<typeof event>[])).toEqual(ids([...events(15, 20), event(50)]));
  });

  test('a seed that is not there is said by name', async () => {
    await expect(start({ dataDir: join(folder, 'x'), seedFile: join(folder, 'gone') })).rejects.toMatchObject({
      problem: { code: 'file-unreadable', message: expect.stringContaining('gone') },
    });
  });

  test('a taken port is said by number', async () => {
    const port = Number(new URL(hub.url).port);
    await expect(startHub({ port, appDir })).rejects.toMatchObject({
      problem: { code: 'port-taken', message: `Port ${port} on 127.0.0.1 is taken by another program.` },
    });
  });

  test('a directory that another hub has open is refused', async () => {
    await expect(start()).rejects.toMatchObject({ problem: { code: 'log-in-use' } });
  });

  test('a restored backup begins a new epoch, and the devices bring back what it lacks', async () => {
    const log = memoryDeviceLog(1);
    const party = { log, hub: { ...hubOver(fetch, hub.url) }, name: 'phone', now: Date.now };
    await log.append(events(0, 30));
    await exchange(party);
    const before = await epoch();
    await hub.close();
    await restoreData(dataDir, events(0, 10));
    hub = await start();
    expect(await epoch()).not.toBe(before);
    expect((await pull()).head).toBe(10);
    await exchange({ ...party, hub: hubOver(fetch, hub.url) });
    expect((await pull()).head).toBe(30);
    expect((await json<{ devices: number }>('/health')).devices).toBe(1);
  });

  test('a log that was edited by hand begins a new epoch and says so', async () => {
    await push(...events(0, 5));
    const before = await epoch();
    await hub.close();
    const path = join(dataDir, 'events.ndjson');
    await writeFile(path, (await readFile(path, 'utf8')).replace('"weightG":102', '"weightG":202'));
    hub = await start();
    expect(hub.problems).toMatchObject([{ code: 'file-edited' }]);
    expect(await epoch()).not.toBe(before);
  });

  test('a hub that is killed again and again loses no acknowledged event', async () => {
    const child = await bundleForNode(fileURLToPath(new URL('./hubChild.ts', import.meta.url)));
    const place = join(folder, 'killed');
    const acked = new Set<string>();
    for (let round = 0; round < 4; round++) await pushUntilKilled(child, place, round, acked);
    await rm(dirname(child), { recursive: true });
    const kept = await startHub({ port: 0, dataDir: place, appDir });
    const { rows } = (await (await fetch(`${kept.url}/pull`)).json()) as Pulled;
    await kept.close();
    const here = new Set(ids(rows as ReturnType<typeof event>[]));
    expect(acked.size).toBeGreaterThan(40);
    expect([...acked].filter((id) => !here.has(id))).toEqual([]);
    expect((await checkFile(join(place, 'events.ndjson'))).problems).toEqual([]);
  }, 60_000);
});

/** Pushes from three sides at once and kills the hub in the middle of it. */
async function pushUntilKilled(child: string, place: string, round: number, acked: Set<string>): Promise<void> {
  const program = spawn(process.execPath, [child, place], { stdio: ['ignore', 'pipe', 'inherit'] });
  const url = await new Promise<string>((resolve) => {
    program.stdout.once('data', (piece: Buffer) => resolve(piece.toString().trim()));
  });
  const { epoch: now } = (await (await fetch(`${url}/health`)).json()) as { epoch: string };
  const gone = new Promise((resolve) => program.once('exit', resolve));
  setTimeout(() => program.kill('SIGKILL'), 150 + 60 * round);
  await Promise.all([0, 1, 2].map((side) => pushOn(url, now, 100_000 * round + 10_000 * side, acked)));
  await gone;
}

async function pushOn(url: string, now: string, from: number, acked: Set<string>): Promise<void> {
  for (let n = from; n < from + 10_000; n += 5) {
    const body = JSON.stringify({ epoch: now, events: Array.from({ length: 5 }, (_, at) => data({ n: n + at })) });
    const headers = { 'content-type': 'application/json' };
    const reply = await fetch(`${url}/push`, { method: 'POST', headers, body }).catch(() => null);
    const pushed = reply === null ? null : ((await reply.json().catch(() => null)) as Pushed | null);
    if (pushed === null) return;
    for (const id of pushed.ack) acked.add(id);
  }
}

/** Sends bytes as they are: clients tidy paths up before they send them. */
function raw(text: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(Number(new URL(hub.url).port), '127.0.0.1', () => socket.write(text));
    let said = '';
    socket.on('data', (piece) => {
      said += piece.toString();
    });
    socket.once('end', () => resolve(said));
    socket.once('error', reject);
  });
}
