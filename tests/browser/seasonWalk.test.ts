import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { STOCKS } from '../../print/stocks/list.ts';
import { slots } from '../../print/stocks/slots.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { readEachWithOtherDecoder, textOf } from './paper.ts';
import { HERON, laySeasonHouse, SHELF, WREN } from './seasonSite.ts';
import { type RunningApp, startApp } from './site.ts';

let house: Awaited<ReturnType<typeof laySeasonHouse>>;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  house = await laySeasonHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  await page.goto(app.url);
  await button('Take a stamp').waitFor({ timeout: 60_000 });
}, 90_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
/** What stands in a card's or a tag's code. */
const scan = (id: string) => scannerTypes(page, `HTTPS://SEASON.EXAMPLE/${id}`);
const takeStamp = async (id: string, words: string) => {
  await scannerTypes(page, `STAMP:${id}`);
  await page.getByText(`Stamp: ${words}`).first().waitFor();
};
const written = async (kind: string) => (await onTheHub(app)).filter((event) => event.kind === kind);
/** Waits until the hub has one more of a kind than the house began with. */
const reaches = (kind: string, count: number) =>
  expect.poll(async () => (await written(kind)).length, { timeout: 20_000 }).toBe(count);

test('a female goes from her pairing to her young’s printed cards by scans, and a lock is a scan and a touch', async () => {
  const began = new Map<string, number>();
  for (const { kind } of await onTheHub(app)) began.set(kind, (began.get(kind) ?? 0) + 1);
  const more = (kind: string, by = 1) => reaches(kind, (began.get(kind) ?? 0) + by);

  await takeStamp('PAIRED', 'paired');
  await scan(HERON.id);
  await page.getByText('Heron waits for the mate that is scanned next').waitFor();
  await scan(WREN.id);
  await page.getByText('paired: Heron × Wren').first().waitFor();
  await button('Put down').click();
  await more('pairing-started');

  // Two touches: the card under the scanner, and the button at the thumb.
  await scan(WREN.id);
  await page.getByRole('region', { name: 'Now' }).getByRole('button', { name: /^Lock/ }).click();
  await more('lock-seen');
  await page.getByRole('region', { name: 'Season' }).getByText('Locked').waitFor();

  for (const [stamp, words, kind] of [
    ['APART', 'pairing ended', 'pairing-ended'],
    ['OVULATION', 'ovulation seen', 'ovulation-seen'],
    ['PRE-LAY-SHED', 'pre-lay shed seen', 'pre-lay-shed-seen'],
  ] as const) {
    await takeStamp(stamp, words);
    await scan(WREN.id);
    await more(kind);
  }
  await button('Put down').click();

  await scan(WREN.id);
  await page.getByRole('region', { name: 'Now' }).getByRole('button', { name: 'Laid …' }).click();
  const sheet = page.getByRole('dialog', { name: 'Laying of Wren' });
  await sheet.getByLabel('Eggs').fill('5');
  await sheet.getByLabel('Slugs').fill('1');
  await sheet.getByLabel('Clutch weight').fill('0.45 kg');
  await sheet.getByLabel('Her weight after').fill('1,150.5');
  // The only male that was with her stands there already, with the reason.
  expect(await sheet.getByRole('radio', { name: /^Heron Heron was with her/ }).isChecked()).toBe(true);
  await sheet.getByRole('button', { name: 'Write laying' }).click();
  await sheet.getByRole('alert').waitFor();
  await sheet.getByLabel('Her weight after').fill('1150');
  await sheet.getByRole('button', { name: 'Write laying' }).click();
  await page.waitForURL('**/clutch/*');
  await more('clutch-laid');
  const [laid] = (await written('clutch-laid')).filter(({ subjects }) => subjects[0] === WREN.id);
  const clutch = laid?.subjects[1] ?? '';
  expect(laid?.payload).toEqual({ clutch, eggs: 5, slugs: 1, clutchG: 450, damG: 1150, sire: HERON.id });
  expect(await page.getByRole('link', { name: 'Print its tag' }).getAttribute('href')).toBe(
    `/print?what=clutch&only=${clutch}`,
  );

  // Its tag is scanned on another screen, then the shelf that it goes to.
  await page.goto(`${app.url}/rounds`);
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();
  await scan(clutch);
  await page.getByRole('heading', { name: 'Clutch of Wren' }).waitFor();
  await scan(SHELF);
  await page.getByRole('link', { name: 'Incubator 1 · Shelf 1' }).waitFor();
  await button('Egg 2: not candled yet').click();
  await page
    .getByRole('group', { name: /^Egg 2/ })
    .getByRole('button', { name: 'lost' })
    .click();
  await button('Egg 2: lost').waitFor();
  await button('Candle the other 4 good').click();
  await page.getByText('4 good, 1 lost').waitFor();
  await more('egg-candled', 5);

  await page.getByRole('link', { name: 'Hatch out' }).click();
  await page.getByRole('heading', { name: 'Hatch out' }).waitFor();
  // 9 : 3 : 3 : 1, Mendel 1866, “Versuche über Pflanzen-Hybriden”.
  for (const share of ['9/16', '3/16', '1/16']) await page.getByText(share).first().waitFor();
  await button('normal: one more').click();
  await button('normal: one more').click();
  await button('Albino: one more').click();
  await button('Piebald: one more').click();
  await button(/^Write: 4 hatched/).click();
  await page.getByText('4 records, 4 cards not printed yet').waitFor();
  await more('animal-added', 4);
  const young = (await written('animal-added')).slice(-4).map(({ subjects }) => subjects[0] ?? '');
  await page.getByText('Heron, written as the sire, can have given them all.').waitFor();

  await page.getByRole('link', { name: /^Print their cards/ }).click();
  await button(/^Make the PDF of 4 cards/).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(house.folder, 'young.pdf');
  await (await download).saveAs(file);

  const codes = readEachWithOtherDecoder(file, boxes(young.length));
  expect(codes.map((code) => code.split('/').at(-1)).sort()).toEqual([...young].sort());
  const words = textOf(file);
  // Het chances of the visual and of the normal ones, by Mendel's ratios again.
  expect(words).toContain('66 % possible');
  expect(words).toContain('alb/alb');

  // A card of the young opens its record, whose parents and clutch are known.
  await scan(young[0] ?? '');
  await page.getByRole('link', { name: 'Heron' }).first().waitFor();
  await page.getByRole('link', { name: 'Wren' }).first().waitFor();
}, 180_000);

/** Where so many cards lie on the sheet that the app prints on when nobody chose another. */
function boxes(count: number) {
  const stock = STOCKS.find(({ id }) => id === 'a4-85x54');
  if (stock === undefined) throw new Error('no such stock');
  const laid = slots(stock, count);
  if (!laid.ok) throw new Error(laid.problem.message);
  return laid.value.map(({ boxMm }) => boxMm);
}
