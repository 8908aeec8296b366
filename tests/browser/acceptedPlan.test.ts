import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { readWithOtherDecoder, textOf } from './paper.ts';
import { ALDER, FERN, GORSE, laySeasonHouse, POPPY } from './seasonHouse.ts';
import { type RunningApp, startApp } from './site.ts';

const PHONE = { viewport: { width: 390, height: 844 } };

let house: Awaited<ReturnType<typeof laySeasonHouse>>;
let app: RunningApp;
let browser: Browser;
/** Two devices: each browser context has a log of its own, and both know the hub. */
let [office, phone]: Page[] = [];

beforeAll(async () => {
  house = await laySeasonHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  [office, phone] = [
    await (await browser.newContext({ viewport: { width: 1280, height: 800 } })).newPage(),
    await (await browser.newContext({ ...PHONE, acceptDownloads: true })).newPage(),
  ];
}, 90_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const soon = { timeout: 30_000 };
const accepted = (page: Page) => page.getByRole('region', { name: 'Accepted plan, ball python' });
const line = (page: Page, pair: string) => accepted(page).getByRole('listitem').filter({ hasText: pair });

async function open(page: Page | undefined, path: string, heading: string | RegExp): Promise<Page> {
  if (page === undefined) throw new Error('no device');
  await page.goto(app.url + path);
  await page.getByRole('heading', { name: heading }).first().waitFor({ timeout: 60_000 });
  return page;
}

test('a plan accepted on one device is followed on the other: seen, printed, made, and withdrawn for both', async () => {
  const there = await open(phone, '/season/plan', 'Season plan');
  const here = await open(office, '/season/plan', 'Season plan');
  await here.getByLabel('Goal 1: the look that is wanted').fill('Clown');
  await here.getByRole('button', { name: 'Work out the plan' }).click();
  await here.getByRole('button', { name: 'Accept the plan' }).click();
  await accepted(here).waitFor();
  const events = async () => (await onTheHub(app)).filter(({ kind }) => kind === 'plan-accepted');
  await expect.poll(async () => (await events()).length, soon).toBe(1);
  expect((await events())[0]).toMatchObject({
    subjects: [],
    payload: { species: 'Python regius', eggs: 6.25, gap: 0 },
  });

  // The other device was open all the while, and shows it by itself.
  await accepted(there).waitFor(soon);
  await line(there, 'Alder × Fern')
    .getByText(/^made /)
    .waitFor();
  await line(there, 'Alder × Gorse').getByText('still open; she was with Beech meanwhile').waitFor();
  await line(there, 'Alder × Poppy').getByText('still open', { exact: true }).waitFor();

  // The board, and the record of her who has nothing written of her season.
  await open(there, '/season', 'Season');
  await there.getByRole('region', { name: 'The accepted plan' }).getByText('2 open, 1 made').waitFor();
  const gorse = there
    .getByRole('region', { name: 'Females by month' })
    .getByRole('listitem')
    .filter({ hasText: 'Gorse' });
  await gorse.getByText('planned with Alder').waitFor();
  await open(there, `/animal/${POPPY.id}`, /Poppy/);
  const planned = there.getByRole('region', { name: 'In the season plan' });
  await planned.getByText('with Alder, still open').waitFor();
  await planned.getByText('because').click();
  await planned.getByText('Kinship ≈ 25 %.').waitFor();
  await open(there, `/animal/${ALDER.id}`, /Alder/);
  expect(await planned.getByRole('listitem').count()).toBe(3);

  // Its cards come out of the other device’s press.
  await open(there, '/print?what=pairing', 'Print pairing cards');
  await there.getByRole('button', { name: /^Make the PDF of 2 pairing cards/ }).click();
  const link = there.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const [download] = await Promise.all([there.waitForEvent('download'), link.click()]);
  const file = await download.path();
  expect(textOf(file)).toContain('plan: of 6.25 eggs ≈ 3.13 Clown');
  expect(readWithOtherDecoder(file)).toContain(GORSE.id);

  // What is paired on the phone is made at the desk.
  await open(there, `/pairing?sire=${ALDER.id}&dam=${POPPY.id}`, /Pairing/);
  await there.getByRole('button', { name: /^Write pairing/ }).click();
  const yes = there.getByRole('button', { name: /^Yes/ });
  await yes
    .or(there.getByText('Pairing written.', { exact: false }))
    .first()
    .waitFor();
  if (await yes.isVisible()) await yes.click();
  await line(here, 'Alder × Poppy')
    .getByText(/^made /)
    .waitFor(soon);

  await open(there, '/season/plan', 'Season plan');
  await there.getByRole('button', { name: 'Withdraw this plan' }).click();
  await there.getByRole('button', { name: 'Yes, write it' }).click();
  await expect.poll(() => accepted(there).count(), soon).toBe(0);
  await expect.poll(() => accepted(here).count(), soon).toBe(0);
  // The slip can be taken back like any other, and both have the plan again.
  await there.getByRole('button', { name: /^Undo plan of 3 pairs withdrawn/ }).click();
  await line(here, 'Alder × Fern').waitFor(soon);
  expect(await line(here, FERN.name).count()).toBe(1);
}, 180_000);
