import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { EventKind } from '../../src/core/index.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub, reached } from './hub.ts';
import { scannerTypes } from './keys.ts';
import type { RunningApp } from './site.ts';
import {
  BRACKEN,
  CLOVER,
  cardWords,
  FERN,
  laySmallSite,
  MOSS,
  openRecord,
  type SmallSite,
  SORREL,
  type Tame,
  YARROW,
} from './smallSite.ts';

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

const sheet = () => page.getByRole('dialog');
const typing = () => sheet().getByLabel('Traits, in trade words or as trait code');
const writeTraits = () => sheet().getByRole('button', { name: 'Write traits' });
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

async function openTraits(animal: Tame): Promise<void> {
  await openRecord(page, app, animal);
  await button(/^(Set|Change) traits$/)
    .first()
    .click();
  await typing().waitFor();
}

const written = <K extends EventKind>(kind: K, count: number) => reached(app, kind, count);

describe('traits, typed', () => {
  test('in trade words are said back as code and words, written once, and printed by the card', async () => {
    await openTraits(MOSS);
    await typing().fill('pastel, het clown, 66% possible het pied');
    await sheet().getByText('[pie 2:3]/+; Pas/+; cln/+', { exact: true }).waitFor();
    await sheet().getByText('Pastel, het Clown, 66 % possible het Piebald', { exact: true }).waitFor();
    await writeTraits().click();
    await sheet().waitFor({ state: 'detached' });
    const card = await cardWords(page);
    expect(card).toContain('[pie 2:3]/+; Pas/+; cln/+');
    expect(card).toContain('Pastel, het Clown, 66 % possible het Piebald');
    expect(await written('traits-set', 1)).toMatchObject([
      {
        subjects: [MOSS.id],
        payload: { code: '[pie 2:3]/+; Pas/+; cln/+', words: 'Pastel, het Clown, 66 % possible het Piebald' },
      },
    ]);
  });

  test('that stand there already are not written again, and closing keeps nothing', async () => {
    await openTraits(MOSS);
    expect(await typing().inputValue()).toBe('Pastel, het Clown, 66 % possible het Piebald');
    await writeTraits().click();
    await sheet().getByText('These traits stand on the record already. Nothing was written.').waitFor();
    await typing().fill('Pastel');
    await page.keyboard.press('Escape');
    await sheet().waitFor({ state: 'detached' });
    expect(await cardWords(page)).toContain('[pie 2:3]/+; Pas/+; cln/+');
    expect(await written('traits-set', 1)).toHaveLength(1);
  });

  test('with a word that is no name offer near ones, and with one of two meanings ask which', async () => {
    await openTraits(MOSS);
    await typing().fill('Pastel, het Piebold');
    await sheet().getByText('“Piebold” is no trade name that is known in Python regius.').waitFor();
    expect(await sheet().locator('mark').textContent()).toBe('Piebold');
    expect(await writeTraits().isDisabled()).toBe(true);
    await sheet().getByRole('button', { name: 'Piebald', exact: true }).click();
    expect(await typing().inputValue()).toBe('Pastel, het Piebald');
    await sheet().getByText('pie/+; Pas/+', { exact: true }).waitFor();

    await typing().fill('Pastel, axanthic, het Clown');
    await sheet().getByText('“axanthic” can mean more than one thing.').waitFor();
    await sheet().getByRole('button', { name: 'Axanthic, second line', exact: true }).click();
    await sheet().getByText('Pas/+; cln/+; ax2/ax2', { exact: true }).waitFor();
    await typing().fill('het Clown Piebald');
    await sheet().getByRole('button', { name: 'visual Piebald' }).click();
    await sheet().getByText('pie/pie; cln/+', { exact: true }).waitFor();
  });

  test.each([
    ['three alleles of one series', MOSS, 'Lesser, Mojave, Butter', 'The locus BEL holds two copies'],
    ['the same in code', MOSS, 'Les/Moj; But/+', 'An animal has two alleles of a series.'],
    ['a Y in a female', MOSS, 'Banana (male-maker)', '+/Y:Ban does not fit a female: a female has no Y.'],
    ['two X in a male', BRACKEN, 'Ban/+; cln/+', 'Ban/+ does not fit a male: one copy lies on X and one on Y.'],
    ['code with a mark missing', MOSS, 'Pas/+ cln', 'The trait code has'],
  ] as const)('that cannot be are refused: %s', async (_case, animal, typed, says) => {
    await openTraits(animal);
    await typing().fill(typed);
    await sheet().getByText(says).waitFor();
    expect(await writeTraits().isDisabled()).toBe(true);
    await typing().press('Enter');
    expect(await sheet().count()).toBe(1);
    expect(await written('traits-set', 1)).toHaveLength(1);
  });

  test('of a male on X and Y are mended by the choice that the refusal holds out', async () => {
    await openTraits(BRACKEN);
    await typing().fill('Ban/+; cln/+');
    await sheet().getByRole('button', { name: '+/Y:Ban', exact: true }).click();
    await sheet().getByText('Banana (male-maker), het Clown', { exact: true }).waitFor();
  });
});

describe('traits, picked', () => {
  test('rewrite the text, fit the sex, and tell of welfare with its source before they are written', async () => {
    await openTraits(BRACKEN);
    await sheet().getByLabel('Or pick from').fill('banana');
    await sheet().getByLabel('Or pick from').press('Enter');
    await button(/^Banana/).click();
    expect(await button(/^one copy/).count()).toBe(0);
    await button(/^female-maker/).click();
    expect(await typing().inputValue()).toBe('Banana (female-maker)');
    await sheet().getByLabel('Or pick from').fill('spider');
    await button(/^Spider/).click();
    await button(/^one copy: Spider/).click();
    expect(await typing().inputValue()).toBe('Spider, Banana (female-maker)');
    const welfare = sheet().getByRole('list', { name: 'Welfare' });
    expect(await welfare.textContent()).toContain('every spider animal wobbles. Rose & Williams 2014');
    expect(await isInSight(welfare.getByRole('listitem').first())).toBe(true);
    await button(/^two copies: Spider/).click();
    expect(await welfare.textContent()).toContain('Lethal two copies of Spider: not known alive');
    await button('none: wild type').click();
    expect(await typing().inputValue()).toBe('Banana (female-maker)');
    expect(await welfare.count()).toBe(0);
  });

  test('can be of a chance of one’s own, and one that is none is refused', async () => {
    await openTraits(MOSS);
    await sheet().getByLabel('Or pick from').fill('clown');
    await button(/^Clown/).click();
    await button('other chance').first().click();
    await sheet().getByLabel('Clown: of so many').fill('8');
    await sheet().getByRole('button', { name: 'Put it in' }).click();
    expect(await typing().inputValue()).toBe('Pastel, 66 % possible het Piebald, 1 in 8 possible het Clown');
    await sheet().getByLabel('Clown: of so many').fill('1');
    await sheet().getByRole('button', { name: 'Put it in' }).click();
    await sheet().getByText('does not lie between 0 and 1').waitFor();
    expect(await typing().inputValue()).toContain('1 in 8 possible het Clown');
  });

  test('may be printed by a combo name, which is off until it is chosen', async () => {
    await openTraits(FERN);
    await typing().fill('Pastel, Spider');
    expect(await sheet().getByRole('radio', { name: 'the genes' }).isChecked()).toBe(true);
    await sheet()
      .getByRole('radio', { name: /^Bumblebee/ })
      .check();
    await writeTraits().click();
    await sheet().waitFor({ state: 'detached' });
    const card = await cardWords(page);
    expect(card).toContain('Pas/+; Spi/+');
    expect(card).toContain('Bumblebee');
    await written('traits-set', 2);
  });
});

describe('parents', () => {
  const parents = (animal: Tame) => page.goto(`${app.url}/animal/${animal.id}/parents`);
  const line = (role: 'Sire' | 'Dam') => page.getByRole('region', { name: role, exact: true });
  async function choose(role: 'Sire' | 'Dam', typed: string, name: string): Promise<void> {
    await line(role)
      .getByLabel(/^Find the/)
      .fill(typed);
    await line(role)
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .click();
  }

  test('are found by name and scanned by a scanner that types; one event writes both', async () => {
    await parents(SORREL);
    await choose('Sire', 'brack', 'Bracken');
    await line('Sire').getByRole('link', { name: 'Bracken' }).waitFor();
    await page.getByRole('heading', { name: 'Parents of Sorrel' }).click();
    await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
    await line('Dam').getByRole('link', { name: 'Moss' }).waitFor();
    await button('Write parents').click();
    await page.waitForURL(`**/animal/${SORREL.id}`);
    await page.locator('.kin').getByRole('link', { name: 'Bracken' }).waitFor();
    expect(await written('parents-set', 1)).toMatchObject([
      { subjects: [SORREL.id], payload: { sire: BRACKEN.id, dam: MOSS.id } },
    ]);
  });

  test('that cannot be are refused in words at their line, and nothing is written', async () => {
    await parents(MOSS);
    await choose('Dam', SORREL.id, 'Sorrel');
    await line('Dam').getByText('Sorrel comes down from Moss, so it cannot be its parent').waitFor();
    await choose('Dam', MOSS.id, 'Moss');
    await line('Dam').getByText('Moss cannot be its own parent.').waitFor();
    await choose('Sire', CLOVER.id, 'Clover');
    await line('Sire').getByText('Clover is a female and cannot be the sire.').waitFor();
    expect(await line('Sire').textContent()).toContain('unknown');
    await button('Write parents').click();
    await page.getByText('These parents stand on the record already. Nothing was written.').waitFor();
    expect(await written('parents-set', 1)).toHaveLength(1);
  });

  test('of the address are judged again before they are written', async () => {
    await page.goto(`${app.url}/animal/${CLOVER.id}/parents?sire=${FERN.id}&dam=${YARROW.id}`);
    await button('Write parents').click();
    await page.getByText('Yarrow is a male and cannot be the dam.').waitFor();
    expect(await written('parents-set', 1)).toHaveLength(1);
  });

  test('are waited for on the Scan screen, which leads back with the one that was scanned', async () => {
    await parents(CLOVER);
    await page.getByRole('button', { name: 'Scan the sire' }).click();
    await page.getByText('Scan the sire of Clover').waitFor();
    await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${YARROW.id}`);
    await page.waitForURL(`**/animal/${CLOVER.id}/parents?sire=${YARROW.id}&dam=`);
    await line('Sire').getByRole('link', { name: 'Yarrow' }).waitFor();
    await line('Sire').getByRole('button', { name: 'The sire is unknown' }).click();
    await line('Sire').getByText('unknown', { exact: true }).waitFor();
  });
});

describe('the site’s own loci', () => {
  test('a row that clashes is refused with its reason; a sound one is used in a trait at once', async () => {
    await page.goto(`${app.url}/loci?species=Python%20regius`);
    await button('Add a row').click();
    await sheet().getByRole('button', { name: 'Write the row' }).click();
    await sheet().getByText('The name of the locus is missing').waitFor();
    await sheet().getByLabel('Name of the locus').fill('EMB');
    await sheet().getByLabel('Sign', { exact: true }).fill('cln');
    await sheet().getByLabel('Trade names').fill('Ember / Glow');
    await sheet().getByLabel('Source', { exact: true }).fill('our own clutches');
    await sheet().getByRole('button', { name: 'Write the row' }).click();
    await sheet().getByText('the sign cln of EMB is taken by CLN (cln)').waitFor();
    await sheet().getByLabel('Sign', { exact: true }).fill('emb');
    await sheet().getByRole('button', { name: 'Write the row' }).click();
    await sheet().waitFor({ state: 'detached' });
    const row = page.getByRole('listitem').filter({ hasText: 'Ember' });
    expect(await row.textContent()).toContain('site');
    expect(await written('locus-set', 1)).toMatchObject([
      {
        subjects: [],
        payload: {
          locus: 'EMB',
          alleles: [{ symbol: 'emb', names: ['Ember', 'Glow'] }],
          sources: ['our own clutches'],
        },
      },
    ]);

    await openTraits(YARROW);
    await typing().fill('het glow, Pastel');
    await sheet().getByText('Pas/+; emb/+', { exact: true }).waitFor();
    await writeTraits().click();
    await sheet().waitFor({ state: 'detached' });
    expect(await cardWords(page)).toContain('Pastel, het Ember');
  });

  test('a row that is amended keeps what it says', async () => {
    await page.goto(`${app.url}/loci?species=Python%20regius`);
    await button('Amend SPI').click();
    expect(await sheet().getByLabel('How it shows').inputValue()).toBe('dominant');
    expect(await sheet().getByLabel('How well it is known').inputValue()).toBe('memory');
    await sheet().getByLabel('How well it is known').selectOption('published');
    await sheet().getByRole('button', { name: 'Another allele' }).click();
    expect(await sheet().getByLabel('How well it is known').inputValue()).toBe('published');
    await sheet().getByRole('button', { name: 'Write the row' }).click();
    await sheet().waitFor({ state: 'detached' });
    const [, spider] = await written('locus-set', 2);
    expect(spider?.payload).toMatchObject({
      locus: 'SPI',
      alleles: [{ symbol: 'Spi' }, { symbol: 'Blh' }, { symbol: 'Sen' }],
      named: [{ pair: ['Blh', 'Blh'], name: 'Super Blackhead' }],
      lethal: [{ carrying: ['Spi', 'Spi'], says: 'two copies of Spider: not known alive' }],
      welfare: [
        { anyOf: [['Spi']], says: 'every spider animal wobbles', source: 'Rose & Williams 2014; Starck et al. 2022' },
      ],
      confidence: 'published',
    });
    // What was just written can be taken back at once, as any other entry.
    await page.getByRole('button', { name: /^Undo locus SPI written/ }).click();
    await expect.poll(() => page.locator('.notch', { hasText: 'site' }).count()).toBe(1);
  });

  test('amending it so that a card’s code could no longer be read is told first', async () => {
    await page.goto(`${app.url}/loci?species=Python%20regius`);
    await button('Amend EMB').click();
    await sheet().getByLabel('Sign', { exact: true }).fill('embr');
    await sheet().getByRole('button', { name: 'Write the row' }).click();
    await sheet().getByText('the trait code of Yarrow can no longer be read').waitFor();
    await page.keyboard.press('Escape');
    expect(await written('locus-set', 2)).toHaveLength(2);
    await openRecord(page, app, YARROW);
    expect(await cardWords(page)).toContain('het Ember');
  });

  test('of a species without any, the first step is said', async () => {
    await page.goto(`${app.url}/loci?species=Anilius%20scytale`);
    await page.getByText('No loci are known here. Add the site’s own row').waitFor();
  });
});

describe('a new animal in Books', () => {
  const form = () => page.locator('details.add').filter({ hasText: 'Add an animal' });
  const add = () => form().getByRole('button', { name: 'Add the animal' }).click();
  beforeEach(async () => {
    await page.goto(`${app.url}/books`);
    await form().locator('summary').first().click();
    await form().getByLabel('Species').fill('Python regius');
    await form().getByLabel('Name', { exact: true }).fill('Wisteria');
    await form().getByLabel('Sex').selectOption('female');
  });
  const animals = () => written('animal-added', 7);

  test.each([
    ['traits with a word that is no name', 'Traits, in trade words', 'het Clwn', '“Clwn” is no trade name'],
    ['a parent that nobody is called', 'Sire', 'Heather', 'No animal of this site is called “Heather”.'],
    ['a female as sire', 'Sire', MOSS.id, 'Moss is a female and cannot be the sire.'],
  ] as const)('is not added with %s', async (_case, label, typed, says) => {
    await form().getByLabel(label).fill(typed);
    await add();
    await form().getByText(says).waitFor();
    expect(await form().getByText('Added as').count()).toBe(0);
    expect(await animals()).toHaveLength(7);
  });

  test('is added with its traits and parents in one go', async () => {
    await form().getByLabel('Traits, in trade words').fill('Pastel, het Clown');
    await form().getByText('Pas/+; cln/+', { exact: true }).waitFor();
    await form().getByLabel('Sire').fill('Bracken');
    await form().getByLabel('Dam').fill(MOSS.display);
    await add();
    await form().getByText('Added as').waitFor();
    const [id] = (await written('animal-added', 8)).at(-1)?.subjects ?? [];
    const log = (await onTheHub(app)).filter((event) => event.subjects[0] === id);
    expect(log).toMatchObject([
      { kind: 'animal-added', payload: { sire: BRACKEN.id, dam: MOSS.id } },
      { kind: 'traits-set', payload: { code: 'Pas/+; cln/+', words: 'Pastel, het Clown' } },
    ]);
  });
});

test('a phone shows each of these pages without a sideways scroll', async () => {
  for (const path of [`/animal/${MOSS.id}`, `/animal/${MOSS.id}/parents`, '/loci?species=Python%20regius']) {
    await page.goto(`${app.url}${path}`);
    await page.locator('h1').first().waitFor();
    expect([path, await page.evaluate('document.documentElement.scrollWidth')]).toEqual([path, 390]);
    expect(await page.title()).not.toContain('Not here');
  }
});

/** Whether a part lies wholly within what the window shows. */
async function isInSight(part: ReturnType<Page['locator']>): Promise<boolean> {
  const box = await part.boundingBox();
  const height = page.viewportSize()?.height ?? 0;
  return box !== null && box.y >= 0 && box.y + box.height <= height;
}
