import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { labelBox, ownStock } from '../../print/index.ts';
import type { LogEvent, Payload } from '../../src/core/index.ts';
import { type ReadCode, readPage, run } from '../print/paper.ts';
import { expectSoundFile } from '../print/readBack.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { textOf } from './paper.ts';
import type { RunningApp } from './site.ts';
import { laySmallSite, type SmallSite } from './smallSite.ts';

const DPI = 300;
/** A room, a rack and its eight tubs. */
const PLACES = 10;
const STOCK = 'own-freezer-67x25';
const PRINTER = 'own-desk-300';

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
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

async function fill(lines: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(lines)) await page.getByLabel(label, { exact: true }).fill(value);
}

/** Makes a PDF by that button and saves it. */
async function saved(button: string, name: string): Promise<string> {
  await page.getByRole('button', { name: button }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(site.folder, `${name}.pdf`);
  await (await download).saveAs(file);
  return file;
}

async function openMore(): Promise<void> {
  await page.getByText('More about the paper').click();
}

async function onHub(kind: LogEvent['kind']): Promise<unknown> {
  return (await onTheHub(app)).findLast((one) => one.kind === kind)?.payload;
}

async function lastOf(kind: LogEvent['kind']): Promise<unknown> {
  await expect.poll(async () => (await onTheHub(app)).some((one) => one.kind === kind), { timeout: 20_000 }).toBe(true);
  return onHub(kind);
}

/** The upper left corner of each code, in mm, by what it says. */
function corners(codes: readonly ReadCode[]): ReadonlyMap<string, readonly [number, number]> {
  return new Map(codes.map(({ text, corners: [first = [0, 0] as const] }) => [text, first]));
}

test('an own sheet in inches is drawn as it is typed, and an overlap is refused in words with nothing lost', async () => {
  await page.goto(`${app.url}/print?what=place`);
  await openMore();
  await page.getByRole('link', { name: 'Paper of your own' }).click();
  await page.getByRole('heading', { name: 'Paper of your own' }).waitFor();
  await page.getByRole('button', { name: 'Inches' }).click();
  await page.getByRole('button', { name: 'Letter' }).click();
  await fill({
    Name: 'Freezer',
    'Label width': '2 5/8',
    'Label height': '1',
    'Labels across': '0',
    'Labels down': '10',
  });
  await fill({ 'First label from the left': '5/32', 'First label from the top': '1/2', 'Step across': '2 1/2' });
  await fill({ 'Step down': '1' });
  await page.getByRole('button', { name: 'Save this paper' }).click();
  await page.getByText('“0” is no number of labels across.').waitFor();
  await fill({ 'Labels across': '3' });
  await page.getByRole('button', { name: 'Save this paper' }).click();
  await page.getByText('The labels of stock Freezer overlap (2.625 in wide, pitch 2.5 in).').waitFor();
  await page.getByRole('img', { name: /30 labels .*: hatched where they lie on each other/ }).waitFor();
  expect(await page.getByLabel('Step across').evaluate((line) => line === document.activeElement)).toBe(true);
  await fill({ 'Step across': '8' });
  await page.getByRole('img', { name: /30 labels .*: 20 leave the page/ }).waitFor();
  await fill({ 'Step across': '2 25/32' });
  await page.getByRole('img', { name: /30 labels on 8\.5 in × 11 in; .* stay free at the right/ }).waitFor();
  expect(await page.getByLabel('Label width').inputValue()).toBe('2 5/8');
  await page.getByRole('button', { name: 'Save this paper' }).click();
  await page.waitForURL('**/print?what=place');
  expect(await page.getByLabel('Stock', { exact: true }).inputValue()).toBe(STOCK);
});

test('place labels print on it, read back, and stand on its labels', async () => {
  const file = await saved(`Make the PDF of ${PLACES} place labels`, 'places');
  expectSoundFile(file);
  expect(run('pdfinfo', file)).toMatch(/Page size: +612 x 792 pts/);
  const codes = corners(await readPage(file, 1, DPI));
  expect(codes.size).toBe(PLACES);
  const stock = ownStock((await lastOf('own-stock-set')) as Payload<'own-stock-set'>);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  const isOn = ([x, y]: readonly [number, number], label: number): boolean => {
    const [left, top, width, height] = labelBox(stock.value, label);
    return x > left && x < left + width && y > top && y < top + height;
  };
  const taken = [...codes.values()].map((at) =>
    Array.from({ length: 30 }, (_none, n) => n + 1).find((n) => isOn(at, n)),
  );
  expect(taken.toSorted((a = 0, b = 0) => a - b)).toEqual(Array.from({ length: PLACES }, (_none, n) => n + 1));
});

test('cards leave it out as they leave out other small labels, and the list of labels has it', async () => {
  await page.getByLabel('Kind').selectOption('card');
  await page.getByRole('heading', { name: 'Print cards' }).waitFor();
  const offered = await page
    .getByLabel('Stock')
    .locator('option')
    .evaluateAll((all) => all.map((one) => one.getAttribute('value')));
  expect(offered).toContain('a4-70x52');
  expect(offered).not.toContain('a4-99.1x38.1');
  expect(offered).not.toContain(STOCK);
});

test('an own printer with 10 dots per inch is refused in words; with 300 it is chosen at once', async () => {
  await page.goto(`${app.url}/print?what=place`);
  await openMore();
  await page.getByRole('link', { name: 'Printer of your own' }).click();
  await fill({ Name: 'Desk' });
  await page.getByLabel('Resolution').selectOption('other-inch');
  await fill({ Dots: '10' });
  await page.getByRole('button', { name: 'Save this printer' }).click();
  await page.getByText('No printer that cards can be printed with lays 10 dots per inch.').waitFor();
  await fill({ Dots: '300' });
  await page.getByRole('button', { name: 'Save this printer' }).click();
  await page.waitForURL('**/print?what=place');
  expect(await page.getByLabel('Printer', { exact: true }).inputValue()).toBe(PRINTER);
  expect(await lastOf('own-printer-set')).toMatchObject({ printer: PRINTER, dotsPerMm: 300 / 25.4, insetDots: 0.25 });
});

test('the calibration page prints, its code opens its entry, and 30 mm off is refused', async () => {
  await openMore();
  await page.getByRole('link', { name: 'Calibrate this printer on this stock' }).click();
  const file = await saved('Make the calibration page', 'calibration');
  await page.getByText(/^1 of 1 code, (\d+) of \1 lines read back\.$/).waitFor({ timeout: 60_000 });
  expect(textOf(file)).toContain('Calibration page');
  const [code] = await readPage(file, 1, DPI);
  expect(code?.text).toBe(`CALIBRATE:${STOCK}/${PRINTER}`.toUpperCase());
  await page.goto(`${app.url}/`);
  await page.getByRole('button', { name: 'Take a stamp' }).waitFor();
  await scannerTypes(page, code?.text ?? '');
  await page.waitForURL(`**/print/calibration?stock=${STOCK}&printer=${PRINTER}`);
  expect([
    await page.getByLabel('Stock', { exact: true }).inputValue(),
    await page.getByLabel('Printer', { exact: true }).inputValue(),
  ]).toEqual([STOCK, PRINTER]);
  await fill({ 'Cross A: how much further right': '30', 'Cross A: how much further down': '-1.5' });
  await fill({ 'Ruler across: its length': '100', 'Ruler down: its length': '100' });
  await page.getByRole('button', { name: 'Save what you measured' }).click();
  await page.getByText('the cross is 30 mm off, and at most 10 mm can be set right').waitFor();
  expect(await page.getByLabel('Cross A: how much further down').inputValue()).toBe('-1.5');
});

test('what was measured moves the print by just that much, and Print says so', async () => {
  await page.goto(`${app.url}/print?what=place`);
  const before = corners(await readPage(await saved(`Make the PDF of ${PLACES} place labels`, 'before'), 1, DPI));
  await openMore();
  await page.getByRole('link', { name: 'Calibrate this printer on this stock' }).click();
  await fill({ 'Cross A: how much further right': '2', 'Cross A: how much further down': '-1.5' });
  await fill({ 'Ruler across: its length': '100', 'Ruler down: its length': '100' });
  await page.getByText('everything moves 2 mm left and 1.5 mm down').waitFor();
  await page.getByRole('button', { name: 'Save what you measured' }).click();
  await page.getByRole('link', { name: 'Back to Print' }).click();
  await page.getByRole('link', { name: /^Calibrated .*today/ }).waitFor();
  expect(await lastOf('printer-calibrated')).toEqual({
    ...{ printer: PRINTER, stock: STOCK, offsetXMm: 2, offsetYMm: -1.5, scaleX: 1, scaleY: 1 },
  });
  const after = corners(await readPage(await saved(`Make the PDF of ${PLACES} place labels`, 'after'), 1, DPI));
  expect(after.size).toBe(PLACES);
  for (const [text, [x, y]] of before) {
    const [movedX = 0, movedY = 0] = after.get(text) ?? [];
    // A dot of this printer is 0.085 mm, a pixel of the reader as much.
    expect(Math.abs(movedX - x + 2)).toBeLessThan(0.2);
    expect(Math.abs(movedY - y - 1.5)).toBeLessThan(0.2);
  }
});

test('certain pages print alone, nonsense for pages is refused, and the back and cut marks are remembered', async () => {
  await page.getByLabel('Stock', { exact: true }).selectOption('roll-57x32');
  await openMore();
  await fill({ 'Only pages': 'some' });
  await page.getByLabel('Only pages').blur();
  await page.getByText('“some” names no pages of a run.').waitFor();
  await fill({ 'Only pages': '3-5' });
  await page.getByText('only pages 3-5').waitFor();
  const file = await saved(`Make the PDF of ${PLACES} place labels`, 'pages');
  expect(run('pdfinfo', file)).toMatch(/Pages: +3\n/);
  await page.getByLabel('Two-sided').selectOption('long');
  await page.getByLabel('Marks in the margins to cut along').check();
  await page.reload();
  await page.getByText('two-sided, over the long edge · cut marks').waitFor();
  const whole = await saved(`Make the PDF of ${PLACES} place labels`, 'two-sided');
  expect(run('pdfinfo', whole)).toMatch(/Pages: +20\n/);
  await page.goto(`${app.url}/print?what=clutch`);
  await page.getByText('More about the paper').waitFor();
  expect(await page.getByText('two-sided').isVisible()).toBe(false);
});

test('an own sheet is changed and taken off the list, with its undo', async () => {
  await page.goto(`${app.url}/print/stock?id=${STOCK}`);
  expect(await page.getByLabel('Label width').inputValue()).toBe('2.625');
  await fill({ Name: 'Freezer door' });
  await page.getByRole('button', { name: 'Save the changes' }).click();
  await page.waitForURL('**/print');
  await expect
    .poll(() => onHub('own-stock-set'), { timeout: 20_000 })
    .toMatchObject({ stock: STOCK, name: 'Freezer door', typedIn: 'inch', labelWidthMm: 66.675 });
  await page.goto(`${app.url}/print/stock?id=${STOCK}`);
  await page.getByRole('button', { name: 'Take it off the list' }).click();
  await page.getByRole('button', { name: /^Undo paper taken off the list/ }).click();
  // A page that is left at once takes a write with it that has not reached the log.
  await expect.poll(() => onHub('slip-made'), { timeout: 20_000 }).toMatchObject({ how: 'undo' });
  await page.goto(`${app.url}/print?what=place`);
  await page.getByLabel('Stock', { exact: true }).selectOption(STOCK);
  expect(faults).toEqual([]);
});
