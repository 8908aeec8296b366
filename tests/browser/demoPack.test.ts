import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COUNTRY_PROFILES, foldFacility, PACK_FIELDS, sayId } from '../../src/core/index.ts';
import { readLog } from '../../src/store/index.ts';
import { ROOT } from '../cli/tubwright.ts';
import { REX } from '../core/log.ts';
import { readCsv } from '../core/readCsv.ts';
import { launchChromium } from '../tools/browser.ts';
import { type RunningApp, startApp } from './site.ts';

const { events } = readLog(readFileSync(join(ROOT, 'demo-data', 'site.ndjson'), 'utf8'));
/** A ball python that lives in the demo house, with a name and a year of weights. */
const TOLD = [...foldFacility(events).animals.values()].find(
  ({ left, name, species, weights }) =>
    left === null && name !== null && species === 'Python regius' && weights.length > 12,
);
const NAME = TOLD?.name ?? 'nobody';
const ID = TOLD?.id ?? REX;
const OPENS_MS = 120_000;
/** All profiles are checked on paper in tests/print; here it is that the app makes them. */
const HERE: readonly string[] = ['england', 'north-carolina'];

let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  app = await startApp();
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  await page.goto(`${app.url}/books`);
  await pack().waitFor({ timeout: OPENS_MS });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const pack = () => page.getByRole('region', { name: 'Inspector’s pack' });
const plain = (text: string): string => text.replace(/\s+/g, '');

async function pathOf(link: string): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    pack().getByRole('link', { name: link }).click(),
  ]);
  return download.path();
}

describe('the pack of an animal of the demo house', () => {
  test('is made on the device, holds every field that the profile names, and writes nothing into the log', async () => {
    const before = await headOf();
    expect(before).toBeGreaterThan(1000);
    await pack().getByLabel('One animal').check();
    await pack().getByRole('searchbox').fill(sayId(ID));
    await pack().getByRole('button', { name: NAME }).click();
    for (const { id, asked } of COUNTRY_PROFILES.filter((one) => HERE.includes(one.id))) {
      await pack().getByLabel('Profile').selectOption(id);
      await pack().getByRole('button', { name: 'Make the pack' }).click();
      await pack()
        .getByText(/^1 animal on \d+ pages, and 11 tables\.$/)
        .waitFor({ timeout: OPENS_MS });
      await pack()
        .getByText(/^([\d,]+) of \1 lines read back\.$/)
        .waitFor({ timeout: OPENS_MS });
      const text = plain(execFileSync('pdftotext', ['-layout', await pathOf('Save the PDF'), '-']).toString());
      const [heads = [], row = []] = readCsv(readFileSync(await pathOf('animals.csv'), 'utf8'));
      expect(heads.slice(0, PACK_FIELDS.length)).toEqual(PACK_FIELDS.map((field) => field.replaceAll('-', '_')));
      for (const { asks, fields } of asked) {
        expect(text, asks).toContain(plain(asks));
        for (const field of fields) {
          const cell = row[heads.indexOf(field.replaceAll('-', '_'))] ?? '';
          expect(cell, field).not.toBe('');
          // Days stand in words on paper and in figures in the table.
          if (!/^\d{4}-\d\d-\d\d$/.test(cell)) expect(text, field).toContain(plain(cell));
        }
      }
    }
    expect(await headOf()).toBe(before);
  });

  test('has its tables three years back, each row with its animal', async () => {
    const feeds = readCsv(readFileSync(await pathOf('feeds.csv'), 'utf8'));
    expect(feeds.length).toBeGreaterThan(20);
    for (const [animal, called, day = ''] of feeds.slice(1)) {
      expect([animal, called]).toEqual([ID, NAME]);
      expect(day >= '2023-11-25' && day <= '2026-11-25').toBe(true);
    }
  });
});

/** How many events the hub has: a pack may not add to them. */
async function headOf(): Promise<number> {
  const answer = await fetch(`${app.url}/pull?after=0&limit=1`);
  return ((await answer.json()) as { readonly head?: number }).head ?? -1;
}
