import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { readWithOtherDecoder, textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { cardWords } from './smallSite.ts';

const folder = mkdtempSync(join(tmpdir(), 'tubwright-fresh-'));
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  app = await startApp(['--data', join(folder, 'data')]);
  browser = await launchChromium();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  page = await context.newPage();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

test('an empty site says the first step on every screen', async () => {
  for (const [path, words] of [
    ['/', 'This device knows no animals yet.'],
    ['/rounds', 'No animals yet'],
    ['/racks', 'No racks yet.'],
    ['/print', 'No animals yet'],
    ['/books', 'No animals yet'],
  ] as const) {
    await page.goto(`${app.url}${path}`);
    await page.locator('.empty').getByText(words).waitFor();
  }
});

test('the site gets its name and its own host; a host that is none is refused in words', async () => {
  await page.goto(`${app.url}/books`);
  const host = page.getByLabel('Host in the codes');
  await page.getByLabel('Site’s name').fill('Heron Lane House');
  await host.fill('https://cards.example/x');
  await button('Save the site').click();
  await page.getByText('“https://cards.example/x” is not the name of a host.').waitFor();
  expect(await host.inputValue()).toBe('https://cards.example/x');
  await host.fill('cards.example');
  await button('Save the site').click();
  await page.getByText('Saved.').waitFor();
});

test('a rack, its tubs and an animal are added, and its card is printed with a code that opens it', async () => {
  await page.goto(`${app.url}/books`);
  const forms = page.locator('details.add');
  const rack = forms.filter({ hasText: 'Add a rack or a place' });
  await rack.getByLabel('Name').fill('Rack 1');
  await rack.getByLabel('Tubs in it').fill('6');
  await rack.getByRole('button', { name: 'Add the place' }).click();
  await rack.getByText('Rack 1 is added with 6 tubs.').waitFor();

  const animal = forms.filter({ hasText: 'Add an animal' });
  await animal.locator('summary').click();
  await animal.getByRole('button', { name: 'Add the animal' }).click();
  await animal.getByText('is missing').waitFor();
  await animal.getByLabel('Species').fill('Python regius');
  await animal.getByLabel('Name', { exact: true }).fill('Wisteria');
  await animal.getByLabel('Sex').selectOption('female');
  await animal.getByLabel('Place').selectOption({ label: 'Rack 1 · 1-02' });
  await animal.getByLabel('Weight today').fill('1.2kg');
  await animal.getByRole('button', { name: 'Add the animal' }).click();
  await animal.getByText('Added as').waitFor();

  await animal.getByRole('link', { name: 'Print its card' }).click();
  await button(/^Make the PDF of 1 card/).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const pdf = join(folder, 'card.pdf');
  await (await download).saveAs(pdf);
  const id = await idOfTheAnimal();
  expect(textOf(pdf)).toContain('Wisteria');
  expect(textOf(pdf)).toContain('1,200 g');
  expect(readWithOtherDecoder(pdf)).toBe(`HTTPS://CARDS.EXAMPLE/${id}`);

  await button('These are printed').click();
  await page.getByText('1 card is marked as printed.').waitFor();
  // As a phone's own camera opens it, on a device that was never here.
  const cold = await browser.newPage();
  await cold.goto(`${app.url}/${id}`);
  await cold.getByRole('heading', { name: 'Wisteria' }).first().waitFor();
  expect(await cardWords(cold)).toContain('Rack 1 · 1-02');
  await expect.poll(() => cold.getByRole('link', { name: /^(re)?print$/ }).count(), { timeout: 15_000 }).toBe(0);
  await cold.close();
}, 120_000);

/** The id under which the hub has the one animal of this site. */
async function idOfTheAnimal(): Promise<string> {
  const ids = async () =>
    (await onTheHub(app)).flatMap((event) => (event.kind === 'animal-added' ? event.subjects : []));
  await expect.poll(ids, { timeout: 15_000 }).toHaveLength(1);
  return String((await ids())[0]);
}
