import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { ownNumber, parseId } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { launchChromium } from '../tools/browser.ts';
import { reached } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago, BRACKEN, MOSS, smallLog } from './smallSite.ts';

const folder = mkdtempSync(join(tmpdir(), 'tubwright-shop-'));
let app: RunningApp;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  const more = eventsOf([[ago(3), 'shed-seen', [MOSS.id], { whole: true }]], 300);
  writeFileSync(join(folder, 'site.ndjson'), writeLog([...smallLog(), ...more]));
  const taken = await tubwright(['import', join(folder, 'site.ndjson'), '--into', join(folder, 'data')]);
  expect(taken.err).toBe('');
  app = await startApp(['--data', join(folder, 'data')]);
  browser = await launchChromium();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
}, 60_000);

afterAll(async () => {
  expect(faults).toEqual([]);
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

/** The id at the end of the page's address. */
function itemHere(): string {
  const read = parseId(new URL(page.url()).pathname.split('/').at(-1) ?? '');
  if (!read.ok) throw new Error(page.url());
  return read.value.id;
}

/** Makes the PDF on the open Print screen, saves it, and marks the tags as printed. */
async function printed(pieces: string, name: string): Promise<string> {
  await page.getByRole('button', { name: `Make the PDF of ${pieces}` }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return file;
}

test('a site without a currency is sent to Books, and a wrong one is refused there', async () => {
  await page.goto(`${app.url}/shop`);
  await page.getByText('The site has no currency yet.').waitFor();
  await page.goto(`${app.url}/books`);
  const currency = page.getByLabel('Currency of the shop');
  await currency.fill('XQZ');
  await page.getByRole('button', { name: 'Save the site' }).click();
  await page.getByText('“XQZ” is not a currency of ISO 4217.').waitFor();
  await currency.fill('eur');
  await page.getByRole('button', { name: 'Save the site' }).click();
  await page.getByText('Saved.').waitFor();
}, 60_000);

test('a ware is added, stocked, tagged and sold by its bar code', async () => {
  await page.goto(`${app.url}/shop`);
  await page.getByText('Add a ware').click();
  await page.getByLabel('What it is').fill('Mug, marsh python');
  await page.getByLabel('Price').fill('12.9001');
  await page.getByRole('button', { name: 'Add the ware' }).click();
  await page.getByText('has more decimals than EUR has').waitFor();
  await page.getByLabel('Price').fill('12,90');
  await page.getByRole('button', { name: 'Add the ware' }).click();
  await page.getByRole('heading', { name: 'Mug, marsh python' }).waitFor();
  const id = itemHere();
  await page.getByRole('button', { name: 'Came in …' }).click();
  await page.getByLabel('Pieces', { exact: true }).fill('3');
  await page.getByRole('button', { name: 'Put them on the shelf' }).click();
  await page.getByText('3 left').waitFor();
  await page.getByRole('link', { name: 'Print its tags' }).click();
  const pdf = await printed('3 ware tags', 'mugs');
  expect(textOf(pdf)).toContain('€12.90');
  await page.goto(`${app.url}/shop`);
  await page.getByRole('button', { name: 'Sell by scan' }).click();
  await scannerTypes(page, ownNumber(id as never));
  await page.getByRole('link', { name: /Mug/ }).filter({ hasText: '2 left' }).waitFor();
  await scannerTypes(page, MOSS.id);
  await page.getByText('is nothing that the shop counts or sells by piece').first().waitFor();
  await page.getByRole('button', { name: 'Put down' }).click();
}, 120_000);

test('the shelf is counted by scan, and what the book does not have is asked about', async () => {
  const [id = ''] = (await reached(app, 'ware-set', 1))[0]?.subjects ?? [];
  await page.getByRole('button', { name: 'Count the shelf by scan' }).click();
  await scannerTypes(page, id);
  await page.getByText('the book has 2').waitFor();
  await page.getByRole('button', { name: 'Write the count of 1 item' }).click();
  await page.getByRole('link', { name: /Mug/ }).filter({ hasText: '1 left' }).click();
  await page.getByRole('button', { name: 'Sold one' }).click();
  await page.getByText('none left').waitFor();
  await page.getByRole('button', { name: 'Sold one' }).click();
  await page.getByText('The book has 0 of Mug, marsh python left').first().waitFor();
  await page.getByRole('button', { name: 'No, write nothing' }).click();
  await reached(app, 'item-sold', 2);
}, 60_000);

test('a shed skin becomes two pieces by scanning the animal, and its tag carries the caution', async () => {
  await page.goto(`${app.url}/shop`);
  await page.getByRole('button', { name: /^Shed items/ }).click();
  await scannerTypes(page, MOSS.id);
  await page.getByRole('heading', { name: `Shed of ${MOSS.name}` }).waitFor();
  await page.getByLabel('Pieces').fill('2');
  await page.getByLabel('Price of each').fill('6.50');
  await page.getByRole('button', { name: 'Make the shed item' }).click();
  await page.getByText('2 left').waitFor();
  await page.getByRole('link', { name: 'Print its tags' }).click();
  const words = textOf(await printed('2 shed tags', 'sheds'));
  expect(words).toContain(MOSS.name);
  expect(words).toMatch(/Salmonella/);
}, 90_000);

test('an animal is put on offer on its record and stands on the list', async () => {
  await page.goto(`${app.url}/animal/${BRACKEN.id}`);
  await page.getByRole('button', { name: 'Put on offer …' }).click();
  await page.getByLabel('Price').fill('180');
  await page.getByRole('button', { name: 'Put on offer', exact: true }).click();
  await page.getByText('€180.00').first().waitFor();
  await page.goto(`${app.url}/shop`);
  await page.getByRole('button', { name: /^On offer/ }).click();
  await page.getByRole('link', { name: new RegExp(BRACKEN.name) }).waitFor();
}, 60_000);
