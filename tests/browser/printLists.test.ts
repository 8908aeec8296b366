import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { readPage, run } from '../print/paper.ts';
import { launchChromium } from '../tools/browser.ts';
import { textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago, BRACKEN, MOSS, smallLog } from './smallSite.ts';

const RACK = idOf(2);
const folder = mkdtempSync(join(tmpdir(), 'tubwright-lists-'));
let app: RunningApp;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  const named = { name: 'Small House', timeZone: 'Etc/UTC', host: 'tubs.example', currency: 'EUR' };
  const more = eventsOf(
    [
      [ago(4), 'site-named', [], named],
      [ago(3), 'animal-offered', [BRACKEN.id], { priceMinor: 18_000 }],
    ],
    400,
  );
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

async function saved(name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the PDF' }).click();
  const file = join(folder, `${name}.pdf`);
  const whole = await download;
  expect(whole.suggestedFilename()).toMatch(/^[a-z-]+-\d{4}-\d\d-\d\d\.pdf$/);
  await whole.saveAs(file);
  return file;
}

const button = (name: string) => page.getByRole('button', { name, exact: true });

test('the shop’s link prints the sale list with what is on offer', async () => {
  await page.goto(`${app.url}/shop`);
  await page.getByRole('link', { name: 'Print the sale list' }).click();
  await page.getByRole('heading', { name: 'Print the sale list' }).waitFor();
  await button('Make the PDF of the sale list').click();
  await page.getByText('1 line on 1 page').waitFor({ timeout: 60_000 });
  await page.getByText(/^(\d+) of \1 lines read back\.$/).waitFor({ timeout: 60_000 });
  const words = textOf(await saved('sale'));
  for (const said of ['Animals on offer', 'Bracken', '€180.00', 'Salmonella']) expect(words).toContain(said);
  expect(words).not.toContain('Moss');
});

test('a rack sheet has everybody who lives there, room for marks, and a code that opens the rack', async () => {
  await page.getByLabel('Kind').selectOption('rack-sheet');
  await button('Make the PDF of 1 rack sheet').click();
  await page.getByText('7 lines on 1 page').waitFor({ timeout: 60_000 });
  await page.getByText(/^1 of 1 code, (\d+) of \1 lines read back\.$/).waitFor({ timeout: 60_000 });
  const file = await saved('rack');
  const words = textOf(file);
  for (const said of ['Moss', 'Bracken', 'next meal', 'water', 'write them in afterwards'])
    expect(words.replace(/\s+/g, ' ')).toContain(said);
  expect((await readPage(file, 1, 150)).map(({ text }) => text)).toEqual([`HTTPS://TUBS.EXAMPLE/${RACK}`]);
});

test('an address asks for one place, another page size makes another file, and an id of no place is refused', async () => {
  await page.goto(`${app.url}/print?what=rack-sheet&only=${RACK}`);
  expect(await page.getByLabel('Rack, room or exhibit', { exact: true }).inputValue()).toBe(RACK);
  await page.getByLabel('Page', { exact: true }).selectOption('letter');
  await button('Make the PDF of 1 rack sheet').click();
  await page.getByText('7 lines on 1 page').waitFor({ timeout: 60_000 });
  expect(run('pdfinfo', await saved('letter'))).toMatch(/Page size: +612 x 792/);
  await page.goto(`${app.url}/print?what=rack-sheet&only=${MOSS.id}`);
  await page.getByText('is Moss, not a place').waitFor();
  expect(faults).toEqual([]);
});
