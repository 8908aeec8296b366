import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { rulerRoom } from '../../print/drawing/ruler.ts';
import {
  labelsPerPage,
  OFFICE_600,
  PRINTERS,
  type PrinterProfile,
  printPieces,
  STOCKS,
  type Stock,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { onDay } from './cards.ts';
import { EVERYTHING } from './everything.ts';
import { withFile } from './paper.ts';
import {
  type DrawnPage,
  drawnPages,
  expectBarsWhereTheyStand,
  expectCodesWhereTheyStand,
  expectSoundFile,
  expectWordsWhereTheyBelong,
  readingOf,
  SHEET_MARGIN,
} from './readBack.ts';

const fonts = await loadFonts();
const THERMAL = PRINTERS.filter(({ insetDots }) => insetDots > 0);
const PIECES = EVERYTHING.flatMap(([, pieces]) => pieces);
const PRINTED = new Set<string>();

interface Run {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  readonly host: string | undefined;
}

/** Every stock as an office printer has it, and single labels as thermal printers do, with and without an address. */
const RUNS: readonly Run[] = [
  ...STOCKS.map((stock, at) => ({ stock, printer: OFFICE_600, host: at % 2 === 0 ? 'tubs.example' : undefined })),
  ...STOCKS.filter((stock) => labelsPerPage(stock) === 1).map((stock, at) => ({
    stock,
    printer: THERMAL[at % THERMAL.length] ?? OFFICE_600,
    host: at % 2 === 0 ? undefined : 'tubs.example',
  })),
];

describe.each(RUNS.map((run) => [run.stock.id, run.printer.id, run] as const))(
  'everything on %s, printer %s',
  async (_stock, _printer, { stock, printer, host }) => {
    const job = { pieces: PIECES, stock, printer, host, printedOn: onDay('2026-05-10'), fonts };
    const { pdf, manifest } = await printPieces(job);
    for (const { kind } of manifest.pieces) PRINTED.add(kind);

    test('is printed, or left with its reason', () => {
      for (const piece of PIECES) {
        const { id } = 'card' in piece ? piece.card.content : piece.label;
        const [printed, left] = [manifest.pieces, manifest.left].map(
          (all) => all.filter((one) => one.id === id).length,
        );
        expect([id, (printed ?? 0) + (left ?? 0) > 0]).toEqual([id, true]);
      }
      for (const { why } of manifest.left) expect(why).toMatch(/^The .+ does not fit on .+\. Take a larger stock/);
      for (const { why } of manifest.warnings ?? []) expect(why).toMatch(/^The .+ has no room for its bar code on /);
    });

    test('is a sound file that brings its own type', async () => {
      if (manifest.pieces.length > 0) await withFile(pdf, expectSoundFile);
    });

    let pages: readonly DrawnPage[];
    beforeAll(async () => {
      pages = await withFile(pdf, (path) => drawnPages(path, manifest));
    });
    // A page takes two megabytes, and all that follow share this process.
    afterAll(() => {
      pages = [];
    });

    test('has codes that read as the manifest says, where it says', () => {
      expectCodesWhereTheyStand(pages, manifest, readingOf(printer));
    });

    test('has bar codes that read as the manifest says, where it says, on all that has room for one', () => {
      const barred = PIECES.flatMap((piece) =>
        'label' in piece && piece.label.bar !== undefined ? [piece.label.id] : [],
      );
      const of = (all: readonly { readonly id: string }[]) => all.filter(({ id }) => barred.includes(id)).length;
      const bars = expectBarsWhereTheyStand(pages, manifest, readingOf(printer));
      expect(bars + (manifest.warnings ?? []).length).toBe(of(manifest.pieces));
    });

    test('has its words on their labels and outside the quiet zones, and none is missing', async () => {
      const margin = rulerRoom(stock) === null ? /^$/ : SHEET_MARGIN;
      await withFile(pdf, (path) => expectWordsWhereTheyBelong(path, manifest, margin));
    });
  },
);

test('every kind is on one stock at least', () => {
  const kinds = new Set(PIECES.map((piece) => ('card' in piece ? 'card' : piece.label.kind)));
  expect([...PRINTED].sort()).toEqual([...kinds].sort());
});
