import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf } from '../cli/sampleSite.ts';
import { launchChromium, startChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import type { RunningApp } from './site.ts';
import {
  BRACKEN,
  CLOVER,
  cardWords,
  FERN,
  laySmallSite,
  MOSS,
  openRecord,
  type SmallSite,
  SORREL,
  type Tame,
  TODAY,
  YARROW,
} from './smallSite.ts';

let site: SmallSite;
let app: RunningApp;
let browser: Browser;

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** Touches the primary action and waits until the strip confirms it. */
async function feed(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await confirmed(page).waitFor();
}

const confirmed = (page: Page) =>
  page.getByRole('region', { name: 'Last entries' }).getByText('fed as planned').first();

/** Who was fed today, as the hub knows it. */
async function fedOnTheHub(): Promise<readonly string[]> {
  const events = await onTheHub(app);
  return events.flatMap((one) => (one.kind === 'prey-offered' && one.day === TODAY ? one.subjects : []));
}

/** Opens the site on a device that has nothing yet, and waits until the app itself lies on it too. */
async function firstVisit(page: Page, who: Tame): Promise<void> {
  await openRecord(page, app, who);
  await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
}

async function hubComesBack(): Promise<void> {
  app = await site.start(new URL(app.url).port);
}

test('without the hub and the network the app opens, logs, keeps, and sends when they are back', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await firstVisit(page, MOSS);
  const before = await cardWords(page);
  await app.stop();
  await context.setOffline(true);
  await page.reload();
  await page.getByRole('heading', { name: 'Moss' }).first().waitFor();
  await page.locator('.network-line').getByText('Offline').waitFor();
  await feed(page);
  await page.reload();
  await page.getByRole('heading', { name: 'Moss' }).first().waitFor();
  await expect.poll(() => page.getByRole('region', { name: 'Ledger' }).textContent()).toContain('1 × small rat');
  expect(await cardWords(page)).not.toBe(before);
  await page.locator('.network-line').getByText('1 entry waits to be sent').waitFor();
  // A screen that was never opened on this device works as well.
  await page.getByRole('link', { name: 'Rounds' }).click();
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();

  await hubComesBack();
  await context.setOffline(false);
  await expect.poll(fedOnTheHub, { timeout: 20_000 }).toEqual([MOSS.id]);
  await expect.poll(() => page.locator('.network-line').count(), { timeout: 20_000 }).toBe(0);
  await context.close();
});

test('a browser that is killed has lost nothing that it confirmed', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'tubwright-profile-'));
  try {
    const first = await startChromium(profile);
    const page = await first.browser.contexts()[0]?.newPage();
    if (page === undefined) throw new Error('The browser opened no window.');
    await firstVisit(page, BRACKEN);
    // The hub is away, so that only the device itself can have kept what follows.
    await app.stop();
    for (const who of [BRACKEN, CLOVER, FERN]) {
      await openRecord(page, app, who);
      await feed(page);
    }
    await first.kill();
    await hubComesBack();
    expect(await fedOnTheHub()).toEqual([MOSS.id]);

    const second = await startChromium(profile);
    try {
      const again = await second.browser.contexts()[0]?.newPage();
      if (again === undefined) throw new Error('The browser opened no window.');
      await openRecord(again, app, FERN);
      await expect.poll(fedOnTheHub, { timeout: 20_000 }).toEqual([MOSS.id, BRACKEN.id, CLOVER.id, FERN.id]);
    } finally {
      await second.kill();
    }
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
});

test('a full disk is said in words, nothing is half written, and it goes on once there is room', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  const room = await roomOn(page);
  await room(FITS_ALL_BUT_NOTES);
  await firstVisit(page, SORREL);
  const card = await cardWords(page);
  const before = (await onTheHub(app)).length;
  await room(FULL);
  await page.goto(`${app.url}/books`);
  await page.locator('.import input[type=file]').setInputFiles(muchNoted());
  await page.locator('.import').getByText('The device has no room left.').waitFor();

  await openRecord(page, app, SORREL);
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  const entry = page.getByRole('region', { name: 'Last entries' }).getByRole('listitem').first();
  await entry.getByText('The device has no room left.').waitFor();
  expect(await entry.textContent()).toContain('Nothing was lost and nothing new was written.');
  expect(await entry.getByRole('button').count()).toBe(0);
  await page.reload();
  await page.getByRole('heading', { name: 'Sorrel' }).first().waitFor();
  expect(await cardWords(page)).toBe(card);
  expect(await page.getByRole('region', { name: 'Ledger' }).getByText('a long note').count()).toBe(0);
  expect((await onTheHub(app)).length).toBe(before);

  await room(null);
  await feed(page);
  await openRecord(page, app, YARROW);
  await feed(page);
  await expect.poll(async () => (await fedOnTheHub()).slice(-2), { timeout: 20_000 }).toEqual([SORREL.id, YARROW.id]);
  await context.close();
});

test('a device without any room says so instead of showing nothing', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  const room = await roomOn(page);
  await room(FULL);
  await page.goto(`${app.url}/${MOSS.id}`);
  await page.getByText('The device has no room left.').waitFor();
  await room(null);
  await page.getByRole('button', { name: 'Open again' }).click();
  await page.getByRole('heading', { name: 'Moss' }).first().waitFor();
  await context.close();
});

/** Quotas in bytes; the browser counts down what it last allotted, so only a writing larger than that sees a new one at once. */
const FULL = 1000;
const FITS_ALL_BUT_NOTES = 11_000_000;

/** Sets how much room the app has on that page's device; null for as much as there is. */
async function roomOn(page: Page): Promise<(bytes: number | null) => Promise<void>> {
  const cdp = await page.context().newCDPSession(page);
  return async (bytes) => {
    await cdp.send('Storage.overrideQuotaForOrigin', {
      origin: app.url,
      ...(bytes !== null && { quotaSize: bytes }),
    });
  };
}

/** A sound log of long notes, larger than any room that was left. */
function muchNoted() {
  const words = `a long note ${'and more of it '.repeat(120)}`;
  const notes = eventsOf(
    Array.from({ length: 6000 }, () => [TODAY, 'note-made', [SORREL.id], { words }] as const),
    1000,
  );
  return { name: 'notes.ndjson', mimeType: 'text/plain', buffer: Buffer.from(writeLog(notes)) };
}
