import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import type { RunningApp } from './site.ts';
import { laySmallSite, MOSS, type SmallSite } from './smallSite.ts';

const TAKEN_UP = 'Taken up from before, as you left it.';

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
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  await openAnew('/print?what=place');
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** The page is gone, as when a phone has slept, and another one opens. */
async function openAnew(address: string): Promise<void> {
  await page?.close();
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(`${app.url}${address}`);
}

async function fill(lines: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(lines)) await page.getByLabel(label, { exact: true }).fill(value);
}

async function openForm(link: string): Promise<void> {
  await page.getByText('More about the paper').click();
  await page.getByRole('link', { name: link }).click();
}

const value = (label: string) => page.getByLabel(label, { exact: true }).inputValue();
const taken = () => page.getByText(TAKEN_UP).count();
const onHub = async (kind: string) => (await onTheHub(app)).filter((one) => one.kind === kind).length;

test('half a paper of your own is there again after a card was scanned, and after the app was closed', async () => {
  await openForm('Paper of your own');
  await page.getByLabel('Begin with').selectOption('copy a4-70x52');
  expect(await taken()).toBe(0);
  await fill({ Name: 'Freezer door', 'Label height': '2 in', 'Labels down': 'five' });
  await page.getByRole('link', { name: 'Scan' }).click();
  await page.getByRole('button', { name: 'Take a stamp' }).waitFor();
  await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
  await page.getByRole('heading', { name: MOSS.name }).first().waitFor();
  await page.goBack();
  await openAnew('/print?what=place');
  await openForm('Paper of your own');
  await page.getByText(TAKEN_UP).waitFor();
  expect([
    await value('Begin with'),
    await value('Name'),
    await value('Label height'),
    await value('Labels down'),
  ]).toEqual(['copy a4-70x52', 'Freezer door', '2 in', 'five']);
  expect(await page.getByRole('alert').count()).toBe(0);
});

test('it can be started anew, and what was typed is then gone', async () => {
  await page.getByRole('button', { name: 'Start anew' }).click();
  expect([await taken(), await value('Name'), await value('Label height')]).toEqual([0, '', '52']);
  await page.reload();
  await page.getByRole('heading', { name: 'Paper of your own' }).waitFor();
  expect([await taken(), await value('Begin with'), await value('Name')]).toEqual([0, 'sheet', '']);
});

test('a saved paper is forgotten, and one that is half changed is kept beside a new one', async () => {
  await page.getByLabel('Begin with').selectOption('copy a4-70x52');
  await fill({ Name: 'Freezer' });
  await page.getByRole('button', { name: 'Save this paper' }).click();
  await page.waitForURL('**/print?what=place');
  await expect.poll(() => onHub('own-stock-set'), { timeout: 20_000 }).toBe(1);
  await openAnew('/print/stock?from=a4-70x52');
  await page.getByRole('heading', { name: 'Paper of your own' }).waitFor();
  expect([await taken(), await value('Name')]).toEqual([0, '']);
  await fill({ Name: 'Another' });
  await page.getByLabel('Begin with').selectOption({ label: 'Freezer' });
  expect([await taken(), await value('Name')]).toEqual([0, 'Freezer']);
  await fill({ Name: 'Freezer, left' });
  await openAnew('/print/stock');
  await page.getByText(TAKEN_UP).waitFor();
  expect(await value('Name')).toBe('Freezer, left');
  await page.getByLabel('Begin with').selectOption('copy a4-70x52');
  expect([await taken(), await value('Name')]).toEqual([1, 'Another']);
});

test('half a printer is there again, and forgotten once it is saved', async () => {
  await openAnew('/print/printer');
  await page.getByLabel('Resolution').selectOption('other-mm');
  await fill({ Name: 'Desk', Dots: '11' });
  await openAnew('/print/printer');
  await page.getByText(TAKEN_UP).waitFor();
  expect([await value('Name'), await value('Resolution'), await value('Dots')]).toEqual(['Desk', 'other-mm', '11']);
  await page.getByRole('button', { name: 'Save this printer' }).click();
  await page.waitForURL('**/print');
  await expect.poll(() => onHub('own-printer-set'), { timeout: 20_000 }).toBe(1);
  await openAnew('/print/printer');
  await page.getByRole('heading', { name: 'Printer of your own' }).waitFor();
  expect([await taken(), await value('Name')]).toEqual([0, '']);
});

test('figures of a calibration page are there again for that printer and paper, and for no other', async () => {
  const [FIRST, OTHER] = ['/print/calibration?stock=a4-70x52&printer=office-600', '/print/calibration?stock=a4-85x54'];
  await openAnew(FIRST);
  await fill({ 'Cross A: how much further right': '-0.8', 'Ruler across: its length': '100' });
  await openAnew(OTHER);
  await page.getByRole('heading', { name: 'Calibration', exact: true }).waitFor();
  expect([await taken(), await value('Cross A: how much further right')]).toEqual([0, '']);
  await openAnew('/print/calibration');
  await page.getByText(TAKEN_UP).waitFor();
  expect([await value('Stock'), await value('Cross A: how much further right')]).toEqual(['a4-70x52', '-0.8']);
  await fill({ 'Cross A: how much further down': '0', 'Ruler down: its length': '100' });
  await page.getByRole('button', { name: 'Save what you measured' }).click();
  await page.getByText('Saved: it is applied').waitFor();
  expect(await taken()).toBe(0);
  await expect.poll(() => onHub('printer-calibrated'), { timeout: 20_000 }).toBe(1);
  await openAnew(FIRST);
  await page.getByRole('heading', { name: 'Calibration', exact: true }).waitFor();
  expect([await taken(), await value('Cross A: how much further right')]).toEqual([0, '']);
  expect(faults).toEqual([]);
});

test('what was set anew on another device since says so, and starting anew shows that', async () => {
  await openAnew('/print/stock?id=own-freezer-70x52');
  await page.getByRole('button', { name: 'Start anew' }).click();
  await fill({ Name: 'Freezer, right' });
  const elsewhere = await (await browser.newContext()).newPage();
  await elsewhere.goto(`${app.url}/print/stock?id=own-freezer-70x52`);
  await elsewhere.getByLabel('Name', { exact: true }).fill('Freezer, cellar');
  await elsewhere.getByRole('button', { name: 'Save the changes' }).click();
  await expect.poll(() => onHub('own-stock-set'), { timeout: 20_000 }).toBe(2);
  await openAnew('/print/stock');
  await page
    .getByLabel('Begin with')
    .getByText('Freezer, cellar')
    .first()
    .waitFor({ state: 'attached', timeout: 20_000 });
  await page.reload();
  await page.getByText('What is saved has changed since then.').waitFor();
  expect(await value('Name')).toBe('Freezer, right');
  await page.getByRole('button', { name: 'Start anew' }).click();
  expect(await value('Name')).toBe('Freezer, cellar');
});
