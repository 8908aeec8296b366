import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DOSE_CAUTION, type EventKind, PAPER_LETTERS, sayDayShort } from '../../src/core/index.ts';
import { expectSoundFile } from '../print/readBack.ts';
import { launchChromium } from '../tools/browser.ts';
import { reached } from './hub.ts';
import { textOf } from './paper.ts';
import { type RunningApp, startApp } from './site.ts';
import { cardWords, openRecord, TODAY } from './smallSite.ts';
import { IRIS, layTreatmentHouse } from './treatmentSite.ts';

const DAY_MS = 86_400_000;
const VET = 'Dr Linnet Sallowfield';
const folder = mkdtempSync(join(tmpdir(), 'tubwright-paper-'));
let house: Awaited<ReturnType<typeof layTreatmentHouse>>;
let app: RunningApp;
let browser: Browser;
let context: BrowserContext;
let page: Page;
let photo: Buffer;
const faults: string[] = [];

beforeAll(async () => {
  house = await layTreatmentHouse();
  app = await startApp(['--data', house.data]);
  browser = await launchChromium();
  context = await browser.newContext({ viewport: { width: 390, height: 844 }, acceptDownloads: true });
  photo = await photographPaper();
  page = await context.newPage();
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error' && /Content Security Policy/.test(message.text())) faults.push(message.text());
  });
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
}, 90_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  house?.clear();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

const sheet = () => page.getByRole('dialog');
const part = () => page.getByRole('region', { name: 'Treatment', exact: true });
const ledger = () => page.getByRole('region', { name: 'Ledger' });
const words = async (of: { textContent(): Promise<string | null> }) =>
  ((await of.textContent()) ?? '').replace(/\s+/g, ' ').replaceAll('\u2060', '');

/** A vet’s paper as a phone sees it: a page of writing, three thousand dots high, with the grain of a photo. */
async function photographPaper(): Promise<Buffer> {
  const desk = await context.newPage();
  await desk.setViewportSize({ width: 2121, height: 3000 });
  await desk.setContent(`<body style="margin:0;padding:160px;font:44px serif;background:#efe9da">
    <h1>Practice of ${VET}</h1><p>For the animal called Iris: as written below.</p>
    ${'<p>One dose each day by injection, three doses; weigh before the first one. Recheck after the last.</p>'.repeat(16)}
    <p>Signed: L. Sallowfield</p>
    <canvas id="grain" width="2121" height="3000" style="position:fixed;inset:0;opacity:.16"></canvas>`);
  await desk.evaluate(`(() => {
    const context = document.getElementById('grain').getContext('2d');
    const image = context.createImageData(2121, 3000);
    let seed = 7;
    for (let at = 0; at < image.data.length; at += 4) {
      seed = (seed * 1103515245 + 12345) & 0x7fffffff;
      image.data[at] = image.data[at + 1] = image.data[at + 2] = seed >> 16;
      image.data[at + 3] = 255;
    }
    context.putImageData(image, 0, 0);
  })()`);
  const taken = await desk.screenshot({ type: 'jpeg', quality: 92 });
  await desk.close();
  return taken;
}

const events = <K extends EventKind>(kind: K, count: number) => reached(app, kind, count, IRIS.id);

test('a photo that no browser can open, and one of a stamp’s size, are refused in words, and nothing is kept', async () => {
  await openRecord(page, app, IRIS);
  await part().getByRole('link', { name: 'Enter a prescription' }).click();
  const field = page.locator('.photo-field input[type=file]');
  await field.setInputFiles({ name: 'paper.heic', mimeType: 'image/heic', buffer: Buffer.from('no picture at all') });
  await page.getByText('This browser cannot open “paper.heic” as a picture.').waitFor();
  const dot = Buffer.from(
    'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==',
    'base64',
  );
  await field.setInputFiles({ name: 'dot.png', mimeType: 'image/png', buffer: dot });
  await page.getByText('The picture is only 1 × 1 dots, too few to read a paper by.').waitFor();
  expect(await page.locator('.photo-list li').count()).toBe(0);
});

test('a prescription is entered with a photo of its paper, without a network, and both travel to the hub together', async () => {
  await context.setOffline(true);
  await page
    .locator('.photo-field input[type=file]')
    .setInputFiles({ name: 'paper.jpg', mimeType: 'image/jpeg', buffer: photo });
  await page.getByAltText('Side 1 of the paper').waitFor({ timeout: 60_000 });
  await page.getByLabel('Words for photo 1 (may stay empty)').fill('front of the paper');
  const lines: readonly (readonly [label: string, text: string])[] = [
    ['Drug, as the vet wrote it', 'as the vet wrote it'],
    ['Route, as the vet wrote it', 'by injection'],
    ['One dose every', '1'],
    ['First day', TODAY],
    ['Number of doses', '3'],
    ['Name of the vet', VET],
  ];
  for (const [label, text] of lines) await page.getByLabel(label, { exact: true }).fill(text);
  await page.getByText('by body mass, in mg per kg').click();
  await page.getByLabel('Dose, in mg per kg of body mass').fill('5');
  await page.getByLabel('Strength on the bottle').fill('10');
  await page.getByText('mg per mL', { exact: true }).click();
  await page.getByText('days', { exact: true }).click();
  await page.getByText('no, feed as planned').click();
  await page.getByRole('group', { name: 'Syringes at hand' }).getByText('60 mL', { exact: true }).click();
  await page.getByRole('button', { name: 'Write the prescription' }).click();
  await page.waitForURL(`**/animal/${IRIS.id}`);
  await part().getByText('First dose due today').waitFor();
  await context.setOffline(false);
  const [paper] = await events('paper-kept', 1);
  const [written] = await events('prescription-written', 1);
  expect(written?.payload.syringesMl).toEqual([1, 3, 5, 10, 20, 30]);
  expect(paper?.payload).toMatchObject({ of: written?.id, mime: 'image/webp', words: 'front of the paper' });
  const letters = paper?.payload.base64.length ?? 0;
  console.log(`photo of ${photo.length} bytes kept in ${letters} letters`);
  expect(letters).toBeGreaterThan(20_000);
  expect(letters).toBeLessThanOrEqual(PAPER_LETTERS);
});

test('the paper is shown on the record from the log, with its day and words', async () => {
  await page.reload();
  await page
    .getByRole('region', { name: 'Papers' })
    .getByRole('button', { name: /front of the paper/ })
    .click();
  expect(await words(sheet())).toContain(`prescription: as the vet wrote it, ${VET}`);
  const picture = sheet().getByAltText('front of the paper');
  await picture.waitFor();
  const size = await picture.evaluate(
    (one) => (one as unknown as { naturalWidth: number; naturalHeight: number }).naturalHeight,
  );
  expect(size).toBeGreaterThanOrEqual(1000);
  expect(await picture.getAttribute('src')).toMatch(/^blob:/);
  await sheet().getByRole('button', { name: 'Close' }).click();
  expect(faults).toEqual([]);
});

test('its card is printed from the record, and a picture of the card opens the record and a dose is confirmed', async () => {
  await part().getByRole('link', { name: 'Print treatment card' }).click();
  await page.getByRole('heading', { name: 'Print treatment cards' }).waitFor();
  await page.getByRole('button', { name: 'Make the PDF of 1 treatment card' }).click();
  const link = page.getByRole('link', { name: 'Save the PDF' });
  await link.waitFor({ timeout: 60_000 });
  const download = page.waitForEvent('download');
  await link.click();
  const file = join(folder, 'card.pdf');
  await (await download).saveAs(file);
  expectSoundFile(file);
  const said = textOf(file).replace(/\s+/g, ' ');
  for (const piece of [
    'Iris',
    'as the vet wrote it',
    '0.53 mL',
    'exact 0.53 mL',
    '1 mL syringe',
    `weighed`,
    '3 doses',
    VET,
    'given by',
    'Under treatment, not for sale',
  ])
    expect(said).toContain(piece);
  expect(said).toContain(DOSE_CAUTION.slice(0, 60));
  const picture = join(folder, 'card');
  execFileSync('pdftoppm', ['-r', '150', '-png', '-singlefile', file, picture]);
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
  await page.locator('.photo input[type=file]').setInputFiles(`${picture}.png`);
  await page.waitForURL(`**/animal/${IRIS.id}`);
  expect(await cardWords(page)).toContain('Under treatment, not for sale');
  await part().getByRole('button', { name: 'Give dose' }).click();
  await sheet().getByRole('button', { name: '0.53 mL drawn up and checked', exact: true }).click();
  await sheet().getByText('Nothing is written yet.').waitFor();
  await page.waitForTimeout(500);
  await sheet()
    .getByRole('button', { name: /Once more/ })
    .click();
  await ledger().getByText('Dose given: 0.53 mL').waitFor();
  await events('dose-given', 1);
  await part().getByText('1 of 3 given, 2 left').waitFor();
  await part().getByText('The last dose of the course is due').waitFor();
});

test('a dose that is written down later names its hour, and one too near to another is asked about', async () => {
  await part().getByRole('button', { name: 'Give dose' }).click();
  await sheet().getByText('Lot, note, second person, another time or day').click();
  // The site’s clock is UTC; the minute has begun before the dose that was just given.
  await sheet().getByLabel('Given at').fill(new Date().toISOString().slice(11, 16));
  await sheet().getByRole('button', { name: '0.53 mL drawn up and checked', exact: true }).click();
  await page.waitForTimeout(500);
  await sheet()
    .getByRole('button', { name: /Once more/ })
    .click();
  await sheet()
    .getByText(/^(Another dose stands|It is too early)/)
    .waitFor();
  await page.getByRole('button', { name: 'No, write nothing' }).click();
  await events('dose-given', 1);
});

test('the day after the next one a missed dose is shown, on the record and among the treatments of the day', async () => {
  const later = await context.newPage();
  await later.clock.install({ time: Date.now() + 1.9 * DAY_MS });
  page = later;
  await openRecord(page, app, IRIS);
  await part().getByText('1 dose was missed. Never give two at once to catch up; ask the vet how to go on.').waitFor();
  await page.goto(`${app.url}/treatments`);
  await page.getByRole('heading', { name: 'Treatments today' }).waitFor();
  const line = page.getByRole('region', { name: 'In walking order' }).getByRole('listitem').filter({ hasText: 'Iris' });
  await line.getByText('Next dose was due').waitFor();
  expect(await words(page.getByRole('region', { name: /^Course ends and rechecks/ }))).toMatch(
    /Iris.*the last dose is due; 1 of 3 given, 2 left/,
  );
});

test('the vet stops it by name and with a reason, the flag goes, and how it went is written beside it', async () => {
  await openRecord(page, app, IRIS);
  await part().getByRole('button', { name: 'Stopped by the vet' }).click();
  await sheet().getByLabel('Name of the vet').fill(VET);
  await page.getByRole('button', { name: 'Write stopped' }).click();
  await sheet().getByText('Nothing says why the vet stopped it.').waitFor();
  await sheet().getByLabel('Why the vet stopped it').fill('not taken well');
  await page.getByRole('button', { name: 'Write stopped' }).click();
  await ledger().getByText(`Prescription stopped by ${VET} — not taken well`).waitFor();
  expect(await cardWords(page)).not.toContain('Under treatment');
  const [stopped] = await events('prescription-stopped', 1);
  expect(stopped?.payload).toMatchObject({ by: VET, why: 'not taken well' });
  await part().getByText('Earlier prescriptions, 1').click();
  expect(await words(part())).toMatch(
    new RegExp(`Stopped by ${VET} on ${sayDayShort(stopped?.day ?? TODAY)}: not taken well`),
  );
  await part().getByRole('button', { name: 'Write how it went' }).click();
  await sheet().getByLabel('How it went').fill('eats again');
  await page.getByRole('button', { name: 'Write it' }).click();
  await ledger().getByText('Outcome of the treatment: eats again').waitFor();
  expect(await events('outcome-noted', 1)).toMatchObject([{ payload: { words: 'eats again' } }]);
});
