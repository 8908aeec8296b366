import { expect } from 'vitest';
import { type Manifest, type ManifestPiece, QUIET_MODULES } from '../../print/index.ts';
import { type ReadCode, type ReadWord, readPage, run, wordsOf } from './paper.ts';

const CORNER_MM = 0.15;
const FEWEST_MODULES = 21;

/** How a page is drawn to be read, and how far off a reader may then take the last dark corner, in mm. */
interface Raster {
  readonly dpi: number;
  readonly lastMm: (piece: ManifestPiece) => number;
}

/** A version 1 symbol has no fourth mark, so a reader works its last corner out from the other three: two pixels. */
const AT_150: Raster = {
  dpi: 150,
  lastMm: ({ modules }) => (modules === FEWEST_MODULES ? (2 * 25.4) / 150 : CORNER_MM),
};

/** Where a printer's dots do not fall on the pixels, a reader guesses the fourth mark too: one module. */
export const OFF_THE_DOTS: Raster = { dpi: 300, lastMm: ({ symbolMm, modules }) => symbolMm[2] / modules };

/** What stands beside the labels of a sheet. */
export const SHEET_MARGIN = /^print at 100 % · this line is 100 mm · \S+ · sheet \d+ of \d+$/;

/** The file is sound, and both cuts of the type are embedded and subset. */
export function expectSoundFile(path: string): void {
  expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
  const types = run('pdffonts', path).trim().split('\n').slice(2);
  expect(types).toHaveLength(2);
  for (const type of types) expect(type).toMatch(/AtkinsonHyperlegible\S+ +CID TrueType +Identity-H +yes yes yes/);
  expect(run('qpdf', '--show-object=trailer', path)).toContain('/ID');
}

/** Every code of every page reads, from a raster of 150 dpi if no other is said, as the manifest says and where it says. */
export async function expectCodesWhereTheyStand(path: string, manifest: Manifest, raster = AT_150): Promise<void> {
  for (const page of pagesOf(manifest)) {
    const codes = await readPage(path, page, raster.dpi);
    expect(codes).toHaveLength(onPage(manifest, page).length);
    for (const piece of onPage(manifest, page)) {
      const code = [...codes].sort((a, b) => offCorners(a, piece)[0] - offCorners(b, piece)[0])[0];
      expect(code?.text).toBe(piece.payload);
      const off = code ? offCorners(code, piece) : [];
      const last = raster.lastMm(piece);
      for (const [at, mm] of off.entries()) expect(mm).toBeLessThan(at === 2 ? last : CORNER_MM);
    }
  }
}

/** Every word of the manifest stands inside its card and outside the quiet zone; beside the cards stands `margin` only. */
export function expectWordsWhereTheyBelong(path: string, manifest: Manifest, margin: RegExp): void {
  for (const page of pagesOf(manifest)) {
    const words = wordsOf(path, page);
    const rest = new Set(words);
    for (const piece of onPage(manifest, page)) {
      const inside = words.filter((word) => isWithin(word, piece.boxMm));
      for (const word of inside) rest.delete(word);
      const wanted = piece.lines.flatMap((line) => line.split(' '));
      expect(inside.map(({ text }) => text).sort()).toEqual(wanted.sort());
      expect(inside.filter((word) => touchesCode(word, piece))).toEqual([]);
    }
    expect([...rest].map(({ text }) => text).join(' ')).toMatch(margin);
  }
}

function pagesOf(manifest: Manifest): readonly number[] {
  return manifest.pages.map((_size, at) => at + 1);
}

function onPage(manifest: Manifest, page: number): readonly ManifestPiece[] {
  return manifest.pieces.filter((piece) => piece.page === page);
}

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
  const quiet = (width / piece.modules) * QUIET_MODULES;
  const inkTop = top + (bottom - top) * 0.2;
  return right > x - quiet && left < x + width + quiet && bottom > y - quiet && inkTop < y + height + quiet;
}
