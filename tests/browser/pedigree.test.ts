import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { scannerTypes } from './keys.ts';
import { idNamed, startPedigreeSite } from './pedigreeSite.ts';
import type { RunningApp } from './site.ts';

let app: RunningApp;
let browser: Browser;
let page: Page;
let faults: string[];

beforeAll(async () => {
  app = await startPedigreeSite();
  browser = await launchChromium();
  // One page for all: a new device takes its copy of the log first, each time.
  page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
  page.on('pageerror', (error) => faults.push(String(error)));
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

beforeEach(async () => {
  faults = [];
  await page.setViewportSize({ width: 1280, height: 800 });
});

afterEach(async () => {
  expect(faults).toEqual([]);
});

async function openPedigree(name: string, query = ''): Promise<void> {
  await page.goto(`${app.url}/pedigree/${idNamed(name)}${query}`);
  await page.getByRole('heading', { name: `Pedigree of ${name}` }).waitFor();
}

/** The words of a part of the page, on one line and with plain blanks. */
async function wordsIn(heading: string): Promise<string> {
  return ((await page.getByRole('region', { name: heading }).textContent()) ?? '').replace(/\s+/g, ' ');
}

const node = (name: RegExp) => page.getByRole('button', { name });

describe('inbreeding', () => {
  // Full-sib line: 1/4, 3/8 (Wright 1921, Genetics 6:111; from memory). Five and Six: Mrode, Table 2.1 (from memory).
  test.each([
    ['Elm', /1\/4 · 25 %/],
    ['Gorse', /3\/8 · 37\.5 %/],
    ['Five', /1\/8 · 12\.5 %/],
    ['Six', /1\/8 · 12\.5 %/],
  ])('of %s', async (name, figure) => {
    await openPedigree(name);
    await expect.poll(() => wordsIn('Inbreeding')).toMatch(figure);
  });
  test('is at least so much where a grandparent is unknown', async () => {
    await openPedigree('Ivy');
    await expect.poll(() => wordsIn('Inbreeding')).toMatch(/at least 1\/8 · 12\.5 %.*3 of 4 grandparents known/);
  });
  test('is not known where a parent is unknown', async () => {
    await openPedigree('Four');
    expect(await wordsIn('Inbreeding')).toMatch(/not known.*1 of 2 parents known/);
  });
  test('is no lower bound where all generations shown are known', async () => {
    await openPedigree('Elm', '?generations=2');
    await expect.poll(() => wordsIn('Inbreeding')).toMatch(/1\/4 · 25 %.*All ancestors of 2 generations are known/);
    expect(await wordsIn('Inbreeding')).not.toContain('at least');
  });
});

describe('kinship', () => {
  // Mrode, Table 2.1: A(5,6) = 0.6875, so the kinship, which is half of it, is 11/32 (from memory).
  test.each([
    ['Five', 'Six', /11\/32 · ≈ 34\.4 %.*Parent and young: 1\/4 is usual.*Here it is not so/],
    ['Cedar', 'Daisy', /1\/4 · 25 %.*Full siblings, neither of them inbred: 1\/4/],
    ['Juniper', 'Daisy', /1\/8 · 12\.5 %.*Half siblings, neither of them inbred: 1\/8/],
    ['One', 'Nettle', /0 %.*No common ancestor is known/],
  ])('of %s and %s', async (name, other, figure) => {
    await openPedigree(name, `?with=${idNamed(other)}`);
    await expect.poll(() => wordsIn('Kinship with another animal')).toMatch(figure);
  });
  test('is asked by name, and by a scanner that types', async () => {
    await openPedigree('Cedar');
    await page.getByText('Choose an animal').click();
    await page.getByRole('searchbox').fill('dai');
    const kinship = page.getByRole('region', { name: 'Kinship with another animal' });
    await kinship.getByRole('link', { name: /Daisy/ }).click();
    await expect.poll(() => wordsIn('Kinship with another animal')).toContain('1/4 · 25 %');
    await page.getByRole('button', { name: 'Another one' }).click();
    await page.getByText('Choose an animal').click();
    await page.getByRole('heading', { name: 'Pedigree of Cedar' }).click();
    await scannerTypes(page, idNamed('Elm'));
    await expect.poll(() => page.url()).toContain(`/pedigree/${idNamed('Cedar')}?with=${idNamed('Elm')}`);
    await expect.poll(() => wordsIn('Kinship with another animal')).toMatch(/3\/8 · 37\.5 %.*Parent and young/);
  });
});

describe('the drawing', () => {
  test('tells sex, and who comes up again, in words', async () => {
    await openPedigree('Elm');
    await node(/^sire: Cedar, male/).waitFor();
    await node(/^dam: Daisy, female/).waitFor();
    await node(/^dam’s sire: Alder.*again/).waitFor();
    expect(await page.getByText('dam unknown').count()).toBe(0);
  });
  test('says where a parent is unknown', async () => {
    await openPedigree('Ivy');
    await page.getByText('dam unknown').waitFor();
  });
  test('is walked by the arrows, and peeked into', async () => {
    await openPedigree('Gorse');
    await node(/^the animal itself/).focus();
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowRight']) await page.keyboard.press(key);
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
    expect(await focused()).toMatch(/^dam’s sire: Cedar, male/);
    await page.keyboard.press('Enter');
    await page.getByRole('complementary', { name: 'Cedar' }).getByRole('link', { name: 'Record' }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focused).toMatch(/Cedar/);
  });
  test('goes back as many generations as are asked for, and the address keeps it', async () => {
    await openPedigree('Gorse');
    await page.getByRole('button', { name: 'One generation less' }).click();
    await page.getByRole('button', { name: 'One generation less' }).click();
    await node(/^sire: Elm.*more above/).waitFor();
    expect(page.url()).toContain('generations=1');
  });
  test('stands as a list too', async () => {
    await openPedigree('Elm');
    await page.getByText('The same as a list').click();
    await page.getByRole('link', { name: /^dam’s dam: Birch, female/ }).waitFor();
  });
  test('fits a phone without panning', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await openPedigree('Gorse', '?generations=8');
    await node(/^sire’s sire’s sire: Alder/).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    expect(await page.locator('.tree').evaluate((tree) => tree.scrollWidth - tree.clientWidth)).toBe(0);
  });
});

describe('a ring of parents, which two devices wrote without knowing of each other', () => {
  test('is told with its links, drawn once round, and nothing hangs', async () => {
    await openPedigree('Knot', '?generations=8');
    await page.getByText('The animal Knot is its own ancestor.').waitFor();
    await node(/^sire’s sire: Knot.*the ring closes here/).waitFor();
    await page.getByRole('listitem').filter({ hasText: 'Knot, whose sire is Lark' }).waitFor();
    await page.getByRole('listitem').filter({ hasText: 'Lark, whose sire is Knot' }).waitFor();
    expect(await page.getByRole('region', { name: 'Inbreeding' }).count()).toBe(0);
    await page.getByRole('button', { name: 'One generation less' }).click();
    await node(/^sire: Lark/).waitFor();
  });
});

describe('descendants', () => {
  test('stand under their day and other parent', async () => {
    await openPedigree('Cedar');
    const young = page.getByRole('region', { name: 'Young' });
    await young.getByRole('link', { name: /Elm/ }).waitFor();
    expect(await wordsIn('Young')).toMatch(/with Daisy/);
    await young.getByText('1 young of its own').first().click();
    await young.getByRole('link', { name: /Gorse/ }).first().waitFor();
  });
});

describe('what would prove it', () => {
  const table = () => page.getByRole('table', { name: /The chance of het Clown/ });
  // A 66 % het and a visual: 1/2, 1/3, 1/5, 1/9 after 1, 2, 3, 4 normal young, by Bayes’ rule from 2/3.
  test('is half, a third, a fifth and a ninth for a possible het with a visual', async () => {
    await page.goto(`${app.url}/animal/${idNamed('Moss')}`);
    await page.getByText('What would prove it').click();
    await table().waitFor();
    const rows = await table().getByRole('row').allTextContents();
    expect(rows.slice(1, 5).map((row) => /\d\/\d+/.exec(row)?.[0])).toEqual(['1/2', '1/3', '1/5', '1/9']);
  });
  test('names mates of the site, and the pairing with each', async () => {
    await page.goto(`${app.url}/animal/${idNamed('Moss')}`);
    await page.getByText('What would prove it').click();
    const visual = page.getByRole('list', { name: 'Mates at this site: Clown' });
    await visual.getByRole('link', { name: 'Nettle' }).waitFor();
    const nettle = visual.getByRole('listitem').filter({ hasText: 'Nettle' });
    const link = await nettle.getByRole('link', { name: 'the pairing' }).getAttribute('href');
    expect(link).toBe(`/pairing?sire=${idNamed('Moss')}&dam=${idNamed('Nettle')}`);
    const hets = page.getByRole('list', { name: 'Mates at this site: het Clown' });
    expect((await hets.textContent()) ?? '').toMatch(/Oak.*Plum/);
  });
  test('leaves out who left and who is of the same sex, says holds, and warns of what the young would carry', async () => {
    await page.goto(`${app.url}/animal/${idNamed('Moss')}`);
    await page.getByText('What would prove it').click();
    const mates = page.getByRole('list', { name: 'Mates at this site: Clown' }).getByRole('listitem');
    await mates
      .filter({ hasText: 'Nettle' })
      .filter({ hasText: /On hold: .*wheezes/ })
      .waitFor();
    // Rose & Williams 2014 and Starck et al. 2022: spider animals wobble.
    await mates
      .filter({ hasText: 'Quince' })
      .filter({ hasText: /Look at this: .*wobble.*1\/2 · 50 %/ })
      .waitFor();
    expect(await mates.filter({ hasText: 'Nettle' }).filter({ hasText: 'Look at this' }).count()).toBe(0);
    expect(await mates.filter({ hasText: /Rue|Sloe/ }).count()).toBe(0);
  });
  test('is nothing where everything is known, in one line', async () => {
    await page.goto(`${app.url}/animal/${idNamed('Nettle')}`);
    await page.getByText('Nothing is open in its traits').waitFor();
  });
  test('is reached from the record, as the pedigree is', async () => {
    await page.goto(`${app.url}/animal/${idNamed('Elm')}`);
    await page.getByRole('link', { name: 'Pedigree' }).click();
    await page.getByRole('heading', { name: 'Pedigree of Elm' }).waitFor();
  });
});
