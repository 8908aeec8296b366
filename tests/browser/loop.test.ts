import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DEMO_TODAY } from '../../demo-data/index.ts';
import type { Manifest } from '../../print/index.ts';
import { tubwright } from '../cli/tubwright.ts';
import { launchChromium } from '../tools/browser.ts';
import { filmCard, readWithOtherDecoder, textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';

/** The animal whose card goes all the way round: due today, weighed lately, on no hold. */
interface Chosen {
  readonly id: string;
  readonly name: string;
}

const SITE = 'demo-data/site.ndjson';
const folder = mkdtempSync(join(tmpdir(), 'tubwright-loop-'));
let app: RunningApp;
let browser: Browser;
let chosen: Chosen;
let manifest: Manifest;

beforeAll(async () => {
  chosen = await animalDueToday();
  const paper = ['--stock', 'a4-85x54', '--out', join(folder, 'cards.pdf'), '--manifest', join(folder, 'cards.json')];
  const printed = await tubwright(['cards', '--site', SITE, '--on', DEMO_TODAY, '--only', chosen.id, ...paper]);
  expect(printed.err).toBe('');
  manifest = JSON.parse(readFileSync(join(folder, 'cards.json'), 'utf8')) as Manifest;
  const video = filmCard(join(folder, 'cards.pdf'), manifest.pieces[0]?.boxMm ?? [], folder);
  app = await startApp();
  browser = await launchChromium([
    '--use-fake-ui-for-media-stream',
    '--use-fake-device-for-media-stream',
    `--use-file-for-fake-video-capture=${video}`,
  ]);
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true });
});

test('a card is scanned, the feed logged, and the card printed again with its new due date', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(String(error)));
  await page.goto(`${app.url}/`);
  await page.waitForURL(`**/animal/${chosen.id}`, { timeout: 90_000 });
  await page.getByRole('heading', { name: chosen.name }).first().waitFor();
  const before = await dueLine(page);
  expect(textOf(join(folder, 'cards.pdf'))).toContain(before);
  await page.getByRole('button', { name: /^Feed as planned/ }).click();
  await expect.poll(() => dueLine(page), { timeout: 15_000 }).not.toBe(before);
  const after = await dueLine(page);
  expect(after).not.toBe(before);

  // The network goes and the page is loaded again: what was confirmed is still there.
  await page.reload();
  await page.getByRole('heading', { name: chosen.name }).first().waitFor();
  expect(await dueLine(page)).toBe(after);

  await page
    .getByRole('link', { name: /reprint/i })
    .first()
    .click();
  await page.getByRole('button', { name: /^Make the PDF of 1 card/ }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const reprinted = join(folder, 'again.pdf');
  await (await download).saveAs(reprinted);
  expect(readWithOtherDecoder(reprinted)).toBe(manifest.pieces[0]?.payload);
  expect(readWithOtherDecoder(reprinted)).toContain(chosen.id);
  expect(textOf(reprinted)).toContain(after);
  expect(textOf(reprinted)).not.toContain(before);
  expect(faults).toEqual([]);
  await context.close();
}, 240_000);

/** The words of the card's due line, as they stand on screen and on paper. */
async function dueLine(page: Page): Promise<string> {
  // On screen a date never breaks over two lines, so its spaces are of another kind there.
  const text = ((await page.getByRole('article').first().textContent()) ?? '').replace(/\s/g, ' ');
  return /Due (?:\w{3} )?\d{1,2} \w{3} \d{4}/.exec(text)?.[0] ?? `no due line in: ${text}`;
}

async function animalDueToday(): Promise<Chosen> {
  const listed = await tubwright(['due', '--site', SITE, '--on', DEMO_TODAY, '--state', 'due', '--json']);
  const lines = JSON.parse(listed.out) as readonly DueJson[];
  const found = lines.find((line) => line.meal?.warnings.length === 0 && line.next === DEMO_TODAY);
  if (found === undefined) throw new Error('The demo has nobody due today with a fresh weight.');
  return { id: found.id, name: found.animal };
}

interface DueJson {
  readonly id: string;
  readonly animal: string;
  readonly next: string;
  readonly meal: { readonly warnings: readonly string[] } | null;
}
