import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeLog } from '../../src/store/index.ts';
import { tubwright } from '../cli/tubwright.ts';
import { launchChromium } from '../tools/browser.ts';
import { AMBER, EXHIBIT, enclosureLog, FIRST_TUB, RACK, SECOND_TUB } from './enclosureSite.ts';
import { onTheHub, reached } from './hub.ts';
import { type RunningApp, startApp } from './site.ts';

const folder = mkdtempSync(join(tmpdir(), 'tubwright-space-'));
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const [file, data] = [join(folder, 'log.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(enclosureLog()));
  const taken = await tubwright(['import', file, '--into', data]);
  if (taken.code !== 0) throw new Error(taken.err);
  app = await startApp(['--data', data]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

const inside = () => page.getByRole('region', { name: 'Inside' });
const verdict = (title: string) => inside().getByRole('region', { name: title, exact: true }).first();
const CAUTION = 'Your local code, licence or inspector decides';
const open = async (path: string): Promise<void> => {
  await page.goto(`${app.url}${path}`);
  await page.getByText(CAUTION).first().waitFor();
};
const rowsOf = async (title: string): Promise<string[][]> => {
  const rows = await verdict(title).locator('tbody tr').all();
  return Promise.all(rows.map((row) => row.locator('th, td').allTextContents()));
};

describe('the place of a ball python of 1.30 m', () => {
  test('stands beside each rule set, side by side, with its source and the caution', async () => {
    await open(`/place/${FIRST_TUB}`);
    // Austria: 0.9 m2 and 0.7 m; Germany: 1.30 x 0.65 x 0.975 m; England: 1.0, 2/3 and 1/3 of the length.
    expect(await rowsOf('Austria')).toEqual([
      ['floor', '0.9 m²', '0.405 m²', '0.495 m²'],
      ['height', '70 cm', '30 cm', '40 cm'],
    ]);
    expect(await rowsOf('Germany')).toEqual([
      ['length', '130 cm', '90 cm', '40 cm'],
      ['width', '65 cm', '45 cm', '20 cm'],
      ['height', '97.5 cm', '30 cm', '67.5 cm'],
    ]);
    expect((await rowsOf('England'))[2]).toEqual(['height', '43.4 cm', '30 cm', '13.4 cm']);
    for (const title of ['Austria', 'Germany', 'England']) {
      const words = (await verdict(title).textContent()) ?? '';
      expect(words).toMatch(/S .*(BGBl|expert report|opinion)/);
    }
    const all = (await page.getByRole('main').textContent()) ?? '';
    expect(all).not.toMatch(/illegal|legal\b|unlawful|lawful|forbidden/i);
  });

  test('is enough once the measured inside is, and nothing else of the place is lost', async () => {
    await inside().getByRole('button', { name: 'Measure again' }).click();
    await page.getByLabel('Inside of this place').fill('140 x 90');
    await inside().getByRole('button', { name: 'Save the size' }).click();
    await inside().getByText('is not length, width and height').waitFor();
    await page.getByLabel('Inside of this place').fill('1.4 x 0.9 x 1 m');
    await inside().getByText('Read as 140 × 90 × 100 cm, 1.26 m² of floor.').waitFor();
    await inside().getByRole('button', { name: 'Save the size' }).click();
    // The form goes when the size is written; until then its own line says the same figures.
    await inside().getByRole('button', { name: 'Measure again' }).waitFor();
    await inside().getByText('140 × 90 × 100 cm', { exact: true }).waitFor();
    await expect.poll(() => verdict('Germany').textContent()).toContain('✓ enough');
    await expect
      .poll(async () => (await onTheHub(app)).findLast((one) => one.kind === 'place-set')?.payload, { timeout: 10_000 })
      .toEqual({ name: '1-01', parent: RACK, walk: 1, sizeMm: { length: 1400, width: 900, height: 1000 } });
  });
});

describe('places that are not measured', () => {
  test('an animal without a length is named, and compared at a length that is typed', async () => {
    await open(`/place/${SECOND_TUB}`);
    await inside().getByRole('link', { name: 'Flint' }).waitFor();
    await page.getByLabel('Compare at a length').fill('51 in');
    await inside().getByText('Python regius at 129.5 cm').waitFor();
    expect((await rowsOf('Austria'))[0]).toEqual(['floor', '0.9 m²', '–', '']);
    expect(await verdict('Austria').textContent()).toContain('not measured');
  });
  test('the tubs of a rack get one size at once, and those that had another one too', async () => {
    await page.goto(`${app.url}/place/${RACK}`);
    await inside().getByText('2 not measured').waitFor();
    await inside().getByRole('button', { name: 'One size for all of them' }).click();
    await page.getByLabel('Inside of each of the 3 places').fill('80x40x20cm');
    await inside().getByRole('button', { name: 'Give all 3 places this size' }).click();
    await inside().getByText('3 80 × 40 × 20 cm').waitFor();
    await page.getByRole('button', { name: /^Undo 80 × 40 × 20 cm inside in 3 places/ }).click();
    await inside().getByText('2 not measured').waitFor();
    await inside().getByText('1 140 × 90 × 100 cm').waitFor();
  });
  test('several species in one place are compared one by one, and it is said that no rule speaks of that', async () => {
    await open(`/place/${EXHIBIT}`);
    const boa = inside().getByRole('region', { name: 'Boa imperator' });
    expect(await boa.textContent()).toMatch(/1 of another species lives here too.*160 cm \(guessed\)/);
    const carpet = inside().getByRole('region', { name: 'Morelia spilota' });
    const words = (await carpet.textContent()) ?? '';
    expect(words).toContain('only snout to vent is known');
    expect(words).toContain('has no figures here for “Morelia spilota”');
    expect(words).toContain('a climbing snake needs more height');
  });
});

describe('all enclosures', () => {
  test('are listed by how they stand; a rule set that is picked comes first everywhere', async () => {
    await open('/enclosures');
    const lens = page.getByRole('group', { name: 'Which places' });
    const list = page.getByRole('list').filter({ has: page.getByRole('link', { name: 'Rack 1 · 1-01' }) });
    expect(await list.getByRole('listitem').count()).toBe(3);
    expect(await page.locator('.enclosure-sources').textContent()).toMatch(
      /S Austria, BGBl.*S Germany, expert.*S England/,
    );
    await page.getByLabel('Shown first').selectOption('england');
    await list.getByText('England asks for 130 cm long, 86.7 cm wide, 43.4 cm high: enough.').waitFor();
    await lens.getByRole('button', { name: /no length 1/ }).click();
    expect(await page.getByRole('link', { name: 'Rack 1 · 1-02' }).count()).toBe(1);
    await open(`/place/${FIRST_TUB}`);
    const titles = await inside().locator('.verdict-head strong').allTextContents();
    expect(titles).toEqual(['England', 'Austria', 'Germany']);
    expect(await verdict('Austria').isVisible()).toBe(false);
    const [rules] = await reached(app, 'site-rules-set', 1);
    expect(rules?.payload).toEqual({ secondAtDoses: false, enclosureRule: 'england' });
  });
  test('say what is asked for at any length, species and number', async () => {
    await open('/enclosures');
    await page.getByLabel('Species').fill('ground snake');
    await page.getByLabel('Animals together').fill('3');
    await page.getByLabel('Compare at a length').fill('1.4 m');
    await page.getByText('The other rule sets').click();
    // Austria, ground-dwelling snakes: three of 1.4 m, 1.10 m2.
    await page.getByRole('cell', { name: '1.1 m²' }).waitFor();
    await page.getByLabel('Animals together').fill('0');
    await page.getByText('Write how many animals live together').waitFor();
  });
  test('fit a phone', async () => {
    for (const path of ['/enclosures', `/place/${EXHIBIT}`, `/animal/${AMBER.id}`]) {
      await page.goto(`${app.url}${path}`);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBe(390);
    }
  });
});
