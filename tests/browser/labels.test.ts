import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { LAYOUT_TEST, STAMPS } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { readPage } from '../print/paper.ts';
import { expectSoundFile } from '../print/readBack.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago, BRACKEN, FREE_TUB, MOSS, smallLog } from './smallSite.ts';

const DPI = 150;
const CLUTCH = idOf(30);
const ADDRESS = `HTTPS://TUBS.EXAMPLE/${CLUTCH}`;

const folder = mkdtempSync(join(tmpdir(), 'tubwright-labels-'));
let app: RunningApp;
let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  const laid = eventsOf(
    [[ago(3), 'clutch-laid', [MOSS.id, CLUTCH], { clutch: CLUTCH, eggs: 5, slugs: 1, sire: BRACKEN.id }]],
    200,
  );
  writeFileSync(join(folder, 'site.ndjson'), writeLog([...smallLog(), ...laid]));
  const taken = await tubwright(['import', join(folder, 'site.ndjson'), '--into', join(folder, 'data')]);
  expect(taken.err).toBe('');
  app = await startApp(['--data', join(folder, 'data')]);
  browser = await launchChromium();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

/** Makes the PDF of so many pieces on the open Print screen, and saves it. */
async function printed(pieces: string, name: string): Promise<string> {
  await page.getByRole('button', { name: `Make the PDF of ${pieces}` }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(folder, `${name}.pdf`);
  const saved = await download;
  expect(saved.suggestedFilename()).toMatch(/^[a-z-]+-\d{4}-\d\d-\d\d\.pdf$/);
  await saved.saveAs(file);
  return file;
}

/** What all codes of a file's pages say. */
async function codesOf(file: string, pages: number): Promise<readonly string[]> {
  const read = await Promise.all(Array.from({ length: pages }, (_none, at) => readPage(file, at + 1, DPI)));
  return read.flatMap((codes) => codes.map(({ text }) => text));
}

test('an address asks for a clutch tag; it prints, reads back, and opens the clutch when it is scanned', async () => {
  await page.goto(`${app.url}/print?what=clutch&only=${CLUTCH}`);
  await page.getByRole('heading', { name: 'Print clutch tags' }).waitFor();
  const file = await printed('1 clutch tag', 'tag');
  expectSoundFile(file);
  expect(await codesOf(file, 1)).toEqual([ADDRESS]);
  const said = textOf(file);
  for (const words of [
    'Moss',
    'Bracken',
    '5 eggs, 1 slug',
    'usually 58–70 d',
    `${CLUTCH.slice(0, 4)}-${CLUTCH.slice(4)}`,
  ])
    expect(said).toContain(words);
  await page.getByRole('button', { name: 'These are printed' }).click();
  await page.getByText('1 clutch tag is marked as printed.').waitFor();
  await scannerTypes(page, ADDRESS);
  await page.waitForURL(`**/clutch/${CLUTCH}`);
});

test('the marks of a clutch’s eggs print on small labels, one for each egg', async () => {
  await page.goto(`${app.url}/print?what=egg&only=${CLUTCH}`);
  expect(await page.getByLabel('Stock').inputValue()).toBe('a4-38.1x21.2');
  const file = await printed('5 egg marks', 'eggs');
  expect(await codesOf(file, 1)).toEqual(Array(5).fill(ADDRESS));
  expect(textOf(file).match(/^ *1 +2 +3 +4 +5 *$/m)).not.toBeNull();
});

test('places print with what stands in a rack, and an id that is no place is refused in words', async () => {
  await page.goto(`${app.url}/print?what=place&only=${MOSS.id},${FREE_TUB}`);
  await page.getByText(`is Moss, not a place`).waitFor();
  const file = await printed('1 place label', 'place');
  expect(await codesOf(file, 1)).toEqual([`HTTPS://TUBS.EXAMPLE/${FREE_TUB}`]);
  await page.getByLabel('One rack or room with what stands in it').check();
  await page.getByLabel('Rack or room', { exact: true }).selectOption({ label: 'Rack 1' });
  await page.getByRole('button', { name: 'Make the PDF of 9 place labels' }).waitFor();
});

test('what does not fit on a label is named with its reason', async () => {
  await page.goto(`${app.url}/print?what=clutch`);
  await page.getByLabel('Stock').selectOption('roll-40x15');
  await page.getByRole('button', { name: 'Make the PDF of 1 clutch tag' }).click();
  await page.getByText('1 clutch tag is not on the paper').waitFor({ timeout: 60_000 });
  await page.getByText('does not fit on roll-40x15').waitFor();
});

test('the stamp sheet prints, reads back, and a stamp scanned from it is put on the next card', async () => {
  await page.goto(`${app.url}/print`);
  await page.getByLabel('Kind').selectOption('stamps');
  const file = await printed(`${STAMPS.length} stamps`, 'stamps');
  const codes = await codesOf(file, Math.ceil(STAMPS.length / 10));
  expect([...codes].sort()).toEqual(STAMPS.map(({ id }) => `STAMP:${id.toUpperCase()}`).sort());
  await page.goto(`${app.url}/`);
  await page.getByRole('button', { name: 'Take a stamp' }).waitFor();
  const refused = codes.find((code) => code.endsWith('REFUSED')) ?? '';
  await scannerTypes(page, refused);
  await page
    .getByRole('button', { name: /refused/ })
    .first()
    .waitFor();
  await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${BRACKEN.id}`);
  const offered = async () =>
    (await onTheHub(app)).filter(
      (event) => event.kind === 'prey-offered' && event.subjects[0] === BRACKEN.id && event.day > ago(1),
    ).length;
  await expect.poll(offered, { timeout: 20_000 }).toBe(1);
});

test('the code for typing scanners prints and reads back', async () => {
  await page.goto(`${app.url}/print?what=layout-test`);
  expect(await codesOf(await printed('1 test code', 'test'), 1)).toEqual([LAYOUT_TEST]);
  expect(faults).toEqual([]);
});
