import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { scannerTypes } from './keys.ts';
import type { RunningApp } from './site.ts';
import { ago, cardWords, laySmallSite, type SmallSite, TANSY, YARROW } from './smallSite.ts';

let site: SmallSite;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  site = await laySmallSite();
  app = await site.start();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  site?.clear();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const ledger = () => page.getByRole('region', { name: 'Ledger' });
const strip = () => page.getByRole('region', { name: 'Last entries' });

/** Scans a card on the Scan screen, as a keeper at the tub does. */
async function scan({ id }: { readonly id: string }): Promise<void> {
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
  await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${id}`);
  await page.waitForURL(`**/animal/${id}`);
}

/** Scans a card and writes that its animal regurgitated, today or so many days ago. */
async function regurgitated(animal: { readonly id: string }, day?: string): Promise<void> {
  await scan(animal);
  await page.getByText('All actions, and on another day').click();
  if (day !== undefined) await page.getByLabel('On another day').first().fill(day);
  await button('Regurgitated').click();
  await button('Write regurgitated').click();
}

/** The line of an animal in the round through a lens, and how many small rats the thaw list wants. */
async function round(lens: 'To feed' | 'Held' | 'All', name: string) {
  await page.goto(`${app.url}/rounds`);
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor();
  await button(new RegExp(`^${lens}`)).click();
  const line = page.getByRole('listitem').filter({ has: page.getByText(name, { exact: true }) });
  const words = ((await line.count()) === 0 ? '' : ((await line.textContent()) ?? '')).replace(/\s+/g, ' ');
  const rats = page.getByRole('row', { name: /^small rat/ }).getByRole('cell');
  return {
    words,
    canFeed: await button(`Fed as planned: ${name}`).count(),
    rats: (await rats.count()) === 0 ? 0 : Number(await rats.first().textContent()),
  };
}

describe('a first regurgitation', () => {
  test('rests the animal: card, Due, thaw list and round say so', async () => {
    const before = await round('To feed', 'Yarrow');
    expect(before.canFeed).toBe(1);
    await regurgitated(YARROW);
    await page.getByText('Nothing to feed now.').waitFor();
    expect(await cardWords(page)).toMatch(/Hold: rest after regurgitating on .* until .*Due/);
    const held = await round('Held', 'Yarrow');
    expect(held.words).toMatch(/Hold ?rest after regurgitating on/);
    expect(held.rats).toBe(before.rats - 1);
    expect(held.canFeed).toBe(0);
  });

  test('is followed by half a meal when its rest is over', async () => {
    await scan(TANSY);
    const whole = await button(/^Feed as planned/).textContent();
    await regurgitated(TANSY, ago(12));
    await page.getByText('half a meal: the first after a regurgitation').last().waitFor();
    expect(await button(/^Feed as planned/).textContent()).not.toBe(whole);
    const fed = await round('To feed', 'Tansy');
    expect(fed.canFeed).toBe(1);
    expect(fed.words).not.toContain('small rat');
  });
});

describe('a second one within 60 days', () => {
  test('stops all feeding until a vet has spoken: card, Due, thaw list and round say so', async () => {
    const before = await round('All', 'Moss');
    await regurgitated(TANSY);
    // The first one was written down minutes ago, so the same again is asked about.
    await button(/^Yes, write/).click();
    await page.getByText('Not to be fed without a vet’s word.').waitFor();
    expect(await cardWords(page)).toMatch(/Vet: regurgitated on .* and again on .* the vet decides/);
    expect(await button(/^Feed as planned/).count()).toBe(0);
    const held = await round('Held', 'Tansy');
    expect(held.words).toMatch(/Vet ?regurgitated on/);
    expect(held.words).toContain('not without a vet’s word');
    expect(held.canFeed).toBe(0);
    expect((await round('To feed', 'Tansy')).words).toBe('');
    expect(held.rats).toBe(before.rats);
    expect(await page.getByRole('row', { name: /^adult mouse|^jumbo mouse|^weaned rat/ }).count()).toBe(0);
  });

  test('is not cleared by a touch, a stamp, a shed, a weight or a refusal', async () => {
    await scan(TANSY);
    await page.getByText('All actions, and on another day').click();
    await button('Fed as planned').click();
    await strip().getByText('Call the vet.', { exact: false }).first().waitFor();
    await button('Opaque').first().click();
    await ledger().getByText('Opaque').waitFor();
    await button('Shed').first().click();
    await ledger().getByText('Shed', { exact: true }).waitFor();
    await button('Weighed').click();
    await page.getByLabel('Weight as the scale shows it').fill('910');
    await button('Write weight').click();
    await ledger().getByText('Weighed 910 g').waitFor();
    await button('Water changed').click();
    await page.getByText('Not to be fed without a vet’s word.').waitFor();

    for (const stamp of ['fed as planned', 'refused']) {
      await page.goto(`${app.url}/`);
      await button('Take a stamp').click();
      await page.getByRole('dialog', { name: 'Stamps' }).getByRole('button', { name: stamp, exact: true }).click();
      await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${TANSY.id}`);
      await strip().getByText('Call the vet.', { exact: false }).first().waitFor();
      await button('Put down').click();
    }
    // Other prey that was taken did happen, so it can be written; it is asked about, and it clears nothing.
    await scan(TANSY);
    await button('Other prey').click();
    await button('Taken').click();
    await page.getByText('regurgitated on', { exact: false }).last().waitFor();
    await button(/^Yes, write/).click();
    await ledger()
      .getByText(/^Fed 1 ×/)
      .first()
      .waitFor();
    await page.getByText('Not to be fed without a vet’s word.').waitFor();
    expect((await round('Held', 'Tansy')).words).toMatch(/Vet ?regurgitated on/);
  });

  test('is cleared by the vet’s word alone, which has a name', async () => {
    await scan(TANSY);
    const now = page.getByRole('region', { name: 'Now' });
    await now.getByRole('button', { name: /^Vet cleared/ }).click();
    await button('Write vet cleared').click();
    expect(await page.getByRole('dialog').count()).toBe(1);
    await page.getByLabel('Name of the vet').fill('   ');
    await button('Write vet cleared').click();
    await strip().getByText('A vet’s word needs the vet’s name.').waitFor();
    await page.getByText('Not to be fed without a vet’s word.').waitFor();
    await now.getByRole('button', { name: /^Vet cleared/ }).click();
    await page.getByLabel('Name of the vet').fill('Dr Linnet Sallowfield');
    await button('Write vet cleared').click();
    await ledger().getByText('Vet cleared: Dr Linnet Sallowfield').waitFor();
    await expect.poll(() => page.getByText('Not to be fed without a vet’s word.').count()).toBe(0);
    expect(await cardWords(page)).not.toContain('Vet:');
    expect((await round('Held', 'Tansy')).words).toBe('');
  });
});

describe('a house in which nobody is treated', () => {
  test('says so on the page of treatments, and where a prescription is entered', async () => {
    await page.goto(`${app.url}/treatments`);
    await page.getByText('Nobody gets a dose today, and no recheck is near.').waitFor();
    await scannerTypes(page, YARROW.display);
    await page.getByText('Yarrow has no prescription under way.').first().waitFor();
    await page.getByRole('link', { name: 'find the animal' }).click();
    await page.waitForURL('**/find');
  });
});
