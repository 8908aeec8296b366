import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LogEvent } from '../../src/core/index.ts';
import { writeLog } from '../../src/store/index.ts';
import { eventsOf, idOf } from '../cli/sampleSite.ts';
import { tubwright } from '../cli/tubwright.ts';
import { launchChromium } from '../tools/browser.ts';
import { onTheHub } from './hub.ts';
import { scannerTypes } from './keys.ts';
import { type RunningApp, startApp } from './site.ts';
import { ago } from './smallSite.ts';

const TUBS = 60;
const [ROOM, RACK] = [idOf(1), idOf(2)];
const tub = (at: number) => idOf(100 + at);
const animal = (at: number) => idOf(200 + at);
const REFUSED = [7, 23, 58].map(animal);

/** A rack of 60 tubs, all of whose animals are due. */
function rackOfSixty(): LogEvent[] {
  const each = Array.from({ length: TUBS }, (_, at) => at);
  return eventsOf([
    [ago(90), 'site-named', [], { name: 'Sixty House', timeZone: 'Etc/UTC', host: 'tubs.example' }],
    [ago(90), 'place-added', [ROOM], { placeKind: 'room', name: 'Room 1', walk: 1 }],
    [ago(90), 'place-added', [RACK], { placeKind: 'rack', name: 'Rack 1', parent: ROOM, walk: 1 }],
    ...each.map(
      (at) =>
        [ago(90), 'place-added', [tub(at)], { placeKind: 'tub', name: `1-${at}`, parent: RACK, walk: at }] as const,
    ),
    ...each.map(
      (at) =>
        [
          ago(80),
          'animal-added',
          [animal(at)],
          { species: 'Python regius', name: `Tuft ${at}`, sex: 'female' },
        ] as const,
    ),
    ...each.map((at) => [ago(79), 'animal-moved', [animal(at)], { to: tub(at) }] as const),
    ...each.map((at) => [ago(10), 'animal-weighed', [animal(at)], { weightG: 800 + at }] as const),
    ...each.map(
      (at) =>
        [ago(9), 'prey-offered', [animal(at)], { prey: 'rat-small', count: 1, totalG: 80, outcome: 'taken' }] as const,
    ),
  ]);
}

let folder: string;
let app: RunningApp;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tubwright-sixty-'));
  const [file, kept] = [join(folder, 'sixty.ndjson'), join(folder, 'data')];
  writeFileSync(file, writeLog(rackOfSixty()));
  const taken = await tubwright(['import', file, '--into', kept]);
  if (taken.code !== 0) throw new Error(taken.err);
  app = await startApp(['--data', kept]);
  browser = await launchChromium();
  page = await browser.newPage({ viewport: { width: 390, height: 844 } });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

test('a rack of 60 with 3 refusals is fed with 1 scan, 1 touch and 3 scans', async () => {
  await page.goto(`${app.url}/`);
  await page.getByText('Hold a card in the frame').waitFor();
  await scannerTypes(page, RACK);
  await page.getByRole('button', { name: /^All as planned/ }).click();
  const round = page.getByRole('region', { name: 'Round of Rack 1' });
  await round.getByText('fed 60, refused 0', { exact: false }).waitFor();
  for (const [at, id] of REFUSED.entries()) {
    await scannerTypes(page, id);
    await round.getByText(`fed ${TUBS - at - 1}, refused ${at + 1}`, { exact: false }).waitFor();
  }

  const offers = async () =>
    (await onTheHub(app)).filter((event) => event.kind === 'prey-offered' && event.day === ago(0));
  await expect.poll(async () => (await offers()).length, { timeout: 20_000 }).toBe(TUBS);
  const slips = async () => (await onTheHub(app)).filter((event) => event.kind === 'slip-made');
  await expect
    .poll(async () => (await slips()).flatMap((event) => event.subjects), { timeout: 20_000 })
    .toEqual(REFUSED);

  // Closed in the middle and opened again: the round goes on, and what was scanned wrongly is put right by a second scan.
  await page.reload();
  await round.getByText('fed 57, refused 3', { exact: false }).waitFor();
  await scannerTypes(page, REFUSED[0] ?? '');
  await round.getByText('fed 58, refused 2', { exact: false }).waitFor();
  await round.getByRole('button', { name: 'End the round' }).click();
  const summary = page.getByRole('dialog');
  await summary.getByText('Prey used: 60 × small rat', { exact: false }).waitFor();
  await summary.getByRole('button', { name: 'Confirm and end' }).click();
  await round.waitFor({ state: 'detached' });
  const ended = async () => (await onTheHub(app)).filter((event) => event.kind === 'round-ended');
  await expect
    .poll(async () => (await ended()).map((event) => event.payload), { timeout: 20_000 })
    .toEqual([
      { task: 'feeding', done: 58, refused: 2, skipped: 0, left: 0, used: [{ prey: 'rat-small', count: 60 }] },
    ]);
  await page.goto(`${app.url}/animal/${REFUSED[1]}`);
  await page.getByRole('region', { name: 'Ledger' }).getByText('Refused 1 ×', { exact: false }).first().waitFor();
}, 120_000);

test('nobody is fed twice: the rack has nothing left to feed', async () => {
  await page.goto(`${app.url}/place/${RACK}`);
  await page.getByRole('heading', { name: 'Rack 1' }).waitFor();
  expect(await page.getByRole('button', { name: /^All as planned/ }).count()).toBe(0);
});
