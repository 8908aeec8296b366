import { describe, expect, test } from 'vitest';
import { type ManifestPiece, PRINTERS, printCards, QUIET_MODULES, qrSymbol, stockById } from '../../print/index.ts';
import { loadFonts } from '../../print/node/index.ts';
import { CROWDED, cardOf, FLAGS, onDay, SPARSE, USUAL } from './cards.ts';
import { type ReadCode, type ReadWord, readPage, run, withFile, wordsOf } from './paper.ts';

const fonts = await loadFonts();
const DPI = 150;
const CORNER_MM = 0.15;
/** A version 1 symbol has no fourth mark, so a reader works its last corner out from the other three: two pixels. */
const WORKED_OUT_MM = (2 * 25.4) / DPI;

const CARDS = Array.from({ length: 24 }, (_none, n) => {
  const lines = [SPARSE, USUAL, CROWDED, USUAL][n % 4] ?? SPARSE;
  return { content: cardOf(n, lines, FLAGS.slice(0, n % 5)) };
});

const RUNS = [
  ['a4-85x54', 'tubs.example', 'office-600'],
  ['a4-70x52', undefined, 'office-600'],
  ['letter-88.9x50.8', 'tubs.example', 'office-600'],
  ['a4-70x50.8', undefined, 'office-600'],
  ['card-85x54', 'tubs.example', 'thermal-203'],
  ['card-70x52', undefined, 'thermal-300'],
  ['card-85x54', undefined, 'thermal-8mm'],
] as const;

describe.each(RUNS)('cards on %s, host %s, printer %s', async (stockId, host, printerId) => {
  const stock = stockById(stockId);
  if (!stock.ok) throw new RangeError(stock.problem.message);
  const printer = PRINTERS.find(({ id }) => id === printerId);
  // A page each takes its time; every kind of card is among the first eight.
  const cards = stockId.startsWith('card-') ? CARDS.slice(0, 8) : CARDS;
  const job = { cards, stock: stock.value, printer, host, printedOn: onDay('2026-11-25'), fonts };
  const { pdf, manifest } = await printCards(job);
  const pages = manifest.pages.map((_size, at) => at + 1);
  const onPage = (page: number) => manifest.pieces.filter((piece) => piece.page === page);

  test('every card is printed', () => {
    expect(manifest.left).toEqual([]);
    expect(new Set(manifest.pieces.map(({ id }) => id)).size).toBe(cards.length);
  });

  test('the file is sound and brings its own type', async () => {
    await withFile(pdf, (path) => {
      expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
      const types = run('pdffonts', path).trim().split('\n').slice(2);
      expect(types).toHaveLength(2);
      for (const type of types) expect(type).toMatch(/AtkinsonHyperlegible\S+ +CID TrueType +Identity-H +yes yes yes/);
      expect(run('qpdf', '--show-object=trailer', path)).toContain('/ID');
    });
  });

  test('every code reads as the manifest says, where it says', async () => {
    await withFile(pdf, async (path) => {
      for (const page of pages) {
        const codes = await readPage(path, page, DPI);
        expect(codes).toHaveLength(onPage(page).length);
        for (const piece of onPage(page)) {
          const code = [...codes].sort((a, b) => offCorners(a, piece)[0] - offCorners(b, piece)[0])[0];
          expect(code?.text).toBe(piece.payload);
          const off = code ? offCorners(code, piece) : [];
          const last = qrSymbol(piece.payload).version === 1 ? WORKED_OUT_MM : CORNER_MM;
          for (const [at, mm] of off.entries()) expect(mm).toBeLessThan(at === 2 ? last : CORNER_MM);
        }
      }
    });
  });

  test('every word stands on its card and outside the quiet zone, and none is missing', async () => {
    await withFile(pdf, (path) => {
      for (const page of pages) {
        const words = wordsOf(path, page);
        const rest = new Set(words);
        for (const piece of onPage(page)) {
          const inside = words.filter((word) => isWithin(word, piece.boxMm));
          for (const word of inside) rest.delete(word);
          const wanted = piece.lines.flatMap((line) => line.split(' '));
          expect(inside.map(({ text }) => text).sort()).toEqual(wanted.sort());
          expect(inside.filter((word) => touchesCode(word, piece))).toEqual([]);
        }
        const margin = [...rest].map(({ text }) => text).join(' ');
        if (stockId.startsWith('card-')) expect(margin).toBe('');
        else expect(margin).toMatch(/^print at 100 % · this line is 100 mm · \S+ · sheet \d+ of \d+$/);
      }
    });
  });
});

type Offs = readonly [number, number, number, number];

/** How far each corner of a read code lies from where the manifest has it, in mm; the last dark corner is the third. */
function offCorners({ corners }: ReadCode, { symbolMm: [x, y, width, height] }: ManifestPiece): Offs {
  const off = (at: number, left: number, top: number) => {
    const [cx, cy] = corners[at] ?? [99, 99];
    return Math.hypot(cx - left, cy - top);
  };
  return [off(0, x, y), off(1, x + width, y), off(2, x + width, y + height), off(3, x, y + height)];
}

function isWithin({ box }: ReadWord, [x, y, width, height]: ManifestPiece['boxMm']): boolean {
  return box[0] >= x && box[2] <= x + width && box[1] >= y && box[3] <= y + height;
}

/** The reader's box of a word goes up to the type's full ascent; ink starts a fifth of it lower, even over capitals. */
function touchesCode({ box: [left, top, right, bottom] }: ReadWord, piece: ManifestPiece): boolean {
  const [x, y, width, height] = piece.symbolMm;
  const quiet = (width / qrSymbol(piece.payload).size) * QUIET_MODULES;
  const inkTop = top + (bottom - top) * 0.2;
  return right > x - quiet && left < x + width + quiet && bottom > y - quiet && inkTop < y + height + quiet;
}
