import { describe, expect, test } from 'vitest';
import {
  drawPieces,
  labelsPerPage,
  layPieces,
  type ManifestPiece,
  type Mark,
  openTypeface,
  PRINTERS,
  type PrinterProfile,
  pdfDrawing,
  STOCKS,
  symbolParts,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { encodeQr, type QrSymbol } from '../../print/qr/symbol.ts';
import { stampSheet } from '../../src/core/index.ts';
import { cardOf, idOf, onDay, SPARSE } from './cards.ts';
import { cairoRaster, growthOf, RENDERERS } from './dots.ts';
import type { Raster } from './paper.ts';
import { withFile } from './paper.ts';

const measure = openTypeface(await loadFonts());
const printedOn = onDay('2026-11-25');
const THERMAL = PRINTERS.filter(({ insetDots }) => insetDots > 0);
const [stamp] = stampSheet();
const PIECES = [
  { card: { content: cardOf(3, SPARSE) } },
  { card: { content: cardOf(8, SPARSE) } },
  ...(stamp === undefined ? [] : [{ label: stamp }]),
];
/** Every class of stock: single cards, all rolls, one sheet. */
const CLASSES = STOCKS.filter((stock) => labelsPerPage(stock) === 1 || stock.id === 'a4-63.5x38.1');

interface Printed {
  readonly pdf: Uint8Array;
  readonly pieces: readonly { readonly piece: ManifestPiece; readonly symbol: QrSymbol }[];
}

/** Every class of stock in one file, with and without the site's address, as a printer's profile has them. */
async function everyClass(printer: PrinterProfile): Promise<Printed> {
  const drawing = pdfDrawing(measure);
  const pieces: Printed['pieces'][number][] = [];
  for (const [at, stock] of CLASSES.entries()) {
    const host = at % 2 === 0 ? 'tubs.example' : undefined;
    const job = { pieces: PIECES, stock, printer, host, printedOn };
    const before = drawing.pages.length;
    const laid = await layPieces(job, measure);
    for (const [n, piece] of drawPieces(laid, job, measure, drawing).entries()) {
      const symbol = laid.faces[n]?.symbol;
      if (symbol !== undefined) pieces.push({ piece: { ...piece, page: piece.page + before }, symbol });
    }
  }
  const pdf = await drawing.finish({ title: 'growth', on: printedOn, content: printer.id });
  return { pdf, pieces };
}

// Limits: measured for this project in Ghostscript 10.00, Poppler 22.12 and MuPDF 1.21.1; a run that is not on the dots
// and has no inset grows by about one dot in three of four renderers.
describe.each(THERMAL.map((printer) => [printer.id, printer] as const))('codes for %s', async (_id, printer) => {
  const { pdf, pieces } = await everyClass(printer);

  test('are of many sizes, at four dots a module or more', () => {
    const sizes = new Set(pieces.map(({ piece }) => `${piece.modules} ${piece.symbolMm[2]}`));
    expect(sizes.size).toBeGreaterThan(4);
    for (const { piece } of pieces)
      expect((piece.symbolMm[2] / piece.modules) * printer.dotsPerMm).toBeGreaterThan(4 - 1e-3);
  });

  test.each(Object.entries(RENDERERS))(
    'come out in %s within 0.05 dot of what they should be',
    async (_name, render) => {
      await withFile(pdf, (path) => {
        const rasters = render(path, printer);
        for (const { piece, symbol } of pieces) {
          const raster = rasters[piece.page - 1];
          if (raster === undefined) throw new RangeError(`no page ${piece.page}`);
          expect(growthOf(raster, piece, symbol).dots).toBeLessThanOrEqual(0.05);
        }
      });
    },
  );
});

describe('a code that is not on the dots', () => {
  const printer = PRINTERS[1];
  test('grows by half a dot or more in one of the renderers, so the measure can fail', async () => {
    const symbol = encodeQr(idOf(4), 'Q', 1);
    const drawing = pdfDrawing(measure);
    const symbolMm = [5.03, 5.06, 0.77 * symbol.size, 0.77 * symbol.size] as const;
    drawing.beginPage({ widthMm: 40, heightMm: 40 });
    drawing.put([{ ...codeMark(symbol, 0.77), xMm: symbolMm[0], yMm: symbolMm[1] }], 0, 0);
    drawing.endPage();
    const pdf = await drawing.finish({ title: 'growth', on: printedOn, content: 'loose' });
    const piece = { symbolMm, modules: symbol.size } as unknown as ManifestPiece;
    await withFile(pdf, (path) => {
      const grown = Object.values(RENDERERS).map((render) => {
        const [raster] = render(path, printer);
        return raster === undefined ? 0 : growthOf(raster, piece, symbol).dots;
      });
      expect(Math.max(...grown)).toBeGreaterThan(0.5);
    });
  });
});

describe('size on paper', () => {
  // Measured for this project: pdftocairo errs by about 0 µm at 600 dots per inch, other renderers by 2 to 60 µm.
  test('25 mm are 25.00 mm and a code is as wide as the manifest says, to a hundredth', async () => {
    const symbol = encodeQr(idOf(4), 'H', 2);
    const drawing = pdfDrawing(measure);
    const line: Mark = { kind: 'rule', xMm: 10.3, yMm: 8, widthMm: 25, heightMm: 2 };
    drawing.beginPage({ widthMm: 60, heightMm: 60 });
    drawing.put([line, { ...codeMark(symbol, 1), xMm: 15.2, yMm: 20.1 }], 0, 0);
    drawing.endPage();
    const pdf = await drawing.finish({ title: 'size', on: printedOn, content: 'size' });
    await withFile(pdf, (path) => {
      const raster = cairoRaster(path, 600);
      expect(Math.abs(inkAlong(raster, 9) - 25)).toBeLessThan(0.01);
      // Across the middle of the upper ring of both upper finder marks: their fourteen modules.
      expect(Math.abs(inkAlong(raster, 20.6) - darkIn(symbol, 0))).toBeLessThan(0.01);
    });
  });
});

function codeMark(symbol: QrSymbol, moduleMm: number) {
  return { kind: 'code', moduleMm, insetModules: 0, size: symbol.size, ...symbolParts(symbol) } as const;
}

/** The length of all ink along one height, in mm, from how grey each pixel is. */
function inkAlong({ grey, width, dotsPerMm }: Raster, yMm: number): number {
  const row = Math.round(yMm * dotsPerMm);
  let dark = 0;
  for (let x = 0; x < width; x++) dark += 1 - (grey[row * width + x] ?? 255) / 255;
  return dark / dotsPerMm;
}

function darkIn({ size, modules }: QrSymbol, row: number): number {
  return modules.subarray(row * size, (row + 1) * size).reduce((sum, module) => sum + module, 0);
}
