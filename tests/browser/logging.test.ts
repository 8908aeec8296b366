import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchChromium } from '../tools/browser.ts';
import { scannerTypes } from './keys.ts';
import type { RunningApp } from './site.ts';
import {
  ago,
  BRACKEN,
  CLOVER,
  cardWords,
  FERN,
  FREE_TUB,
  laySmallSite,
  MOSS,
  openRecord,
  type SmallSite,
  SORREL,
  TAKEN_TUB,
  TANSY,
  typeId,
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

const strip = () => page.getByRole('region', { name: 'Last entries' });
const ledger = () => page.getByRole('region', { name: 'Ledger' });
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });
const question = () => page.getByRole('dialog');
/** What the primary action would feed. */
const feedWords = () => button(/^Feed as planned/).textContent();

describe('a scanner that types', () => {
  const screens = ['/', '/rounds', '/racks', '/find', '/more', '/books', '/print', `/animal/${BRACKEN.id}`];

  test('opens a record from any screen, and a field that had the focus keeps its words', async () => {
    for (const screen of screens) {
      await page.goto(`${app.url}${screen}`);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      await expect.poll(() => page.locator('[aria-busy=true]').count(), { timeout: 10_000 }).toBe(0);
      await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
      await page.waitForURL(`**/animal/${MOSS.id}`, { timeout: 10_000 });
    }
    await page.goto(`${app.url}/find`);
    await page.getByRole('searchbox').fill('clo');
    await scannerTypes(page, MOSS.display);
    await page.waitForURL(`**/animal/${MOSS.id}`);
    expect(await page.getByRole('heading', { level: 1 }).first().textContent()).toContain('Moss');
  });

  /** A device that knows nothing yet; `during` happens on its first page while the hub's answer is held back. */
  async function onNewDevice(during: (page: Page, answer: () => void) => Promise<void>): Promise<void> {
    const context = await browser.newContext({ serviceWorkers: 'block' });
    try {
      const fresh = await context.newPage();
      let answer = (): void => undefined;
      const answered = new Promise<void>((resolve) => {
        answer = resolve;
      });
      await fresh.route('**/pull?*', async (route) => {
        await answered;
        await route.continue();
      });
      await during(fresh, answer);
      await fresh.waitForURL(`**/animal/${MOSS.id}`);
    } finally {
      await context.close();
    }
  }

  test('loses no key of a scan in the midst of which the log opens', () =>
    onNewDevice(async (fresh, answer) => {
      await fresh.goto(`${app.url}/`);
      await fresh.getByText('Opening the log').waitFor();
      const opens = async (): Promise<void> => {
        answer();
        await fresh.getByText('Hold a card in the frame').waitFor();
      };
      await scannerTypes(fresh, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`, { afterKeys: 6, happens: opens });
    }));

  test('is heard as soon as anything is drawn, and its card opens once the log is there', () =>
    onNewDevice(async (fresh, answer) => {
      // The page itself presses the keys, in the very moment after the first drawing: nothing from outside comes as soon.
      await fresh.addInitScript((text) => {
        const press = (key: string) => dispatchEvent(new KeyboardEvent('keydown', { key, code: key }));
        new MutationObserver((_changes, watch) => {
          if (document.querySelector('.stamp-choose') === null) return;
          watch.disconnect();
          for (const key of [...text, 'Enter']) press(key);
        }).observe(document, { childList: true, subtree: true });
      }, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`);
      await fresh.goto(`${app.url}/`);
      await fresh.getByText('Opening the log').waitFor();
      answer();
    }));

  test('loses no key of a scan in the midst of which another screen is opened', async () => {
    await openRecord(page, app, BRACKEN);
    const leaves = async (): Promise<void> => {
      await page.getByRole('link', { name: 'Find' }).click();
      await page.waitForURL('**/find');
    };
    await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${MOSS.id}`, { afterKeys: 6, happens: leaves });
    await page.waitForURL(`**/animal/${MOSS.id}`);
  });

  test('does not push a note away that is being written', async () => {
    await openRecord(page, app, BRACKEN);
    await page.getByText('All actions, and on another day').click();
    await button('Note').click();
    await page.getByLabel('Note', { exact: true }).fill('a tick behind the left eye');
    await scannerTypes(page, MOSS.display);
    await page.waitForTimeout(400);
    expect(page.url()).toContain(BRACKEN.id);
    expect(await page.getByLabel('Note', { exact: true }).inputValue()).toBe('a tick behind the left eye');
    await button('Write note').click();
    await ledger().getByText('a tick behind the left eye').waitFor();
  });

  test('is not mistaken for a person who types an id slowly into a field', async () => {
    await page.goto(`${app.url}/find`);
    await page.getByRole('searchbox').focus();
    await page.keyboard.type(BRACKEN.id, { delay: 110 });
    await page.waitForTimeout(400);
    expect(page.url()).toBe(`${app.url}/find`);
    expect(await page.getByRole('searchbox').inputValue()).toBe(BRACKEN.id);
  });
});

describe('a stamp picked once', () => {
  test('is put on three cards in a row, undone on one, and asks before the same again', async () => {
    await page.goto(`${app.url}/`);
    await button('Take a stamp').click();
    await page.getByRole('dialog', { name: 'Stamps' }).getByRole('button', { name: 'fed as planned' }).click();
    await typeId(page, MOSS.display);
    await strip().getByText('fed as planned').first().waitFor();
    await scannerTypes(page, `HTTPS://TUBS.EXAMPLE/${BRACKEN.id}`);
    await strip().getByRole('link', { name: 'Bracken' }).waitFor();
    await typeId(page, CLOVER.id.toLowerCase());
    await strip().getByRole('link', { name: 'Clover' }).waitFor();
    const lines = (await strip().getByRole('listitem').allTextContents()).map((line) => line.replace('Undo', ''));
    expect(lines).toEqual(['✓Clover fed as planned', '✓Bracken fed as planned', '✓Moss fed as planned']);

    await strip().getByRole('button', { name: 'Undo fed as planned, Bracken' }).click();
    await strip().getByText('taken back').waitFor();

    // The same card again: asked first, and No writes nothing.
    await typeId(page, MOSS.id);
    await question().getByText('The same was written for this animal').waitFor();
    expect(await question().textContent()).toContain('Say “again” if it happened twice');
    await question().getByRole('button', { name: 'No, write nothing' }).click();
    expect(await strip().getByRole('listitem').count()).toBe(3);

    await button('Put down').click();
    await typeId(page, BRACKEN.id);
    await page.waitForURL(`**/animal/${BRACKEN.id}`);
    const undone = ledger().getByRole('listitem').filter({ hasText: 'taken back' });
    expect(await undone.locator('s').textContent()).toContain('1 × small rat');
    await openRecord(page, app, MOSS);
    await ledger().getByText('small rat').first().waitFor();
    expect(await ledger().getByText('small rat').count()).toBe(2);
    // Fed today, it is not offered food once more as if nothing had happened.
    await page.getByText('Not due yet.').waitFor();
  });
});

describe('the stamp “moved”', () => {
  test('takes an animal to the tub that is scanned after it, and asks where somebody lives', async () => {
    await page.goto(`${app.url}/`);
    await button('Take a stamp').click();
    await page.getByRole('dialog', { name: 'Stamps' }).getByRole('button', { name: 'moved' }).click();
    await scannerTypes(page, FREE_TUB);
    await strip().getByText('Scan the animal first, then the tub.').waitFor();
    await typeId(page, SORREL.id);
    await page.getByText('Sorrel goes to the place that is scanned next').waitFor();
    await scannerTypes(page, FREE_TUB);
    await strip().getByText('moved to Rack 1 · 1-08').waitFor();

    await typeId(page, SORREL.id);
    await page.getByText('Sorrel goes to the place that is scanned next').waitFor();
    await scannerTypes(page, TAKEN_TUB);
    await question().getByText('Moss lives in Rack 1 · 1-01 already.').waitFor();
    await question().getByRole('button', { name: 'No, write nothing' }).click();
    await button('Put down').click();
    await openRecord(page, app, SORREL);
    await ledger().getByText('Moved to Rack 1 · 1-08').waitFor();
  });
});

describe('a record', () => {
  test('takes a refusal, other prey, and a weight with its unit', async () => {
    await openRecord(page, app, SORREL);
    await button('Refused').click();
    await ledger()
      .getByText(/Refused/)
      .waitFor();
    expect(await cardWords(page)).toMatch(/Due/);

    // Minutes after the refusal another prey: the same kind of entry so soon is asked about.
    await button('Other prey').click();
    await page.getByLabel('Prey', { exact: true }).selectOption('mouse-adult');
    await button('One more').click();
    await button('Taken').click();
    await question()
      .getByRole('button', { name: /^Yes, write/ })
      .click();
    await ledger()
      .getByText(/2 × adult mouse/)
      .waitFor();

    await button('Weighed').click();
    await page.getByLabel('Weight as the scale shows it').fill('0.94kg');
    await button('Write weight').click();
    await ledger().getByText('Weighed 940 g').waitFor();
    expect(await cardWords(page)).toContain('940 g');
  });

  test('holds an opaque animal back until its shed is seen', async () => {
    await openRecord(page, app, YARROW);
    await button('Opaque').click();
    await expect.poll(() => cardWords(page)).toMatch(/opaque since/);
    await button(/^Shed seen/).click();
    await button(/^Feed as planned/).waitFor();
    expect(await cardWords(page)).not.toMatch(/opaque since/);
  });

  test('rests an animal that regurgitated, and offers half a meal after the rest', async () => {
    const regurgitated = async (): Promise<void> => {
      await button('Regurgitated').click();
      await page.getByLabel('What came back').fill('most of a rat');
      await button('Write regurgitated').click();
      await ledger().getByText('Regurgitated').waitFor();
    };
    await openRecord(page, app, CLOVER);
    await page.getByText('All actions, and on another day').click();
    await regurgitated();
    await page.getByText('Nothing to feed now.').waitFor();
    expect(await cardWords(page)).toMatch(/rest after regurgitating/);

    await openRecord(page, app, TANSY);
    const whole = await feedWords();
    await page.getByText('All actions, and on another day').click();
    await page.getByLabel('On another day').fill(ago(11));
    await regurgitated();
    await page.getByText('half a meal: the first after a regurgitation').last().waitFor();
    expect(await feedWords()).not.toBe(whole);
  });

  test('is not fed after a second regurgitation until a vet has spoken, by name', async () => {
    await openRecord(page, app, FERN);
    await page.getByText('All actions, and on another day').click();
    await button('Regurgitated').click();
    await button('Write regurgitated').click();
    await page.getByText('Not to be fed without a vet’s word.').waitFor();
    expect(await button(/^Feed as planned/).count()).toBe(0);
    expect(await cardWords(page)).toMatch(/vet/i);
    // Even the long list refuses it, and says what to do.
    await button('Fed as planned').click();
    await strip().getByText('Call the vet.', { exact: false }).waitFor();
    await page
      .getByRole('region', { name: 'Now' })
      .getByRole('button', { name: /^Vet cleared/ })
      .click();
    await button('Write vet cleared').click();
    await page.getByLabel('Name of the vet').fill('Dr. Ines Amsel');
    await button('Write vet cleared').click();
    await ledger().getByText('Vet cleared: Dr. Ines Amsel').waitFor();
    await expect.poll(() => page.getByText('Not to be fed without a vet’s word.').count()).toBe(0);
  });
});
