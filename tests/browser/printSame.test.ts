import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Manifest, OFFICE_600, type PieceToPrint, PRINTERS, printPieces, stockById } from '../../print/index.ts';
import { loadFonts, sha256 } from '../../print/node/index.ts';
import { askedLabels, askedTags, TAG_SHEETS } from '../../src/core/index.ts';
import { ROOT } from '../cli/tubwright.ts';
import { added, day, eventId, id, type Line, RACK, site, TUB, weighed } from '../core/log.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from '../print/cards.ts';
import { rastersOf, withFile } from '../print/paper.ts';
import { launchChromium } from '../tools/browser.ts';
import { type RunningApp, startApp } from './site.ts';

const ON = '2026-03-12';
const MUG = id(40);
const PAPER = {
  drug: 'as the vet wrote it',
  prescriber: 'Dr Linnet Sallowfield',
  route: 'by injection',
  everyHours: 48,
  count: 6,
  amount: { by: 'mass', dose: { mgPerKg: 5 }, strength: { mgPerMl: 10 } },
  startsOn: '2026-03-09',
  validUntil: '2026-06-01',
} as const;
const LINES: readonly Line[] = [
  ['2025-01-01', 'site-named', { name: 'Reed House', timeZone: 'Etc/UTC', currency: 'EUR' }, { subjects: [] }],
  ['2025-01-01', 'place-added', { placeKind: 'rack', name: 'Long Rack', walk: 1 }, { subjects: [RACK] }],
  ['2025-01-01', 'place-added', { placeKind: 'tub', name: 'L-01', walk: 1, parent: RACK }, { subjects: [TUB] }],
  added({ name: 'Ångström Żubrówka', number: '21-007', sex: 'female' }),
  weighed('2026-03-08', 1065),
  ['2026-03-09', 'prescription-written', PAPER, { n: 50 }],
  ['2026-03-09', 'dose-given', { prescription: eventId(50), ml: 0.53 }],
  ['2026-03-01', 'ware-set', { name: 'Mug', priceMinor: 900 }, { subjects: [MUG] }],
  ['2026-03-02', 'item-stocked', { count: 3 }, { subjects: [MUG] }],
];
const HOUSE = site(...LINES);
const labels = (sheet: 'place' | 'treatment'): readonly PieceToPrint[] =>
  askedLabels(HOUSE, sheet, null, day(ON)).labels.map((label) => ({ label }));
const CARDS: readonly PieceToPrint[] = Array.from({ length: 24 }, (_none, n) => ({
  card: { content: cardOf(n, [SPARSE, USUAL, CROWDED][n % 3] ?? USUAL, FLAGS.slice(0, n % 4)) },
}));
const TAGS: readonly PieceToPrint[] = TAG_SHEETS.flatMap((sheet) =>
  askedTags(HOUSE, sheet, null).labels.map((label) => ({ label })),
);

/** What is printed on what, with which printer. */
const JOBS = [
  ['cards', 'a4-85x54', OFFICE_600, CARDS],
  ['cards one by one', 'card-85x54', PRINTERS[1], CARDS.slice(0, 6)],
  ['place labels', 'a4-63.5x38.1', OFFICE_600, labels('place')],
  ['tags', 'a4-85x54', OFFICE_600, TAGS],
  ['a treatment card', 'a4-105x148', OFFICE_600, labels('treatment')],
] as const;

const folder = mkdtempSync(join(tmpdir(), 'tubwright-same-'));
let app: RunningApp;
let browser: Browser;
let page: Page;
let worker = '';
const fonts = await loadFonts();

beforeAll(async () => {
  const built = JSON.parse(readFileSync(join(ROOT, 'dist', 'app', 'offline.json'), 'utf8')) as { files: string[] };
  worker = `/${built.files.find((file) => /(^|\/)printWorker-[\w-]+\.js$/.test(file)) ?? ''}`;
  app = await startApp(['--data', join(folder, 'data')]);
  browser = await launchChromium();
  page = await browser.newPage();
  await page.goto(`${app.url}/print`);
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await app?.stop();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

interface Made {
  readonly pdf: Uint8Array;
  readonly manifest: Manifest;
}

/** The same order that the Print screen gives, to the app's own worker in the browser. */
async function inChromium(order: object): Promise<Made> {
  const base64 = (bytes: Uint8Array) => Buffer.from(bytes).toString('base64');
  const cuts = { regular: base64(fonts.regular), bold: base64(fonts.bold) };
  const said = await page.evaluate(
    async ([url, asked, { regular, bold }]) => {
      const bytesOf = (text: string) => Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
      const made = new Worker(url, { type: 'module' });
      const answer = await new Promise<{ kind: string; pdf: Uint8Array; manifest: unknown }>((resolve, reject) => {
        made.onmessage = ({ data }) => resolve(data);
        made.onerror = (event) => reject(new Error(event.message));
        made.postMessage({ ask: asked, fonts: { regular: bytesOf(regular), bold: bytesOf(bold) } });
      });
      made.terminate();
      if (answer.kind !== 'printed') throw new Error(JSON.stringify(answer));
      let text = '';
      for (const byte of answer.pdf) text += String.fromCharCode(byte);
      return { pdf: btoa(text), manifest: answer.manifest };
    },
    [worker, order, cuts] as const,
  );
  return { pdf: new Uint8Array(Buffer.from(said.pdf, 'base64')), manifest: said.manifest as Manifest };
}

describe.each(JOBS)('%s on %s', (_what, stockId, printer, pieces) => {
  const stock = stockById(stockId);
  if (!stock.ok) throw new RangeError(stockId);
  const more = { pieces, printer, printedOn: onDay(ON), host: 'tubs.example' };
  const both = async (compress: boolean): Promise<readonly [node: Made, chromium: Made]> => {
    const here = await printPieces({ ...more, stock: stock.value, fonts, compress });
    return [here, await inChromium({ ...more, stock: stock.value, compress })];
  };

  test('are the same bytes in Chromium and in Node before they are packed', async () => {
    const [node, chromium] = await both(false);
    expect(node.manifest.pieces.length).toBeGreaterThan(0);
    expect(Buffer.compare(node.pdf, chromium.pdf)).toBe(0);
    expect(chromium.manifest).toEqual(node.manifest);
  });

  test('are the same pixels once they are packed', async () => {
    const [node, chromium] = await both(true);
    const [ours, theirs] = await Promise.all(
      [node, chromium].map(({ pdf }) => withFile(pdf, (path) => rastersOf(path, 150))),
    );
    expect(theirs?.length).toBe(node.manifest.pages.length);
    for (const [at, raster] of (ours ?? []).entries()) {
      const other = theirs?.[at];
      expect([other?.width, other?.height]).toEqual([raster.width, raster.height]);
      expect(Buffer.compare(raster.grey, other?.grey ?? new Uint8Array())).toBe(0);
      expect(raster.grey.some((grey) => grey < 128)).toBe(true);
    }
    const { sha256: _ours, ...said } = node.manifest;
    const { sha256: seal, ...saidThere } = chromium.manifest;
    expect(saidThere).toEqual(said);
    expect(seal).toBe(Buffer.from(await sha256(chromium.pdf)).toString('hex'));
  });
});
