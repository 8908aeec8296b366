import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LogEvent } from '../../src/core/index.ts';
import type { DeviceLog } from '../../src/store/index.ts';
import { launchChromium, startChromium } from '../tools/browser.ts';
import type { ServedPage } from '../tools/serve.ts';
import { contract, ids, readAll } from './contract.ts';
import { deviceContract } from './deviceContract.ts';
import { logDrafts, logIn, openPage, serveStore } from './idbBridge.ts';
import { animal, event, events, idOf, slip } from './sample.ts';

const NOW = Date.UTC(2026, 2, 9, 9);
let served: ServedPage;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  served = await serveStore();
  browser = await launchChromium();
  page = await openPage(await browser.newPage(), served.url);
}, 60_000);

afterAll(async () => {
  await browser.close();
  await served.close();
});

/** A log that packs away after every writing, so that whatever is asked is answered from packed records. */
function packing(log: DeviceLog): DeviceLog {
  const append = async (batch: readonly LogEvent[]) => {
    const appended = await log.append(batch);
    await log.compact();
    return appended;
  };
  return new Proxy(log, { get: (target, method) => (method === 'append' ? append : Reflect.get(target, method)) });
}

const open = (place: string) => logIn(page, place);
contract({ name: 'the browser store', durable: true, open });
contract({ name: 'the browser store, packed', durable: true, open: async (place) => packing(await open(place)) });
deviceContract({ name: 'the browser store', durable: true, open, logDrafts });

describe('the browser store', () => {
  test('two tabs that log 300 times each hand out 600 different sequence numbers, clocks and ids', async () => {
    const context = await browser.newContext();
    const tabs = await Promise.all([0, 1].map(async () => openPage(await context.newPage(), served.url)));
    const logged = await Promise.all(
      tabs.map(async (tab, at) => {
        const log = await logIn(tab, 'two-tabs');
        return Promise.all(Array.from({ length: 300 }, (_, n) => logDrafts(log, NOW, [event(1000 * at + n)])));
      }),
    );
    const all = logged.flat();
    const stamps = all.flatMap((one) => one.events);
    expect(new Set(stamps.map(({ seq }) => seq)).size).toBe(600);
    expect(new Set(stamps.map(({ clock }) => clock.join())).size).toBe(600);
    expect(new Set(all.map(({ minted }) => minted)).size).toBe(600);
    const log = await logIn(await openPage(await context.newPage(), served.url), 'two-tabs');
    expect(new Set(ids(await readAll(log, 100))).size).toBe(600);
    expect((await log.unsent()).count).toBe(600);
    await context.close();
  }, 60_000);

  test('one tab packs away while another writes: nothing is lost, doubled or out of order', async () => {
    const context = await browser.newContext();
    const tabs = await Promise.all([0, 1].map(async () => openPage(await context.newPage(), served.url)));
    const [writer, packer] = await Promise.all(tabs.map((tab) => logIn(tab, 'packing')));
    if (writer === undefined || packer === undefined) throw new Error('two tabs were asked for');
    const seen: string[][] = [];
    for (let n = 0; n < 40; n += 4) {
      await Promise.all([writer.append(events(n, n + 4)), packer.compact(), packer.append([event(n + 1)])]);
      seen.push(ids(await readAll(n % 8 === 0 ? writer : packer, 3)));
    }
    expect(new Set(seen.at(-1))).toEqual(new Set(ids(events(0, 40))));
    expect(seen.at(-1)).toHaveLength(40);
    for (const earlier of seen) expect(seen.at(-1)?.slice(0, earlier.length)).toEqual(earlier);
    expect(await writer.append([slip(90, 3)])).toMatchObject({ stored: 1 });
    expect(new Set(ids(await packer.history(animal(3))))).toEqual(new Set([3, 10, 17, 24, 31, 38, 90].map(idOf)));
    await context.close();
  }, 60_000);

  test('a snapshot that was changed behind its back is not believed', async () => {
    const log = await open('snapshot');
    await log.writeSnapshot({ cursor: 3, version: 1, json: '{"animals":3}' });
    await page.evaluate(
      (name) =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open(name);
          opening.onsuccess = () => {
            const tx = opening.result.transaction('snap', 'readwrite');
            tx.objectStore('snap').get('snap').onsuccess = ({ target }) => {
              const stored = (target as IDBRequest<object>).result;
              tx.objectStore('snap').put({ ...stored, json: '{"animals":4}' }, 'snap');
            };
            tx.oncomplete = () => resolve();
            tx.onerror = () => reject(tx.error);
          };
        }),
      'snapshot',
    );
    expect(await log.readSnapshot(1)).toBeNull();
  });

  test('killing the browser right after a confirmed writing loses nothing of it', async () => {
    const profile = await mkdtemp(join(tmpdir(), 'tubwright-profile-'));
    try {
      for (let round = 0; round < 3; round++) {
        const { browser: mortal, kill } = await startChromium(profile);
        try {
          const context = mortal.contexts()[0] ?? (await mortal.newContext());
          const log = await logIn(await openPage(await context.newPage(), served.url), 'killed');
          expect(ids(await readAll(log, 50))).toEqual(ids(events(0, round * 10)));
          expect((await log.device()).seq).toBe(round * 10);
          for (let n = round * 10; n < round * 10 + 10; n++) await logDrafts(log, NOW, [event(n)]);
        } finally {
          await kill();
        }
      }
    } finally {
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  }, 90_000);

  test('a full device says so, keeps all it had and writes again when there is room', async () => {
    const context = await browser.newContext();
    const tab = await openPage(await context.newPage(), served.url);
    const cdp = await context.newCDPSession(tab);
    const origin = new URL(served.url).origin;
    await cdp.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1_000_000 });
    const log = await logIn(tab, 'full');
    await logDrafts(log, NOW, events(0, 5));
    const long = Array.from({ length: 2000 }, (_, n) =>
      event({ n: 100 + n, kind: 'note-made', payload: { words: `${n} `.repeat(380) } }),
    );
    await expect(log.append(long)).rejects.toMatchObject({ problem: { code: 'storage-full' } });
    await expect(logDrafts(log, NOW, long)).rejects.toMatchObject({ problem: { code: 'storage-full' } });
    expect(ids(await readAll(log, 100))).toEqual(ids(events(0, 5)));
    expect(await log.device()).toMatchObject({ seq: 5, counter: 1 });
    expect((await log.unsent()).count).toBe(5);
    await cdp.send('Storage.overrideQuotaForOrigin', { origin });
    expect(await log.append(long)).toMatchObject({ stored: 2000 });
    expect(await log.head()).toBe(2005);
    await context.close();
  }, 60_000);

  test('a closed log refuses in words', async () => {
    const log = await open('closed');
    await log.close();
    await expect(log.append([event(1)])).rejects.toMatchObject({ problem: { code: 'storage-failed' } });
  });
});
