import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import type { RunningApp } from './site.ts';
import { laySmallSite, type SmallSite } from './smallSite.ts';

const SOON = { timeout: 20_000 };

let site: SmallSite;
let app: RunningApp;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** The browser's print sheet stops the page until somebody closes it, so the frame tells what it was asked for instead. */
function countPrints(): void {
  if (window === window.top) return;
  window.print = () => {
    document.documentElement.dataset['printed'] = 'yes';
  };
}

/** As where the viewer is a page of its own, whose window gives nothing to ours. */
function refusePrints(): void {
  if (window === window.top) return;
  window.print = () => {
    throw new DOMException('not yours', 'SecurityError');
  };
}

function noViewer(): void {
  Object.defineProperty(Navigator.prototype, 'pdfViewerEnabled', { get: () => false });
}

async function makeRun(before: () => void): Promise<void> {
  await page?.close();
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.addInitScript(before);
  await page.goto(`${app.url}/print?what=place`);
  await button(/^Make the PDF of \d+ place labels$/).click();
  await page.getByText('10 of 10 read back.').waitFor({ timeout: 60_000 });
}

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const runs = async () => (await onTheHub(app)).filter(({ kind }) => kind === 'run-laid').length;
const printed = () =>
  page
    .locator('iframe')
    .evaluate((frame) => (frame as HTMLIFrameElement).contentDocument?.documentElement.dataset['printed'] ?? null);

test('PRINT-RESUME: Print prints what the frame shows, whose own bar is off, and the run is begun', async () => {
  await makeRun(countPrints);
  expect(await page.locator('iframe').getAttribute('src')).toMatch(/^blob:.*#toolbar=0/);
  expect([await runs(), await printed()]).toEqual([0, null]);
  await button('Print').click();
  await expect.poll(printed, SOON).toBe('yes');
  await expect.poll(runs, SOON).toBe(1);
  await button('Print').click();
  await page.goto(`${app.url}/print`);
  await page.getByText(/^Place labels on .*: no page of 1 printed yet$/).waitFor();
  expect(await runs()).toBe(1);
  await button('Done with it').click();
  await page.getByText('Not all on paper yet').waitFor({ state: 'detached' });
});

test('PRINT-RESUME: who goes into the frame may print from inside it, so the run is begun then', async () => {
  await makeRun(countPrints);
  await page.locator('iframe').scrollIntoViewIfNeeded();
  await page.mouse.wheel(0, 100);
  // The screen loses its focus to another window: nothing is begun by that.
  await page.evaluate(() => window.dispatchEvent(new Event('blur')));
  expect(await page.evaluate(() => document.activeElement?.tagName)).not.toBe('IFRAME');
  const frame = await page.locator('iframe').boundingBox();
  if (frame === null) throw new Error('There is no frame.');
  const before = await runs();
  await page.mouse.click(frame.x + frame.width / 2, Math.min(frame.y + frame.height / 2, 780));
  await expect.poll(runs, SOON).toBe(before + 1);
});

test('where the frame cannot be printed the file opens in a tab of its own, and the run is begun', async () => {
  await makeRun(refusePrints);
  const before = await runs();
  const tab = page.waitForEvent('popup');
  await button('Print').click();
  expect((await tab).url()).toMatch(/^blob:/);
  await (await tab).close();
  await expect.poll(runs, SOON).toBe(before + 1);
});

test('at night Print needs no bright preview', async () => {
  await page.goto(`${app.url}/more`);
  await page
    .getByText(/^Night/)
    .first()
    .click();
  await makeRun(countPrints);
  await button('Show the preview (white paper, bright)').waitFor();
  expect(await page.locator('iframe').evaluate((frame) => frame.getBoundingClientRect().width)).toBeLessThanOrEqual(1);
  await button('Print').click();
  await expect.poll(printed, SOON).toBe('yes');
  await button('Show the preview (white paper, bright)').click();
  expect(await page.locator('iframe').evaluate((frame) => frame.getBoundingClientRect().width)).toBeGreaterThan(300);
});

test('a phone without a viewer has the links only, and opening the file begins the run', async () => {
  await makeRun(noViewer);
  expect([await button('Print').count(), await page.locator('iframe').count()]).toEqual([0, 0]);
  const before = await runs();
  const tab = page.waitForEvent('popup');
  await page.getByRole('link', { name: 'Open the PDF' }).click();
  await (await tab).close();
  await expect.poll(runs, SOON).toBe(before + 1);
  expect(faults).toEqual([]);
});
