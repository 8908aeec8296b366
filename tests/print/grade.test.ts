import { describe, expect, test } from 'vitest';
import {
  type CodeMark,
  openTypeface,
  PRINTERS,
  type PrinterProfile,
  pdfDrawing,
  symbolParts,
} from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { encodeQr, labelSymbols, type QrSymbol, qrSymbol } from '../../print/qr/symbol.ts';
import { idOf, onDay } from './cards.ts';
import { codewordsOf } from './codewords.ts';
import { RENDERERS } from './dots.ts';
import { type Grades, gradeOf } from './grade.ts';
import { type Raster, withFile } from './paper.ts';

const measure = openTypeface(await loadFonts());
/** Each dot is so many pixels wide when ink spreads, and black and white are what paper makes of them. */
const FINE = 8;
const [INK, PAPER] = [20, 225] as const;

interface Drawn {
  readonly symbol: QrSymbol;
  readonly printer: PrinterProfile;
  readonly moduleMm: number;
  readonly insetModules: number;
  readonly xMm: number;
  readonly yMm: number;
}

/** On the dots, with the profile's inset. */
function snapped(symbol: QrSymbol, printer: PrinterProfile, dots: number): Drawn {
  const moduleMm = dots / printer.dotsPerMm;
  return { symbol, printer, moduleMm, insetModules: printer.insetDots / dots, xMm: 8 * moduleMm, yMm: 8 * moduleMm };
}

/** As a program draws that knows nothing of dots. */
function loose(symbol: QrSymbol, printer: PrinterProfile, dots: number): Drawn {
  const moduleMm = (dots + 0.13) / printer.dotsPerMm;
  return { symbol, printer, moduleMm, insetModules: 0, xMm: 3.03, yMm: 3.06 };
}

/** Prints a code, lets every dark edge spread by a part of a dot, and grades it; the worst of the renderers. */
async function graded(drawn: Drawn, spreadDots: number): Promise<readonly Grades[]> {
  const { symbol, printer, moduleMm, insetModules, xMm, yMm } = drawn;
  const mark: CodeMark = { kind: 'code', xMm, yMm, moduleMm, insetModules, size: symbol.size, ...symbolParts(symbol) };
  const sideMm = Math.ceil((symbol.size * moduleMm + 2 * xMm + 2) * printer.dotsPerMm) / printer.dotsPerMm;
  const drawing = pdfDrawing(measure);
  drawing.beginPage({ widthMm: sideMm, heightMm: sideMm });
  drawing.put([mark], 0, 0);
  drawing.endPage();
  const pdf = await drawing.finish({ title: 'grade', on: onDay('2026-11-25'), content: symbol.payload });
  return withFile(pdf, (path) =>
    Object.values(RENDERERS).map((render) => {
      const [dots] = render(path, printer);
      if (dots === undefined) throw new RangeError('no page');
      const pixels = printer.dotsPerMm * FINE;
      const near = { x: xMm * pixels, y: yMm * pixels, across: moduleMm * pixels, down: moduleMm * pixels };
      return gradeOf(spread(dots, Math.round(spreadDots * FINE)), near, symbol);
    }),
  );
}

/** Dots as squares of pixels, and every dark one larger by so many pixels on each side. */
function spread({ width, height, grey, dotsPerMm }: Raster, by: number): Raster {
  const [across, down] = [width * FINE, height * FINE];
  const fine = new Uint8Array(across * down).fill(PAPER);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if ((grey[y * width + x] ?? 255) >= 128) continue;
      const [from, to] = [Math.max(0, x * FINE - by), Math.min(across, (x + 1) * FINE + by)];
      for (let row = Math.max(0, y * FINE - by); row < Math.min(down, (y + 1) * FINE + by); row++)
        fine.fill(INK, row * across + from, row * across + to);
    }
  return { width: across, height: down, dotsPerMm: dotsPerMm * FINE, grey: fine };
}

const lowest = (grades: readonly Grades[]): number => Math.min(...grades.map(({ overall }) => overall));
const THERMAL = PRINTERS.filter(({ insetDots, dotsPerMm }) => insetDots > 0 && dotsPerMm < 15);
const SYMBOLS = [
  ['1-Q', qrSymbol(idOf(6))],
  ['2-H', labelSymbols(idOf(7))[0] ?? qrSymbol(idOf(7))],
  ['2-M', qrSymbol(`HTTPS://TUBS.EXAMPLE/${idOf(8)}`)],
] as const;
const CASES = THERMAL.flatMap((printer) =>
  SYMBOLS.map(([name, symbol]) => [printer.id, name, printer, symbol] as const),
);

describe.each(CASES)('a code for %s, %s', (_id, _name, printer, symbol) => {
  test('at four dots a module has grade 4.0 when dots spread by a quarter of one at each edge', async () => {
    expect(lowest(await graded(snapped(symbol, printer, 4), 0.25))).toBe(4);
  });
});

describe('a code that is not on the dots', () => {
  // Measured for this project: with that spread a module of three dots goes from 0.0, unsnapped, to 4.0.
  test('fails at three dots a module when dots spread, and one on the dots does not', async () => {
    const printer = PRINTERS[1];
    const symbol = qrSymbol(idOf(6));
    expect(lowest(await graded(loose(symbol, printer, 3), 0.25))).toBe(0);
    expect(lowest(await graded(snapped(symbol, printer, 3), 0.25))).toBe(4);
  });

  test('has less than 4.0 at four dots a module', async () => {
    expect(lowest(await graded(loose(qrSymbol(idOf(6)), PRINTERS[1], 4), 0.25))).toBeLessThan(4);
  });
});

describe('the grader', () => {
  const symbol = encodeQr(idOf(9), 'Q', 1);
  const near = { x: 64, y: 64, across: 16, down: 16 };
  const plain = (
    change: (grey: Uint8Array, width: number) => void = () => {},
    [ink, paper]: readonly [number, number] = [INK, PAPER],
  ): Raster => {
    const width = 16 * (symbol.size + 8);
    const grey = new Uint8Array(width * width).fill(paper);
    for (let y = 0; y < symbol.size * 16; y++)
      for (let x = 0; x < symbol.size * 16; x++)
        if (symbol.modules[(y >> 4) * symbol.size + (x >> 4)] === 1) grey[(y + 64) * width + x + 64] = ink;
    change(grey, width);
    return { width, height: width, dotsPerMm: 16, grey };
  };
  const fill = (grey: Uint8Array, width: number, column: number, row: number, value: number) => {
    for (let y = 0; y < 16; y++)
      grey.fill(value, (64 + row * 16 + y) * width + 64 + column * 16, (64 + row * 16 + y) * width + 80 + column * 16);
  };

  test('gives a perfect code 4 in everything', () => {
    expect(new Set(Object.values(gradeOf(plain(), near, symbol)))).toEqual(new Set([4]));
  });

  test.each([
    ['contrast of 60 %', plain(undefined, [72, 225]), { contrast: 3 }],
    ['contrast of 30 %', plain(undefined, [140, 216.5]), { contrast: 1 }],
    ['a light spot in a finder mark', plain((grey, width) => fill(grey, width, 3, 0, PAPER)), { fixed: 3 }],
    ['four of them', plain((grey, width) => [0, 2, 4, 5].map((at) => fill(grey, width, at, 0, PAPER))), { fixed: 0 }],
    [
      'three codewords lost of the six that can be',
      plain((grey, width) =>
        [
          [20, 20],
          [20, 16],
          [20, 12],
        ].map(([x = 0, y = 0]) => fill(grey, width, x, y, symbol.modules[y * 21 + x] === 1 ? PAPER : INK)),
      ),
      { unused: 3 },
    ],
  ])('%s: the grade that the tables give', (_what, raster, expected) => {
    expect(gradeOf(raster, near, symbol)).toMatchObject(expected);
  });

  test('a code drawn 7 % wider than high loses a grade for it', () => {
    const square = plain();
    const width = Math.round(square.width * 1.07);
    const grey = new Uint8Array(width * square.height);
    for (let y = 0; y < square.height; y++)
      for (let x = 0; x < width; x++) grey[y * width + x] = square.grey[y * square.width + Math.floor(x / 1.07)] ?? 255;
    const wide = gradeOf({ ...square, width, grey }, { ...near, x: 64 * 1.07, across: 16 * 1.07 }, symbol);
    expect([wide.axial, wide.unused]).toEqual([3, 4]);
  });

  // Source: ISO/IEC 18004, Annex I, as in qr.test.ts: the placement that the grader counts codewords by.
  test('counts 44 codewords in a version 2 symbol', () => {
    expect(codewordsOf(encodeQr(idOf(9), 'H', 2))).toHaveLength(44);
  });
});
