import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { addDays } from '../../src/core/index.ts';
import { readPage } from '../print/paper.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub, reached } from './hub.ts';
import { textOf } from './paper.ts';
import type { RunningApp } from './site.ts';
import { ago, laySmallSite, type SmallSite, TODAY } from './smallSite.ts';

const DPI = 150;
/** The hub hears of what was written a moment later, on a busy machine more than one. */
const SLOW = { timeout: 40_000 };
let site: SmallSite;
let app: RunningApp;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(`${app.url}/freezer`);
  await page.getByText('Nothing lies in the freezer by the book.').waitFor({ timeout: 60_000 });
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** What was written about lots, in short. */
async function deeds(): Promise<readonly string[]> {
  const lots = (await onTheHub(app)).filter(({ kind }) => /^(lot|stock)-/.test(kind) && kind !== 'lot-received');
  return lots.map((event) => `${event.kind} ${JSON.stringify(event.payload)}`);
}

/** The lots that came, once the hub has so many. */
const received = (lots: number) => reached(app, 'lot-received', lots);

interface Box {
  readonly items: number;
  readonly came: string;
  readonly useBy?: string;
  readonly grams?: string;
}

async function receive({ items, came, useBy, grams }: Box): Promise<void> {
  await page.goto(`${app.url}/freezer`);
  const form = page.locator('form.receive');
  const fold = page.locator('summary', { hasText: 'Receive a lot' });
  await fold.waitFor();
  if (!(await form.isVisible())) await fold.click();
  await form.getByLabel('Prey').selectOption('rat-small');
  await form.getByLabel('Items').fill(String(items));
  if (grams !== undefined) await form.getByLabel('Grams of one item').fill(grams);
  if (useBy !== undefined) await form.getByLabel('Use by').fill(useBy);
  await form.getByLabel('Treated on the outside with').fill('dusted with calcium');
  await form.getByLabel('Came on').fill(came);
  await form.getByRole('button', { name: 'Receive the lot' }).click();
}

const question = () => page.getByRole('dialog');
const answer = (words: RegExp) => question().getByRole('button', { name: words }).click();
/** A figure on the lot's page. */
const left = () => page.locator('.lot-figure strong').textContent();

test('a lot is received, its label is printed and read back, and the picture of it opens the lot', async () => {
  await receive({ items: 20, came: ago(40), useBy: addDays(TODAY, 200) });
  await page.getByText('is lot', { exact: false }).first().waitFor();
  const [lot] = await received(1);
  expect(lot).toMatchObject({
    day: ago(40),
    payload: { prey: 'rat-small', eachG: [60, 100], count: 20, topical: 'dusted with calcium' },
  });
  await page.getByRole('link', { name: 'Print its label' }).click();
  await page.getByRole('button', { name: 'Make the PDF of 1 lot label' }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(site.folder, 'lot.pdf');
  await (await download).saveAs(file);
  const codes = await readPage(file, 1, DPI);
  expect(codes.map(({ text }) => text)).toEqual([`HTTPS://TUBS.EXAMPLE/${lot?.subjects[0]}`]);
  const said = textOf(file).replace(/\s+/g, ' ');
  for (const words of ['small rat', '20 items of 60–100 g', 'dusted with calcium', 'Thawed prey is never refrozen.'])
    expect(said).toContain(words);
  execFileSync('pdftoppm', ['-r', '110', '-png', '-singlefile', file, join(site.folder, 'lot')]);
  await page.goto(`${app.url}/`);
  await page
    .locator('input[type=file]')
    .setInputFiles({ name: 'lot.png', mimeType: 'image/png', buffer: readFileSync(join(site.folder, 'lot.png')) });
  await page.waitForURL(`**/lot/${lot?.subjects[0]}`, { timeout: 30_000 });
  await page.getByRole('heading', { name: 'small rat' }).waitFor();
});

test('five are taken out, two thrown away and the rest is counted; what is far from the book is asked about', async () => {
  await page.getByLabel('Items').fill('5');
  await page.getByRole('button', { name: 'Take them out' }).click();
  await expect.poll(left, SLOW).toBe('15');
  await page.getByRole('button', { name: 'Throw away' }).click();
  await page.getByLabel('Items').fill('2');
  await page.getByRole('button', { name: 'Throw them away' }).click();
  await page.getByText('Nobody says why it is thrown away.').first().waitFor();
  await page.getByLabel('Why').fill('freezer burn');
  await page.getByRole('button', { name: 'Throw them away' }).click();
  await expect.poll(left, SLOW).toBe('13');
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  await page.getByLabel('Items that are really there').fill('2');
  await page.getByRole('button', { name: 'Write the count' }).click();
  await question().getByText('By the book there are 13, and 2 were counted.').waitFor();
  await answer(/^Yes/);
  await expect.poll(left, SLOW).toBe('2');
  const ledger = page.getByRole('region', { name: 'Ledger' });
  for (const words of ['Counted: 2 left', 'Thrown away: 2 (freezer burn)', 'Thawed: 5'])
    await ledger.getByText(words).waitFor();
  await expect
    .poll(deeds, SLOW)
    .toEqual(['lot-used {"count":5}', 'lot-wasted {"count":2,"why":"freezer burn"}', 'stock-counted {"count":2}']);
});

test('a box past its day or of another size is asked about, and no writes nothing', async () => {
  await receive({ items: 4, came: TODAY, useBy: ago(1), grams: '40-55' });
  await question().getByText('is over. One small rat usually weighs 60–100 g, and 40–55 g stands here.').waitFor();
  await answer(/^No/);
  await received(1);
  expect(await page.locator('form.receive').getByLabel('Items').inputValue()).toBe('4');
  await page.locator('form.receive').getByLabel('Grams of one item').fill('55-40');
  await page.getByRole('button', { name: 'Receive the lot' }).click();
  await page.getByText('“55-40” is not what one item weighs.').first().waitFor();
});

test('the thaw list is taken out with one touch, less what is out, oldest lot first, and comes back with one undo', async () => {
  await receive({ items: 30, came: ago(2) });
  await page.getByText('is lot', { exact: false }).first().waitFor();
  await page.goto(`${app.url}/rounds`);
  // Seven are due and one is spare; five were taken out before, two are left in the older lot.
  await page.getByRole('button', { name: 'Take out 3 items' }).click();
  await page.getByText('8 × small rat thawed: 0 eaten, 8 left').waitFor();
  expect(await page.getByRole('button', { name: /^Take out/ }).count()).toBe(0);
  const [older, newer] = (await received(2)).map(({ subjects }) => subjects[0]);
  const out = async () =>
    (await onTheHub(app))
      .filter(({ kind }) => kind === 'lot-used')
      .slice(-2)
      .map(({ subjects, payload }) => [subjects[0], (payload as { count: number }).count]);
  await expect.poll(out, SLOW).toEqual([
    [older, 2],
    [newer, 1],
  ]);
  await page.getByRole('button', { name: /^Throw away what is left: 8/ }).click();
  await question().getByText('It is still to be fed: 7 × small rat.').waitFor();
  await answer(/^No/);
  await page.getByRole('button', { name: /^Undo thawed 3 × small rat/ }).click();
  await page.getByRole('button', { name: 'Take out 3 items' }).waitFor();
});

test('the order list says how much and why, keeps its figures, and is saved as a table', async () => {
  await page.goto(`${app.url}/freezer/order`);
  // Thirty-two lie there, and seven animals do not eat more in five weeks.
  await page.getByRole('heading', { name: 'Nothing to order' }).waitFor({ timeout: 30_000 });
  const row = () => page.locator('.order-list tbody tr').first().textContent();
  const before = await row();
  expect(before).toMatch(/^small ratnone\d+/);
  await page.getByText(/7 animals: about \d+ in 7 days and 4 weeks, \d+ are enough in 90 of 100 cases/).waitFor();
  await page.getByLabel('It is to last so many weeks').fill('8');
  await page.getByLabel('It comes after so many days').fill('14');
  await page.getByLabel('Items that the freezer holds in all').fill('40');
  await page.getByRole('button', { name: 'Keep these figures' }).click();
  await page.getByText(/in 14 days and 8 weeks/).waitFor({ timeout: 30_000 });
  await page.getByRole('heading', { name: /items to order$/ }).waitFor();
  await page.getByText(/but the freezer has no room for more: order again in between/).waitFor();
  expect(await row()).not.toBe(before);
  const rules = async () => (await onTheHub(app)).filter(({ kind }) => kind === 'site-rules-set').at(-1)?.payload;
  await expect.poll(rules, SLOW).toMatchObject({ orderWeeks: 8, leadDays: 14, freezerItems: 40, reservePercent: 5 });
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the order as CSV' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe(`order-${TODAY}.csv`);
  const file = join(site.folder, 'order.csv');
  await saved.saveAs(file);
  expect(readFileSync(file, 'utf8')).toMatch(/^\uFEFF?prey,name,animals,order,[\s\S]*\nrat-small,small rat,7,/);
});

test('weeks that are no number are refused in words, where they stand', async () => {
  await page.getByText(/^For 8 weeks, 14 days on the way/).click();
  const form = page.locator('form.order-form');
  if (!(await form.isVisible())) await page.getByText(/^For 8 weeks, 14 days on the way/).click();
  await page.getByLabel('It is to last so many weeks').fill('40');
  await page.getByRole('button', { name: 'Keep these figures' }).click();
  await page.getByText('the weeks must be a whole number from 1 to 26').waitFor();
  expect(faults).toEqual([]);
});
