import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import {
  barBox,
  eanMarks,
  eanModules,
  eanSize,
  type Manifest,
  type ManifestPiece,
  moduleMm,
  OFFICE_600,
  openTypeface,
  type PieceToPrint,
  PRINTERS,
  type PrinterProfile,
  pdfDrawing,
  printPieces,
  qrSymbol,
  type ReadBack,
  readBack,
  STOCKS,
  type Stock,
  snapMm,
  symbolParts,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { drawPage } from '../../print/readBack/interpreter.ts';
import { openOwnPdf } from '../../print/readBack/ownPdf.ts';
import { lookDotsPerMm } from '../../print/readBack/readBack.ts';
import { openDecoder } from '../../scanner/decode/index.ts';
import { askedTags, ownNumber, TAG_SHEETS } from '../../src/core/index.ts';
import { id, type Line, site } from '../core/log.ts';
import { cardOf, onDay, SPARSE, USUAL } from './cards.ts';
import { EVERYTHING } from './everything.ts';
import { rastersOf, withFile } from './paper.ts';

const fonts = await loadFonts();
const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
const decoder = await openDecoder({ binary: new Uint8Array(wasm).buffer });
const look = async (picture: { data: Uint8ClampedArray; width: number; height: number }) =>
  (await decoder.frame(picture, 0, 4)).map(({ text }) => text);

const MUG = id(40);
const SHOP: readonly Line[] = [
  ['2025-01-01', 'site-named', { name: 'Reed House', timeZone: 'Etc/UTC', currency: 'EUR' }, { subjects: [] }],
  ['2026-03-01', 'ware-set', { name: 'Mug', priceMinor: 900 }, { subjects: [MUG] }],
  ['2026-03-02', 'item-stocked', { count: 3 }, { subjects: [MUG] }],
];
const TAGS: readonly PieceToPrint[] = TAG_SHEETS.flatMap((sheet) =>
  askedTags(site(...SHOP), sheet, null).labels.map((label) => ({ label })),
);
const CARDS: readonly PieceToPrint[] = Array.from({ length: 4 }, (_none, n) => ({
  card: { content: cardOf(n, n % 2 === 0 ? USUAL : SPARSE) },
}));

function stockOf(wanted: string): Stock {
  const stock = STOCKS.find((one) => one.id === wanted);
  if (!stock) throw new RangeError(wanted);
  return stock;
}

interface Made {
  readonly pdf: Uint8Array;
  readonly manifest: Manifest;
}

function made(pieces: readonly PieceToPrint[], stock: string, more: object = {}): Promise<Made> {
  return printPieces({ pieces, stock: stockOf(stock), printedOn: onDay('2026-05-10'), fonts, ...more });
}

function read({ pdf, manifest }: Made, printer: PrinterProfile = OFFICE_600): Promise<ReadBack> {
  return readBack(pdf, manifest, printer, { look });
}

/** A page with one code and the bars of a ware beside it. */
async function barTag(printer: PrinterProfile): Promise<Made> {
  const measure = openTypeface(fonts);
  const symbol = qrSymbol(MUG);
  const module = moduleMm(symbol.size, 20, printer);
  const digits = ownNumber(MUG);
  const size = eanSize(eanModules(printer)[0] ?? 0.33, 18, measure);
  const marks = eanMarks(digits, size, { xMm: 30, yMm: 5 }, { printer, measure });
  const [bar] = marks.filter((mark) => mark.kind === 'bar');
  if (!bar) throw new RangeError('no bars');
  const at = snapMm(5, printer);
  const code = { kind: 'code', xMm: at, yMm: at, moduleMm: module, insetModules: 0, size: symbol.size } as const;
  const drawing = pdfDrawing(measure);
  drawing.beginPage({ widthMm: 100, heightMm: 40 });
  drawing.put([{ ...code, ...symbolParts(symbol) }, ...marks], 0, 0);
  drawing.endPage();
  const pdf = await drawing.finish({ title: 'tag', on: onDay('2026-05-10'), content: digits, compress: false });
  const side = module * symbol.size;
  const [whole] = (await made(TAGS.slice(0, 1), 'a4-63.5x38.1')).manifest.pieces;
  if (!whole) throw new RangeError('no tag');
  const piece: ManifestPiece = {
    ...whole,
    payload: MUG,
    page: 1,
    boxMm: [0, 0, 100, 40],
    symbolMm: [at, at, side, side],
    modules: symbol.size,
    bar: { digits, symbology: 'ean-13', boxMm: barBox(bar) },
  };
  return { pdf, manifest: { stock: 'x', pages: [], pieces: [piece], left: [], warnings: [], sha256: '' } };
}

const ALL = [...EVERYTHING.flatMap(([, pieces]) => pieces), ...TAGS];
const RUNS = [
  ...STOCKS.map((stock) => [stock.id, OFFICE_600] as const),
  ...PRINTERS.map((printer) => ['card-85x54', printer] as const),
];

describe('PRINT-READBACK: a made file', () => {
  test.each(RUNS)('on %s is read back whole from its own pages', async (stock, printer) => {
    const one = await made(ALL, stock, { printer, host: 'tubs.example' });
    const { codes, bars, faults } = await read(one, printer);
    expect(faults).toEqual([]);
    expect(codes).toBe(one.manifest.pieces.length);
    expect(bars).toBe(one.manifest.pieces.filter(({ bar }) => bar).length);
  });
  test.each(PRINTERS)('has bar codes among what is read, printer $id', async (printer) => {
    const tag = await barTag(printer);
    expect(await read(tag, printer)).toEqual({ codes: 1, bars: 1, lines: 0, faults: [] });
  });
  test('reads the same packed and plain, turned over, and as a part of its run', async () => {
    for (const more of [
      { compress: false },
      { flip: 'long' },
      { order: 'stack', first: 9 },
      { pages: [2, 2], first: 9 },
    ])
      expect((await read(await made(CARDS, 'a4-85x54', more))).faults).toEqual([]);
  });
  test('is drawn as an independent renderer draws it, where there are shapes', async () => {
    const one = await made(CARDS, 'a4-85x54');
    const ours = drawPage(await openOwnPdf(one.pdf).page(1), lookDotsPerMm(OFFICE_600));
    const [theirs] = await withFile(one.pdf, (path) => rastersOf(path, 150));
    expect([ours.width, ours.height]).toEqual([theirs?.width, theirs?.height]);
    let [off, seen] = [0, 0];
    for (const { symbolMm } of one.manifest.pieces) {
      const [x, y, side] = symbolMm.map((mm) => Math.round(mm * ours.dotsPerMm)) as [number, number, number];
      for (let row = y - 4; row < y + side + 4; row++)
        for (let dot = x - 4; dot < x + side + 4; dot++) {
          seen++;
          const at = row * ours.width + dot;
          if (Math.abs((ours.grey[at] ?? 0) - (theirs?.grey[at] ?? 0)) > 96) off++;
        }
    }
    expect(off / seen).toBeLessThan(0.005);
  });
});

/** The file with its text changed, byte for byte as long as before: the places of its objects still hold. */
function spoiled({ pdf, manifest }: Made, change: (text: string) => string): Made {
  const text = Buffer.from(pdf).toString('latin1');
  const changed = change(text);
  if (changed.length !== text.length || changed === text) throw new RangeError('the file was not spoiled');
  return { pdf: new Uint8Array(Buffer.from(changed, 'latin1')), manifest };
}

/** Where each code's own rectangles stand in a plain file. */
function codesIn(text: string): readonly (readonly [from: number, to: number])[] {
  return [...text.matchAll(/q [\d.]+ 0 0 [\d.]+ [\d.]+ [\d.]+ cm\n((?:[\d.]+ [\d.]+ [\d.]+ [\d.]+ re\n)+)f\nQ\n/g)].map(
    ({ index, 0: all }) => [index, index + all.length] as const,
  );
}

const THIRD = 2;

describe('a spoiled page', () => {
  test('names the piece whose code is damaged, and no other', async () => {
    const one = await made(CARDS, 'a4-85x54', { compress: false });
    const bad = spoiled(one, (text) => {
      const [from, to] = codesIn(text)[THIRD] ?? [0, 0];
      // Every other rectangle is lost, as when a page description is cut and mended.
      let count = 0;
      const damaged = text
        .slice(from, to)
        .replace(/[\d.]+ [\d.]+ [\d.]+ [\d.]+ re\n/g, (rect) =>
          count++ % 2 === 0 ? rect : `${' '.repeat(rect.length - 1)}\n`,
        );
      return text.slice(0, from) + damaged + text.slice(to);
    });
    const { codes, faults } = await read(bad);
    expect(codes).toBe(4);
    expect(faults).toEqual([{ piece: one.manifest.pieces[THIRD], what: 'code', read: null }]);
  });
  test('names a piece that words lie over', async () => {
    const one = await made(CARDS, 'a4-85x54', { compress: false });
    const [, second] = one.manifest.pieces;
    if (!second) throw new RangeError();
    const [x, y, side] = second.symbolMm.map((mm) => mm.toFixed(1));
    const bar = `${x} ${y} ${(Number(side) / 2).toFixed(1)} ${side} re f\n`;
    // The ruler's strokes in the margin give the room for the blot.
    const bad = spoiled(one, (text) =>
      text.replace(/(?:[\d.]+ [\d.]+ \.2 1 re f\n)+/, (strokes) => `${bar.trim().padEnd(strokes.length - 1)}\n`),
    );
    expect((await read(bad)).faults).toEqual([{ piece: second, what: 'code', read: null }]);
  });
  test('names a piece that carries another’s code, and says what it reads as', async () => {
    const one = await made(CARDS, 'a4-85x54', { compress: false });
    const [first, second] = one.manifest.pieces;
    if (!first || !second) throw new RangeError();
    const pieces = [{ ...first, payload: second.payload }, second];
    const { faults } = await read({ pdf: one.pdf, manifest: { ...one.manifest, pieces } });
    expect(faults.map((fault) => [fault.what === 'code' && fault.piece.payload, fault.read])).toEqual([
      [second.payload, first.payload],
    ]);
  });
  test('names a tag whose bars are damaged while its code is whole', async () => {
    const tag = await barTag(OFFICE_600);
    const bad = spoiled(tag, (text) =>
      text.replace(/(?:[\d.]+ 0 [\d.]+ [\d.]+ re\n){4}/, (bars) => `${' '.repeat(bars.length - 1)}\n`),
    );
    expect((await read(bad)).faults).toEqual([{ piece: tag.manifest.pieces[0], what: 'bar', read: null }]);
  });
  test('that is cut off is refused in words', async () => {
    const one = await made(CARDS, 'a4-85x54');
    await expect(read({ ...one, pdf: one.pdf.subarray(0, 2000) })).rejects.toThrow(/no table of its objects/);
  });
});
