import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LogEvent } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { run } from '../print/paper.ts';
import { launchChromium } from '../tools/browser.ts';
import { type RunningApp, startApp } from './site.ts';

/** More than one event takes of a run. */
const ANIMALS = 5200;
const STOCK = 'card-85x54';
const SLOW = { timeout: 40_000 };

let folder: string;
let app: RunningApp;
let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tubwright-long-'));
  const [file, data] = [join(folder, 'long.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(longLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(`The long site was not taken in: ${taken.err}`);
  app = await startApp(['--data', data]);
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  await openPrint();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

function longLog(): LogEvent[] {
  const animals = Array.from({ length: ANIMALS }, (_none, at) => at + 1);
  return eventsOf([
    ['2026-01-01', 'site-named', [], { name: 'Long House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
    ...animals.map(
      (n) =>
        [
          '2026-01-02',
          'animal-added',
          [idOf(n)],
          { species: 'Python regius', name: `Reed ${n}`, sex: 'female' },
        ] as const,
    ),
  ]);
}

async function openPrint(): Promise<void> {
  await page?.close();
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(`${app.url}/print`);
  await page.getByRole('heading', { name: 'Print cards' }).waitFor(SLOW);
}

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });

/** Everything that the hub was given since the site was laid out. */
async function written(kind: string): Promise<readonly LogEvent[]> {
  const rows: LogEvent[] = [];
  for (let after = ANIMALS + 1; ; ) {
    const answer = await fetch(`${app.url}/pull?after=${after}&limit=5000`);
    const got = (await answer.json()) as { readonly rows: readonly LogEvent[]; readonly next: number };
    rows.push(...got.rows.filter((event) => event.kind === kind));
    if (got.next === after) return rows;
    after = got.next;
  }
}

async function saved(name: string): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the PDF' }).click();
  const file = join(folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return file;
}

test('PRINT-RESUME: more pages than one event takes are laid in two, and the screen lives while they are made', async () => {
  await page.getByLabel('Stock', { exact: true }).selectOption(STOCK);
  await button('Make the PDF of 5,200 cards').click();
  await page.getByText('Setting 5,200 cards…').waitFor();
  // What is touched meanwhile answers.
  await page.getByText('More about the paper').click({ timeout: 3000 });
  await page.getByLabel('Only pages').waitFor({ timeout: 3000 });
  await page.getByText('5,200 cards on 5,200 pages').waitFor(SLOW);
  expect(run('pdfinfo', await saved('whole'))).toMatch(/Pages: +5200\n/);
  await expect.poll(async () => (await written('run-laid')).length, SLOW).toBe(2);
  expect((await written('run-laid')).map(({ payload }) => payload)).toMatchObject([
    { part: [1, 2], pages: 5200 },
    { part: [2, 2], pages: 5200 },
  ]);
}, 60_000);

test('a part of it is marked while the codes are read no further, and two touches mark it once', async () => {
  // With nothing else to do, what was written is seen before the marking says so itself.
  await button('Stop').click();
  await page.getByText('Only a part came out').click();
  await page.getByLabel('Last page that came out').fill('5,100');
  await button('Write it').dblclick();
  await page.getByText('5,100 cards are marked as printed. Left: pages 5,101 to 5,200.').waitFor(SLOW);
  await expect.poll(async () => (await written('card-printed')).length, SLOW).toBe(5100);
}, 60_000);

test('it stands as one run, its rest is printed, and then it is done', async () => {
  await openPrint();
  await page.getByText(`Tub cards on ${STOCK}: printed to page 5,100 of 5,200`, { exact: true }).waitFor(SLOW);
  expect(await page.getByText('Done with it').count()).toBe(1);
  await page.getByRole('link', { name: 'Print pages 5,101 to 5,200' }).click();
  await button('Make the PDF of pages 5,101 to 5,200').click();
  await page.getByText('100 cards on 100 pages').waitFor(SLOW);
  expect(run('pdfinfo', await saved('rest'))).toMatch(/Pages: +100\n/);
  await button('These are printed').click();
  await page.getByText('100 cards are marked as printed.').waitFor(SLOW);
  await expect.poll(async () => (await written('card-printed')).length, SLOW).toBe(ANIMALS);
  expect((await written('run-laid')).length).toBe(2);
  await openPrint();
  await page.getByText('No card is out of date').waitFor(SLOW);
  expect(await page.getByText('Not all on paper yet').count()).toBe(0);
  expect(faults).toEqual([]);
}, 60_000);
