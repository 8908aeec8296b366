import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { filmCard, readWithOtherDecoder, textOf } from './paper.ts';
import type { RunningApp } from './site.ts';
import { laySmallSite, type SmallSite } from './smallSite.ts';

/** Where the one card of a sheet of `a4-85x54` lies: the first place of the stock. */
const FIRST_CARD_MM = [15, 13.5, 85, 54] as const;
const HETS = 'double het Albino and Piebald';

let site: SmallSite;
let app: RunningApp;
let browser: Browser;

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

/** Adds a ball python in trade words, and gives its id. */
async function addInTradeWords(page: Page, name: string, sex: 'male' | 'female'): Promise<string> {
  await page.goto(`${app.url}/books`);
  const form = page.locator('details.add').filter({ hasText: 'Add an animal' });
  await form.locator('summary').click();
  await form.getByLabel('Species').fill('Python regius');
  await form.getByLabel('Name', { exact: true }).fill(name);
  await form.getByLabel('Sex').selectOption(sex);
  await form.getByLabel('Traits, in trade words or as trait code').fill(HETS);
  await form.getByText('alb/+; pie/+', { exact: true }).waitFor();
  await form.getByRole('button', { name: 'Add the animal' }).click();
  await form.getByText('Added as').waitFor();
  const address = await form.locator('.done-line a').first().getAttribute('href');
  return address?.split('/').at(-1) ?? '';
}

/** Prints the card of one animal from its record, and saves the PDF. */
async function printCard(page: Page, id: string): Promise<string> {
  await page.goto(`${app.url}/print?only=${id}`);
  await page.getByRole('button', { name: /^Make the PDF of 1 card/ }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(site.folder, `${id}.pdf`);
  await (await download).saveAs(file);
  await page.getByRole('button', { name: 'These are printed' }).click();
  await page.getByText('1 card is marked as printed.').waitFor();
  return file;
}

test('an animal is entered in trade words, its card printed and scanned, paired, and its outcomes read', async () => {
  const desk = await browser.newPage({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
  const sire = await addInTradeWords(desk, 'Heron', 'male');
  const dam = await addInTradeWords(desk, 'Wren', 'female');
  const card = await printCard(desk, sire);
  expect(readWithOtherDecoder(card)).toContain(sire);
  expect(textOf(card)).toContain('alb/+; pie/+');
  expect(textOf(card)).toContain(HETS);
  const reached = async () => (await onTheHub(app)).filter((event) => event.kind === 'card-printed').length;
  await expect.poll(reached, { timeout: 20_000 }).toBe(1);
  await desk.close();

  // Another device: a phone, whose camera sees the card that was printed at the desk.
  const phone = await launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${filmCard(card, FIRST_CARD_MM, site.folder)}`,
  ]);
  try {
    const page = await phone.newPage({ viewport: { width: 390, height: 844 } });
    await page.goto(`${app.url}/pairing`);
    await page.getByRole('button', { name: 'Scan the sire by camera' }).click();
    await page.waitForURL(`**/pairing?sire=${sire}`, { timeout: 60_000 });
    await page.getByRole('region', { name: 'Sire', exact: true }).getByText(HETS).waitFor();
    await scannerTypes(page, dam);
    const looks = page.getByRole('table', { name: /^Looks of the young/ });
    await looks.waitFor();
    // 9 : 3 : 3 : 1, Mendel 1866, “Versuche über Pflanzen-Hybriden”.
    for (const share of ['9/16', '3/16', '1/16']) await looks.getByText(share, { exact: false }).first().waitFor();
    expect(await looks.textContent()).toContain('66 % possible het');
    await page.getByRole('button', { name: /^Write pairing/ }).click();
    await page.getByText('Pairing written.', { exact: false }).waitFor();
    const paired = async () => (await onTheHub(app)).find((event) => event.kind === 'pairing-started')?.subjects;
    await expect.poll(paired, { timeout: 20_000 }).toEqual([dam, sire]);
  } finally {
    await phone.close();
  }
}, 240_000);
