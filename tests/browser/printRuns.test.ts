import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readPage } from '../print/paper.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { textOf } from './paper.ts';
import type { RunningApp } from './site.ts';
import { CLOVER, laySmallSite, MOSS, openRecord, type SmallSite } from './smallSite.ts';

const DPI = 150;
const STOCK = 'card-85x54';

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
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  await openPrint();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** Closes the app and opens the Print screen of it anew, as on the next day. */
async function openPrint(): Promise<void> {
  await page?.close();
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(`${app.url}/print`);
  await page.getByRole('heading', { name: 'Print cards' }).waitFor();
}

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

async function saved(name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the PDF' }).click();
  const file = join(site.folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return file;
}

async function chooseAll(): Promise<void> {
  await page.getByLabel('All cards').check();
  await page.getByLabel('Stock').selectOption(STOCK);
  await button('Make the PDF of 7 cards').click();
  await page.getByText('7 of 7 read back.').waitFor({ timeout: 60_000 });
}

const onHub = async (kind: string) => (await onTheHub(app)).filter((event) => event.kind === kind);
const markedOnHub = async () => (await onHub('card-printed')).length;

test('a made run reads back whole, and only what came out of the printer is marked', async () => {
  await chooseAll();
  await saved('whole');
  await expect.poll(async () => (await onHub('run-laid')).length, { timeout: 20_000 }).toBe(1);
  expect(await markedOnHub()).toBe(0);
  await page.getByText('Only a part came out').click();
  for (const wrong of ['0', '9', '2.5', 'all']) {
    await page.getByLabel('Last page that came out').fill(wrong);
    await button('Write it').click();
    await page.getByText(`“${wrong}” is no page that is still to come out.`).waitFor();
  }
  await page.getByLabel('Last page that came out').fill('3');
  await button('Write it').click();
  await page.getByText('3 cards are marked as printed. Left: pages 4 to 7.').waitFor();
  await expect.poll(markedOnHub, { timeout: 20_000 }).toBe(3);
});

test('the run is there when the app is opened again, and tells what changed since', async () => {
  await openPrint();
  await page.getByText(`Tub cards on ${STOCK}: printed to page 3 of 7`, { exact: true }).waitFor();
  await page.goto(`${app.url}/`);
  await button('Take a stamp').waitFor();
  await scannerTypes(page, 'STAMP:REFUSED');
  await button(/refused/)
    .first()
    .waitFor();
  await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
  await expect.poll(async () => (await onHub('prey-offered')).length, { timeout: 20_000 }).toBe(8);
  await openPrint();
  await page.getByText(`Tub cards on ${STOCK}: printed to page 3 of 7; 1 card has changed since`).waitFor();
  await page.getByRole('link', { name: 'Print what changed since' }).click();
  await button('Make the PDF of 1 card').waitFor();
});

test('the rest is printed and nothing else, and then the run is done', async () => {
  await openPrint();
  await page.getByRole('link', { name: 'Print pages 4 to 7' }).click();
  await button('Make the PDF of pages 4 to 7').click();
  await page.getByText('4 of 4 read back.').waitFor({ timeout: 60_000 });
  const file = await saved('rest');
  const first = new Set((await onHub('card-printed')).map(({ subjects }) => subjects[0]));
  const codes = (await Promise.all([1, 2, 3, 4].map((at) => readPage(file, at, DPI)))).flat();
  const ids = codes.map(({ text }) => text.slice(-8));
  expect(ids).toHaveLength(4);
  expect(ids.filter((id) => first.has(id as never))).toEqual([]);
  expect(textOf(file)).toContain('Fern');
  expect(await markedOnHub()).toBe(3);
  await button('These are printed').click();
  await page.getByText('4 cards are marked as printed.').waitFor();
  await expect.poll(markedOnHub, { timeout: 20_000 }).toBe(7);
  const marked = new Set((await onHub('card-printed')).map(({ subjects }) => subjects[0]));
  expect(marked.size).toBe(7);
  await openPrint();
  await button(/^Make the PDF of 1 card$/).waitFor();
  expect(await page.getByText('Not all on paper yet').count()).toBe(0);
});

test('a run that was begun and never confirmed marks nothing, and goes when the keeper is done with it', async () => {
  await openPrint();
  await chooseAll();
  await saved('again');
  await expect.poll(async () => (await onHub('run-laid')).length, { timeout: 20_000 }).toBe(2);
  await openPrint();
  await page.getByText(`Tub cards on ${STOCK}: no page of 7 printed yet`).waitFor();
  expect(await markedOnHub()).toBe(7);
  await button('Done with it').click();
  await page.getByText('Not all on paper yet').waitFor({ state: 'detached' });
  await openPrint();
  expect(await page.getByText('Not all on paper yet').count()).toBe(0);
});

test('a card that is gone from the house makes the rest be laid out anew', async () => {
  await chooseAll();
  await page.getByText('Only a part came out').click();
  await page.getByLabel('Last page that came out').fill('1');
  await button('Write it').click();
  await page.getByText('1 card is marked as printed. Left: pages 2 to 7.').waitFor();
  await openRecord(page, app, CLOVER);
  await button('Died …').click();
  await button('Write died').click();
  await page.getByText('cause not known').first().waitFor();
  await openPrint();
  await page.getByRole('link', { name: 'Print pages 2 to 7' }).click();
  await button('Make the PDF of pages 2 to 7').click();
  await page.getByText('the rest of it is laid out anew').waitFor({ timeout: 60_000 });
  await page.getByText('5 of 5 read back.').waitFor({ timeout: 60_000 });
  expect(textOf(await saved('anew'))).not.toContain('Clover');
  await openPrint();
  await page.getByText(`Tub cards on ${STOCK}: no page of 5 printed yet`, { exact: true }).waitFor();
  expect(await page.getByText(/printed to page/).count()).toBe(0);
  await page.getByText('It has come further').click();
  await button('These are printed').click();
  await expect.poll(markedOnHub, { timeout: 20_000 }).toBe(13);
  await page.getByText('Not all on paper yet').waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
});

/** Breaks the third code of every file that comes from the printing worker, as a bad page description would. */
function spoilThirdCode(): void {
  const Real = window.Worker;
  const spoil = (pdf: Uint8Array): Uint8Array => {
    const text = Array.from(pdf, (byte) => String.fromCharCode(byte)).join('');
    const codes = [...text.matchAll(/q [\d.]+ 0 0 [\d.]+ [\d.]+ [\d.]+ cm\n(?:[\d.]+ [\d.]+ [\d.]+ [\d.]+ re\n)+f\n/g)];
    const { 0: code = '', index = 0 } = codes[2] ?? {};
    const blank = code.replace(/re\n/g, () => 'n \n').replace(/f\n$/, '\n\n');
    const changed = text.slice(0, index) + blank + text.slice(index + code.length);
    return Uint8Array.from(changed, (sign) => sign.charCodeAt(0));
  };
  window.Worker = class extends Real {
    readonly #prints: boolean;
    readonly #reads: boolean;
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.#prints = String(url).includes('printWorker');
      this.#reads = String(url).includes('readBackWorker');
    }
    override postMessage(data: unknown, carried?: unknown): void {
      const order = data as { readonly ask: object };
      const sent = this.#prints ? { ...order, ask: { ...order.ask, compress: false } } : data;
      // Late, so that there is time to stop it.
      setTimeout(() => super.postMessage(sent, carried as Transferable[]), this.#reads ? 1500 : 0);
    }
    override set onmessage(hear: (event: MessageEvent) => void) {
      super.onmessage = ({ data }: MessageEvent) =>
        hear({ data: this.#prints && data.pdf ? { ...data, pdf: spoil(data.pdf) } : data } as MessageEvent);
    }
  };
}

test('pages that the run does not have are named as such, and no card is said to be missing', async () => {
  await openPrint();
  await page.getByLabel('All cards').check();
  await page.getByText('More about the paper').click();
  await page.getByLabel('Only pages').fill('9-12');
  await button(/^Make the PDF of \d+ cards$/).click();
  await page.getByText(/The run has no page 9–12: its last one is \d\./).waitFor({ timeout: 60_000 });
  expect(await page.getByText('not on the paper').count()).toBe(0);
  await page.getByLabel('Only pages').fill('');
});

test('a spoiled page is named with its piece and label; reading can be stopped and begun again', async () => {
  await page.close();
  page = await context.newPage();
  await page.addInitScript(spoilThirdCode);
  await page.goto(`${app.url}/print`);
  await page.getByLabel('All cards').check();
  await button('Make the PDF of 6 cards').click();
  await page.getByText('Reading 6 cards back…').waitFor({ timeout: 60_000 });
  await button('Stop').click();
  await page.getByText('Not checked.').waitFor();
  await button('Check it').click();
  await page.getByText('5 of 6 read back.').waitFor({ timeout: 60_000 });
  const said = page.getByRole('alert').filter({ hasText: 'cannot be read from the page as it is drawn' });
  expect(await said.locator('li').allTextContents()).toEqual([
    'The code of the card Fern (page 3, label 1) cannot be read from the page as it is drawn.',
  ]);
  await said.getByText('Do not use that piece.').waitFor();
  await button('These are printed').waitFor();
});
