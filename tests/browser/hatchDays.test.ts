import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { STOCKS } from '../../print/stocks/list.ts';
import { slots } from '../../print/stocks/slots.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { readEachWithOtherDecoder } from './paper.ts';
import * as season from './seasonSite.ts';
import { type RunningApp, startApp } from './site.ts';

const { ago, RAVENS_CLUTCH, SWIFTS_CLUTCH, LARK } = season;

let house: Awaited<ReturnType<typeof season.laySeasonHouse>>;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  house = await season.laySeasonHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
}, 90_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const hatched = () => page.getByRole('textbox', { name: 'Hatched' });
const written = async (kind: string) => (await onTheHub(app)).filter((event) => event.kind === kind);

async function open(path: string, heading: string | RegExp): Promise<void> {
  await page.goto(app.url + path);
  await page.getByRole('heading', { name: heading }).first().waitFor({ timeout: 60_000 });
}

/** Prints the cards that the clutch’s page offers onto a sheet of which some are used, and gives the ids in their codes. */
async function printCards(count: number, used = 0): Promise<readonly string[]> {
  await page.getByRole('link', { name: /^Print their cards/ }).click();
  await button(new RegExp(`^Make the PDF of ${count} cards`)).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), link.click()]);
  const file = join(house.folder, `young${count}.pdf`);
  await download.saveAs(file);
  await button('These are printed').click();
  await page.getByText('marked as printed', { exact: false }).waitFor();
  return readEachWithOtherDecoder(file, boxes(used + count).slice(used)).map((code) => code.split('/').at(-1) ?? '');
}

test('a clutch that hatches over two days is written once each day, to the printed cards', async () => {
  const began = (await written('animal-added')).length;
  await open(`/clutch/${RAVENS_CLUTCH}/hatch`, 'Hatch out');
  await hatched().fill('4');
  await page.getByText('On another day than today').click();
  await page.getByLabel('On another day', { exact: true }).fill(ago(1));
  await page
    .getByRole('group', { name: 'And the other 2 eggs?' })
    .getByRole('radio', { name: /^May still hatch/ })
    .waitFor();
  await page.getByRole('textbox', { name: 'normal' }).fill('4');
  await button(/^Write: 4 hatched/).click();
  await page.getByText('4 of 7 out, 2 still to come').waitFor();
  await page.getByText('Usual span: all out within 1–3 d of the first (C: common practice, no source).').waitFor();
  const first = await printCards(4);

  await open(`/clutch/${RAVENS_CLUTCH}`, 'Clutch of Raven');
  await page
    .getByRole('link', { name: /^Hatch the rest out/ })
    .first()
    .click();
  await page.getByRole('heading', { name: 'Hatch the rest out' }).waitFor();
  // As many as are still to come stand there already; more than were laid are refused, counted with those of yesterday.
  expect(await hatched().inputValue()).toBe('2');
  await hatched().fill('4');
  await page.getByText('4 more cannot have hatched: 4 of 7 eggs are out already.').waitFor();
  await hatched().fill('2');
  await page.getByRole('textbox', { name: 'Clown' }).fill('1');
  await page.getByRole('textbox', { name: 'normal' }).fill('1');
  await button(/^Write: 2 more hatched/).click();
  await page.getByText('6 of 7 out', { exact: true }).waitFor();
  await page.getByText(/^4 on .*, 2 on /).waitFor();
  await page.getByText('6 records, 2 cards not printed yet').waitFor();
  const second = await printCards(2, 4);

  await expect.poll(async () => (await written('animal-added')).length, { timeout: 20_000 }).toBe(began + 6);
  const young = (await written('animal-added')).slice(began);
  expect([...first, ...second].sort()).toEqual(young.map(({ subjects }) => subjects[0]).sort());
  const days = young.map(({ payload }) => (payload as { readonly hatchedOn: string }).hatchedOn);
  expect(days).toEqual([ago(1), ago(1), ago(1), ago(1), ago(0), ago(0)]);
  const hatchings = (await written('clutch-hatched')).map(({ day, payload }) => [day, payload]);
  expect(hatchings).toEqual([
    [ago(1), { hatched: 4 }],
    [ago(0), { hatched: 2 }],
  ]);

  // What the clutch says counts all six: the Clown of the second day proves both parents.
  await page.goBack();
  await page.getByRole('heading', { name: 'Clutch of Raven' }).waitFor();
  const raven = page.locator('.finding').filter({ hasText: 'What Raven may carry' });
  await raven.getByText('2/3').waitFor();
  await raven.getByText('100 %').waitFor();
}, 180_000);

test('that no more will come is one touch; it can be taken back, and so can the young of the second time', async () => {
  await open(`/clutch/${SWIFTS_CLUTCH}/hatch`, 'Hatch out');
  await page.getByRole('radio', { name: new RegExp(`^${LARK.name}`) }).check();
  await hatched().fill('3');
  await page.getByRole('textbox', { name: 'normal' }).fill('3');
  await button(/^Write: 3 hatched/).click();
  await page.getByText('3 of 4 out, 1 still to come').waitFor();
  await button('No more will come').click();
  await page.getByText('3 of 4 out', { exact: true }).waitFor();
  await page.getByRole('link', { name: /^Print their cards/ }).waitFor();
  expect(await page.getByRole('link', { name: /^Hatch the rest out/ }).count()).toBe(0);
  await page
    .getByRole('button', { name: /^Undo no more to come/ })
    .first()
    .click();
  await page.getByText('3 of 4 out, 1 still to come').waitFor();

  // The young of the second time are taken back as they were written, in one touch, and are waited for again.
  await page
    .getByRole('link', { name: /^Hatch the rest out/ })
    .first()
    .click();
  await page.getByRole('textbox', { name: 'Albino' }).fill('1');
  await button(/^Write: 1 more hatched/).click();
  await page.getByText('4 records').waitFor();
  await page
    .getByRole('button', { name: /^Undo hatched 1 more/ })
    .first()
    .click();
  await page.getByText('3 of 4 out, 1 still to come').waitFor();
  await page.getByText('3 records').waitFor();
}, 90_000);

/** Where so many cards lie on the sheet that the app prints on when nobody chose another. */
function boxes(count: number) {
  const stock = STOCKS.find(({ id }) => id === 'a4-85x54');
  if (stock === undefined) throw new Error('no such stock');
  const laid = slots(stock, count);
  if (!laid.ok) throw new Error(laid.problem.message);
  return laid.value.map(({ boxMm }) => boxMm);
}
