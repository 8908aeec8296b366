import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../cli/tubwright.ts';
import { launchChromium } from '../tools/browser.ts';
import { type RunningApp, startApp } from './site.ts';

let app: RunningApp;
let browser: Browser;
let page: Page;
/** An animal with a long trait code, one that may not be fed, a rack: what strains a narrow screen most. */
let strained: readonly string[];

beforeAll(async () => {
  app = await startApp();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  await page.goto(`${app.url}/rounds`);
  await page.getByRole('heading', { name: 'Feeding round' }).waitFor({ timeout: 90_000 });
  strained = await longest();
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

/** Every screen, and what is on it once it is there. */
const SCREENS: Readonly<Record<string, string>> = {
  '/': '.scan',
  '/rounds': '.rounds',
  '/rounds/run': '.run',
  '/racks': '.racks',
  '/find': '.find',
  '/more': '.more',
  '/print': '.press',
  '/print/stock': '.own-body',
  '/print/printer': '.own-printer',
  '/print/calibration': '.calibration-body',
  '/books': '.books .device-lines',
  '/enclosures': '.enclosure-list',
  '/freezer': '.freezer .lots',
  '/freezer/order': '.order-list',
  '/loci': '.loci',
  '/pairing': '.pairing',
  '/arrive': '.arrive-form',
  '/quarantine': '.quarantine-lines',
  '/treatments': '.treatments',
  '/season': '.season-page',
  '/season/plan': '.season-plan',
};

describe('the demo, which stands on its own day', () => {
  test('asks about the same meal twice in a minute, whatever day it really is', async () => {
    await page.goto(`${app.url}/rounds`);
    const link = page.locator('.rounds-walk a[href^="/animal/"]').first();
    await link.waitFor();
    const id = (await link.getAttribute('href'))?.split('/').at(-1) ?? '';
    await page.goto(`${app.url}/`);
    await page.getByRole('button', { name: 'Take a stamp' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'fed as planned' }).click();
    const type = async () => {
      await page.getByRole('textbox', { name: 'Id on the card' }).fill(id);
      await page.getByRole('button', { name: 'Open' }).click();
    };
    await type();
    const undo = page.getByRole('button', { name: /^Undo fed as planned/ }).first();
    await undo.waitFor();
    await type();
    await page.getByText('The same was written for this animal').waitFor();
    await page.getByRole('button', { name: 'No, write nothing' }).click();
    await page.getByRole('button', { name: 'Put down' }).click();
    await undo.click();
    await page.getByText('taken back').first().waitFor();
  });
});

describe('a phone of 390 by 844', () => {
  const walk: Walked[] = [];
  beforeAll(async () => {
    for (const screen of [...Object.keys(SCREENS), ...strained]) walk.push(await walked(screen));
  });

  test('shows every screen of the demo without a sideways scroll', () => {
    for (const { screen, widthPx } of walk) expect([screen, widthPx]).toEqual([screen, 390]);
    expect(walk).toHaveLength(Object.keys(SCREENS).length + strained.length);
  });

  test('offers no button, link of a list, field or bar place lower than 48 pixels', () => {
    for (const { screen, low } of walk) expect([screen, low]).toEqual([screen, []]);
  });

  test('has one main heading and a title of its own on every screen', () => {
    const named = walk.filter(({ screen }) => screen in SCREENS);
    for (const { screen, headings } of named) expect([screen, headings]).toEqual([screen, 1]);
    expect(new Set(named.map(({ title }) => title)).size).toBe(Object.keys(SCREENS).length);
  });
});

describe('the colours of both looks', () => {
  const looks = tokens();

  test('were found', () => {
    expect(looks.map(({ name, colours }) => [name, colours.size >= 9])).toEqual([
      ['day', true],
      ['night', true],
    ]);
  });

  // WCAG 2.2, 1.4.3: 4.5 to 1 for text; 1.4.11: 3 to 1 for what bounds a control. The formula is in its definitions
  // of contrast ratio and relative luminance (from memory).
  test.each(looks)('$name: text stands out by 4.5 and rules by 3 to 1', ({ colours }) => {
    const on = (text: string, ground: string) => contrast(colours.get(text) ?? '', colours.get(ground) ?? '');
    for (const ground of ['paper', 'card']) {
      for (const text of ['ink', 'soft', 'accent', 'look', 'stop'])
        expect([text, ground, on(text, ground) >= 4.5]).toEqual([text, ground, true]);
      expect(on('rule', ground)).toBeGreaterThanOrEqual(3);
    }
    expect(on('on-accent', 'accent')).toBeGreaterThanOrEqual(4.5);
  });

  test('the formula gives 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#8a4a00', '#8a4a00')).toBe(1);
  });

  test('the night look lights nothing blue: no colour has more blue than red', () => {
    const night = looks.find(({ name }) => name === 'night')?.colours ?? new Map<string, string>();
    const blue = [...night].filter(([, colour]) => (rgb(colour)[2] ?? 0) > (rgb(colour)[0] ?? 0));
    expect(blue).toEqual([]);
  });

  test('the night look stays when the page is opened again', async () => {
    await show('/more');
    await page.getByText('Night, red on black').click();
    await page.reload();
    await page.getByRole('heading', { name: 'More' }).waitFor();
    const ground = await page.evaluate<string>('getComputedStyle(document.body).backgroundColor');
    expect(ground).toBe('rgb(11, 0, 0)');
  });
});

/** What a screen of the demo looks like on the phone. */
interface Walked {
  readonly screen: string;
  readonly widthPx: number;
  readonly low: readonly string[];
  readonly headings: number;
  readonly title: string;
}

/** Goes to a screen and looks at all of it at once: a walk through the demo takes a while. */
async function walked(screen: string): Promise<Walked> {
  await show(screen);
  const widthPx = await page.evaluate<number>('document.documentElement.scrollWidth');
  const [low, headings] = [await lowTargets(), await page.locator('h1').count()];
  return { screen, widthPx, low, headings, title: await page.title() };
}

/** Goes there as a link does; opening the large log of the demo again for each screen would take minutes. */
async function show(screen: string): Promise<void> {
  await page.evaluate((to) => {
    history.pushState(null, '', to);
    dispatchEvent(new PopStateEvent('popstate'));
  }, screen);
  await page
    .locator(SCREENS[screen] ?? '.ledger-line, .place-body')
    .first()
    .waitFor();
}

/** Every visible target under 48 pixels that is neither a link within text nor a tick beside its own label. */
function lowTargets(): Promise<readonly string[]> {
  return page.evaluate(() => {
    const targets = [...document.querySelectorAll<HTMLElement>('button, select, input, textarea, nav a, li > a')];
    const isLow = (one: HTMLElement): boolean => {
      const { width, height } = one.getBoundingClientRect();
      return width > 1 && height > 1 && height < 47.5;
    };
    const isShown = (one: HTMLElement): boolean => one.checkVisibility({ opacityProperty: true });
    const isInLabel = (one: HTMLElement): boolean => {
      const label = one.closest('label');
      return label !== null && label.getBoundingClientRect().height >= 47.5;
    };
    return targets
      .filter((one) => isShown(one) && isLow(one) && !isInLabel(one))
      .map((one) => `${one.tagName} ${one.className} ${one.textContent?.trim().slice(0, 40)}`);
  });
}

/** The records with the longest card of the demo and of each state, and one place. */
async function longest(): Promise<readonly string[]> {
  const answer = await fetch(`${app.url}/pull?after=0&limit=5000`);
  const { rows } = (await answer.json()) as { readonly rows: readonly Row[] };
  const coded = rows.filter(({ kind }) => kind === 'traits-set').sort((a, b) => lengthOf(b) - lengthOf(a))[0];
  const flagged = rows.find(({ kind }) => kind === 'animal-flagged');
  const place = rows.find(({ kind }) => kind === 'place-added');
  return [`/animal/${coded?.subjects[0]}`, `/animal/${flagged?.subjects[0]}`, `/place/${place?.subjects[0]}`];
}

interface Row {
  readonly kind: string;
  readonly subjects: readonly string[];
  readonly payload: unknown;
}

const lengthOf = ({ payload }: Row): number => JSON.stringify(payload).length;

interface Look {
  readonly name: 'day' | 'night';
  readonly colours: ReadonlyMap<string, string>;
}

function tokens(): readonly Look[] {
  const css = readFileSync(join(ROOT, 'src/app/look/tokens.css'), 'utf8');
  const block = (head: RegExp): ReadonlyMap<string, string> => {
    const found = head.exec(css)?.[1] ?? '';
    return new Map(
      [...found.matchAll(/--([\w-]+): (#[0-9a-f]{6})/g)].map(([, name = '', colour = '']) => [name, colour]),
    );
  };
  return [
    { name: 'day', colours: block(/:root \{([^}]*)\}/) },
    { name: 'night', colours: block(/:root\[data-look="night"\] \{([^}]*)\}/) },
  ];
}

function rgb(colour: string): readonly number[] {
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}

function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = rgb(colour).map((byte) => {
    const share = byte / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}
