import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { readCsv } from '../core/readCsv.ts';
import { launchChromium } from '../tools/browser.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago } from './smallSite.ts';

const [RACK, TUB, OAK, NEW] = [idOf(1), idOf(2), idOf(11), idOf(12)];
const folder = mkdtempSync(join(tmpdir(), 'tubwright-growth-'));
let app: RunningApp;
let browser: Browser;
let page: Page;
let faults: string[];

type Rows = Parameters<typeof eventsOf>[0][number][];

/** Two years of an animal: weighed monthly but for half a year, fed every ten days, refused four times, laid once. */
function rows(): Rows {
  const days = [700, 670, 640, 610, 580, 380, 350, 320, 290, 260, 230, 200, 170, 140, 110, 80, 50, 20];
  const all: Rows = [
    [ago(720), 'site-named', [], { name: 'Growth House', timeZone: 'Etc/UTC' }],
    [ago(720), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', walk: 1 }],
    [ago(720), 'place-added', [TUB], { placeKind: 'tub', name: '1-01', parent: RACK, walk: 1 }],
    [ago(720), 'animal-added', [OAK], { species: 'Python regius', name: 'Oak', sex: 'female', source: '=Reed' }],
    [ago(720), 'animal-added', [NEW], { species: 'Python regius', name: 'New', sex: 'unsexed' }],
    [ago(719), 'animal-moved', [OAK], { to: TUB }],
    ...days.map((one, at): Rows[number] => [
      ago(one),
      'animal-weighed',
      [OAK],
      { weightG: 1500 + 10 * at - (one < 100 ? 400 : 0) },
    ]),
    ...Array.from({ length: 20 }, (_none, at): Rows[number] => [
      ago(200 - 10 * at),
      'prey-offered',
      [OAK],
      { prey: 'rat-small', count: 1, totalG: 80, outcome: at % 5 === 4 ? 'refused' : 'taken' },
    ]),
    [ago(100), 'clutch-laid', [OAK], { clutch: idOf(30), eggs: 6, damG: 1200 }],
    [ago(60), 'shed-seen', [OAK]],
  ];
  return all.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
}

beforeAll(async () => {
  const [file, data] = [join(folder, 'log.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(eventsOf(rows())));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(taken.err);
  app = await startApp(['--data', data]);
  browser = await launchChromium();
  // One page for all: a new device takes its copy of the log first, each time.
  page = await browser.newPage({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page.on('pageerror', (error) => faults.push(String(error)));
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

beforeEach(async () => {
  faults = [];
});

afterEach(async () => {
  expect(faults).toEqual([]);
});

const growth = () => page.getByRole('region', { name: 'Growth' });
const dots = () => page.locator('.growth-chart circle').count();

async function openOak(): Promise<void> {
  await page.goto(`${app.url}/animal/${OAK}`);
  await page.locator('.growth-chart').waitFor();
}

describe('the growth of an animal', () => {
  test('shows a year, and more or less when asked', async () => {
    await openOak();
    expect(await dots()).toBe(12 + 1);
    await growth().getByRole('button', { name: 'season' }).click();
    await expect.poll(dots).toBe(8 + 1);
    await growth().getByRole('button', { name: 'all' }).click();
    await expect.poll(dots).toBe(18 + 1);
  });
  test('joins nothing over half a year, nor over the laying, and says so', async () => {
    await openOak();
    await growth().getByRole('button', { name: 'all' }).click();
    await expect.poll(() => page.locator('.growth-line').count()).toBe(3);
    expect(await growth().textContent()).toMatch(/Not joined, since more than 2 weighing intervals.*\(200 days\)/);
  });
  test('draws the feeds, hollow where refused, the shed and the laying', async () => {
    await openOak();
    expect(await page.locator('.growth-chart rect.growth-solid').count()).toBe(16);
    expect(await page.locator('.growth-chart rect.growth-hollow').count()).toBe(4);
    expect(await page.locator('.growth-chart .growth-laying').count()).toBe(1);
    expect(await page.getByRole('img', { name: /20 feeds, 4 of them refused; 1 shed, 1 laying,/ }).count()).toBe(1);
  });
  test('stands as a table too, and fits a phone', async () => {
    await openOak();
    await growth().getByText('The same as a table').click();
    expect(await growth().getByRole('row').count()).toBe(1 + 13 + 20 + 1 + 1);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    const sizes = await page
      .locator('.growth-chart text')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect()));
    for (const { left, right, height } of sizes)
      expect([left >= 0, right <= 390, height >= 12]).toEqual([true, true, true]);
  });
  test('says the first step where nothing was weighed', async () => {
    await page.goto(`${app.url}/animal/${NEW}`);
    await growth().getByText('No weighing yet').waitFor();
  });
});

describe('the inspector’s pack in Books', () => {
  const pack = () => page.getByRole('region', { name: 'Inspector’s pack' });
  test('asks which animal, and makes a PDF and its tables of one', async () => {
    await page.goto(`${app.url}/books`);
    await pack().getByLabel('One animal').check();
    await pack().getByRole('button', { name: 'Make the pack' }).click();
    await pack().getByText('It is not said which animal or place').waitFor();
    await pack().getByRole('searchbox').fill('oak');
    await pack().getByRole('list', { name: 'Found' }).getByRole('button', { name: 'Oak' }).click();
    await pack().getByLabel('Profile').selectOption('scotland');
    await pack().getByRole('button', { name: 'Make the pack' }).click();
    await pack()
      .getByText(/1 animal on \d pages, and 11 tables/)
      .waitFor();
    expect((await saved(pack().getByRole('link', { name: 'Save the PDF' }))).subarray(0, 5).toString()).toBe('%PDF-');
    const animals = readCsv((await saved(pack().getByRole('link', { name: 'animals.csv' }))).toString());
    expect(animals[1]?.[animals[0]?.indexOf('supplier') ?? -1]).toBe("'=Reed");
  });
  test('can be cancelled, and keeps a profile for the site when told to', async () => {
    await page.goto(`${app.url}/books`);
    await pack().getByLabel('Profile').selectOption('england');
    await pack().getByRole('button', { name: 'Keep this profile for the site' }).click();
    await expect.poll(() => pack().getByRole('button', { name: 'Keep this profile' }).count()).toBe(0);
    await page.route('**/*.ttf', () => undefined);
    await pack().getByRole('button', { name: 'Make the pack' }).click();
    await pack().getByRole('button', { name: 'Cancel' }).click();
    await pack().getByRole('button', { name: 'Make the pack' }).waitFor();
    await page.reload();
    await expect.poll(() => pack().getByLabel('Profile').inputValue()).toBe('england');
  });
});

async function saved(link: ReturnType<Page['getByRole']>): Promise<Buffer> {
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  return readFileSync(await download.path());
}
