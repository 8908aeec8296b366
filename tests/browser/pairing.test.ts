import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { scannerTypes } from './keys.ts';
import {
  ALDER,
  BIRCH,
  CEDAR,
  DAISY,
  ELDER,
  FERN,
  GORSE,
  HEATHER,
  IVY,
  JUNIPER,
  KESTREL,
  LARCH,
  layBreedingHouse,
  MAPLE,
  NETTLE,
  OLIVE,
} from './pairingSite.ts';
import { type RunningApp, startApp } from './site.ts';
import { type Tame, typeId } from './smallSite.ts';

let house: Awaited<ReturnType<typeof layBreedingHouse>>;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  house = await layBreedingHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
});

const half = (name: 'Sire' | 'Dam') => page.getByRole('region', { name, exact: true });
const strip = () => page.getByRole('region', { name: 'Last entries' });
const looks = () => page.getByRole('table', { name: /^Looks of the young/ });
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

async function open(query = ''): Promise<void> {
  await page.goto(`${app.url}/pairing${query}`);
  await page.getByRole('heading', { name: 'Pairing', level: 1 }).waitFor();
}

/** Opens the pairing of two and waits until what the clutch can hold is worked out. */
async function openPair(sire: Tame, dam: Tame, eggs = 6): Promise<void> {
  await open(`?sire=${sire.id}&dam=${dam.id}&eggs=${eggs}`);
  await looks().waitFor();
  await expect.poll(() => looks().textContent()).not.toContain('…');
}

/** The lines of the table, their cells with plain blanks. */
async function lines(): Promise<readonly (readonly string[])[]> {
  const rows = await looks().locator('tbody tr:not(.look-detail)').all();
  const cells = rows.map(async (row) => await row.locator('th, td').allInnerTexts());
  return (await Promise.all(cells)).map((row) => row.map((cell) => cell.replace(/\s+/g, ' ').trim()));
}

describe('two scans', () => {
  beforeEach(() => open());

  test('say at once what the young can be, the dam first or the sire', async () => {
    await scannerTypes(page, BIRCH.id);
    await half('Dam').getByRole('heading', { name: 'Birch' }).waitFor();
    expect(await button(/^Write pairing/).getAttribute('aria-disabled')).toBe('true');
    expect(await button(/^Write pairing/).textContent()).toContain('choose a sire first');
    await scannerTypes(page, `HTTPS://PAIRS.EXAMPLE/${ALDER.id}`);
    await half('Sire').getByRole('heading', { name: 'Alder' }).waitFor();
    await looks().waitFor();
    expect(page.url()).toContain(`/pairing?sire=${ALDER.id}&dam=${BIRCH.id}`);
    expect(await half('Sire').textContent()).toContain('double het Albino and Piebald');
  });

  test('ask of an unsexed animal which half it is', async () => {
    await scannerTypes(page, IVY.id);
    const asked = page.getByRole('dialog', { name: 'Ivy' });
    await asked.getByText('Is it the sire or the dam?').waitFor();
    await asked.getByRole('button', { name: 'The dam' }).click();
    await half('Dam').getByRole('heading', { name: 'Ivy' }).waitFor();
    expect(await half('Dam').textContent()).toContain('0.0.1');
  });

  test('can be made on the Scan screen, which says whom it waits for', async () => {
    await button('Scan the sire by camera').click();
    await page.waitForURL(`${app.url}/`);
    await page.getByText('Scan the sire', { exact: true }).waitFor();
    await typeId(page, BIRCH.id);
    await strip().getByText('The sire is a female.', { exact: false }).waitFor();
    await typeId(page, ALDER.id);
    await page.waitForURL(`**/pairing?sire=${ALDER.id}`);
    await half('Sire').getByRole('heading', { name: 'Alder' }).waitFor();
  });

  test('can be a search by name among those that can be that half', async () => {
    await half('Dam').getByRole('searchbox', { name: 'Find the dam' }).fill('da');
    await half('Dam')
      .getByRole('button', { name: /^Daisy/ })
      .click();
    await half('Sire').getByRole('searchbox', { name: 'Find the sire' }).fill('fern');
    await half('Sire').getByText('Not among the', { exact: false }).waitFor();
    await half('Sire').getByRole('searchbox', { name: 'Find the sire' }).fill('ced');
    await page.keyboard.press('Enter');
    await looks().waitFor();
  });
});

describe('what does not go together', () => {
  const refused = (name: 'Sire' | 'Dam') => half(name).getByRole('alert');

  test('is refused where it happened: one animal twice, one sex twice, two species, one that left', async () => {
    await open();
    await scannerTypes(page, ALDER.id);
    await half('Sire').getByRole('heading', { name: 'Alder' }).waitFor();
    const cases: readonly (readonly [Tame, string])[] = [
      [ALDER, 'Alder was scanned twice'],
      [CEDAR, 'The dam is a male.'],
      [JUNIPER, 'The sire is Python regius and the dam is Pantherophis guttatus: two species.'],
      [KESTREL, 'This animal left the site on'],
    ];
    for (const [animal, words] of cases) {
      await scannerTypes(page, animal.id);
      await expect.poll(() => refused('Dam').textContent()).toContain(words);
      expect(page.url()).toBe(`${app.url}/pairing?sire=${ALDER.id}`);
    }
    await scannerTypes(page, BIRCH.id);
    await looks().waitFor();
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  test('is said of a record whose traits nobody can read, and of two species in the address', async () => {
    await open(`?sire=${ALDER.id}&dam=${MAPLE.id}`);
    await expect.poll(() => refused('Dam').textContent()).toContain('has the sign “nosuch”');
    expect(await page.getByRole('alert').count()).toBe(1);
    await open(`?sire=${ALDER.id}&dam=${JUNIPER.id}`);
    await page.getByText('two species.', { exact: false }).first().waitFor();
    expect(await button(/^Write pairing/).textContent()).toContain('not these two');
    await button(/^Write pairing/).click({ force: true });
    expect(await strip().count()).toBe(0);
  });
});

describe('the young', () => {
  test('of two double hets fall 9:3:3:1 (Mendel 1866, the ratio of his dihybrid peas), with possible hets', async () => {
    await openPair(ALDER, BIRCH);
    const found = await lines();
    expect(found.map(([look, perEgg]) => [look, perEgg])).toEqual([
      ['normal 66 % possible het Albino, 66 % possible het Piebald to be proven', '≈ 56.3 % 9/16'],
      [expect.stringMatching(/^Albino 66 % possible het Piebald/), '≈ 18.8 % 3/16'],
      [expect.stringMatching(/^Piebald 66 % possible het Albino/), '≈ 18.8 % 3/16'],
      ['Albino, Piebald', '6.25 % 1/16'],
    ]);
    await page.getByText('Only raising one and breeding it tells.', { exact: false }).waitFor();
  });

  test('of two 66 % hets show in 6 eggs with 36.5 %, for eggs are alike only given the parents (not 50.7 %)', async () => {
    // (4/9)(1 - (3/4)^6) = 3367/9216, worked out by hand; 1 - (8/9)^6 = 0.5067 would draw the parents anew for each egg.
    await openPair(CEDAR, DAISY);
    const clown = (await lines()).find(([look]) => look === 'Clown');
    expect(clown?.slice(1)).toEqual(['≈ 11.1 % 1/9', '≈ 0.667 expected ≈ 36.5 % at least one']);
    expect(await looks().textContent()).not.toContain('50.7');
    await button('Clown').click();
    const drawing = page.getByRole('img', { name: /^none: ≈ 63.5 %/ });
    expect((await drawing.getAttribute('aria-label'))?.split(', ')).toHaveLength(7);
    await page.getByText('Exact fractions').click();
    await page.getByText('5849/9216', { exact: true }).waitFor();
  });

  test('are told for more eggs at a touch, and their count stays in the address', async () => {
    await openPair(CEDAR, DAISY);
    await button('One egg more').click();
    await looks().getByText('In 7 eggs').waitFor();
    expect(page.url()).toContain('eggs=7');
    // (4/9)(1 - (3/4)^7) = 0.38518…
    await expect.poll(async () => (await lines())[1]?.[2]).toBe('≈ 0.778 expected ≈ 38.5 % at least one');
  });

  test('that die are told apart: per egg and per hatchling, with the warning and who it is about', async () => {
    await openPair(ELDER, FERN);
    expect(await lines()).toEqual([
      ['Spider', '50 % 1/2', '≈ 66.7 % 2/3', expect.stringContaining('3 expected')],
      ['normal', '25 % 1/4', '≈ 33.3 % 1/3', expect.stringContaining('1.5 expected')],
    ]);
    await page.getByText('3/4 · 75 % of the eggs live.', { exact: false }).waitFor();
    const warnings = await page.getByRole('region', { name: 'Warnings' }).locator('div').all();
    const words = await Promise.all(warnings.map((one) => one.locator('h3, p, li').allTextContents()));
    expect(words).toEqual([
      [
        'Stop: lethal',
        'two copies of Spider: not known alive',
        'Young: 1/4 · 25 % of the eggs, taken to die',
        'Source: taken as lethal (memory)',
      ],
      [
        'Look at this',
        'every spider animal wobbles',
        'The sire, Elder: carries it',
        'The dam, Fern: carries it',
        'Young: 3/4 · 75 % of the eggs',
        'Source: Rose & Williams 2014; Starck et al. 2022',
      ],
    ]);
  });

  test('of full brother and sister are inbred by 1/4 at least (Wright 1922), with what is known of their ancestors', async () => {
    await openPair(NETTLE, OLIVE);
    const kinship = page.getByRole('region', { name: 'Kinship' });
    await expect.poll(() => kinship.textContent()).toContain('at least 1/4 · 25 %');
    expect(await kinship.textContent()).toContain('0 of 8 great-grandparents known');
    await page.getByText('No traits are written of Olive: it is taken as wild type.').waitFor();
  });

  test('of many traits are listed as far as anybody asks, and a long list can be stopped', async () => {
    await openPair(GORSE, HEATHER);
    expect(await lines()).toHaveLength(12);
    const all = button(/^The likeliest 5,000 of [\d,]+ looks$/);
    await page.evaluate(pressCancelAsSoonAsItIsThere);
    await all.click();
    await expect.poll(() => page.evaluate(() => document.body.dataset['cancelled'])).toBe('yes');
    await all.waitFor();
    // Whatever the worker was at, it answers no more.
    await page.waitForTimeout(3000);
    expect(await lines()).toHaveLength(12);

    await page.evaluate(() => document.body.removeAttribute('data-cancelled'));
    await page.evaluate(keepProgress);
    await all.click();
    await button(/^More of the 5,000 looks: 4,940 to come/).waitFor({ timeout: 60_000 });
    expect(await lines()).toHaveLength(60);
    const steps = await page.evaluate(() => document.body.dataset['steps']?.split(' ').map(Number) ?? []);
    expect(steps.some((done) => done > 0 && done < 5000)).toBe(true);
  });
});

/** In the page: a person could come too late for a fast machine. */
function pressCancelAsSoonAsItIsThere(): void {
  const look = new MutationObserver(() => {
    const cancel = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Cancel');
    if (cancel === undefined) return;
    look.disconnect();
    document.body.dataset['cancelled'] = 'yes';
    cancel.click();
  });
  look.observe(document.body, { childList: true, subtree: true });
}

/** In the page: keeps every figure that the progress shows. */
function keepProgress(): void {
  const look = new MutationObserver(() => {
    const progress = document.querySelector('progress');
    if (progress !== null) document.body.dataset['steps'] = `${document.body.dataset['steps'] ?? ''} ${progress.value}`;
  });
  look.observe(document.body, { childList: true, subtree: true, characterData: true });
}

describe('“write pairing”', () => {
  const write = () => button(/^Write pairing/).click();
  const dialog = () => page.getByRole('dialog', { name: 'Write pairing' });

  test('writes one event for both, can be taken back, and asks before the same again', async () => {
    await openPair(ALDER, BIRCH);
    await write();
    await strip().getByText('paired: Alder × Birch').waitFor();
    const links = page.getByText('To the records of').getByRole('link');
    expect(await links.allTextContents()).toEqual(['Alder', 'Birch']);

    await write();
    await dialog().getByText('Alder is with Birch since', { exact: false }).waitFor();
    await dialog().getByRole('button', { name: 'No, write nothing' }).click();

    await strip().getByRole('button', { name: 'Undo paired: Alder × Birch, Alder' }).click();
    await strip().getByText('taken back').waitFor();
    await expect.poll(() => links.count()).toBe(0);
    await write();
    await page.getByText('Pairing written.', { exact: false }).waitFor();
    await links.first().click();
    await page.getByRole('region', { name: 'Ledger' }).getByText('Birch').first().waitFor();
    expect(await page.getByRole('region', { name: 'Ledger' }).locator('s').count()).toBe(1);
  });

  test('asks where an animal is on hold', async () => {
    await openPair(LARCH, OLIVE);
    expect(await half('Sire').textContent()).toContain('On hold: a swelling behind the jaw');
    await write();
    await dialog().getByText('Larch is on hold: a swelling behind the jaw.').waitFor();
    expect(await dialog().textContent()).toContain('the vet’s word comes before any pairing');
    await dialog().getByRole('button', { name: 'Yes, write it' }).click();
    await strip().getByText('paired: Larch × Olive').waitFor();
  });

  test('is reached from a record and from More', async () => {
    await page.goto(`${app.url}/animal/${DAISY.id}`);
    await page.getByRole('link', { name: 'Pair with …' }).click();
    await page.waitForURL(`**/pairing?dam=${DAISY.id}`);
    await page.goto(`${app.url}/more`);
    await page.getByRole('link', { name: /^Pairings/ }).click();
    await page.waitForURL('**/pairing');
  });
});
