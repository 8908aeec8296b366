import { expect } from 'vitest';
import {
  type Manifest,
  type ManifestPiece,
  OFFICE_600,
  type PrinterProfile,
  QUIET_MODULES,
} from '../../print/index.ts';
import { boxOfBars, boxOfInk, type InkBox } from './ink.ts';
import { type Raster, type ReadCode, type ReadWord, rastersOf, readRaster, run, wordsByPage } from './paper.ts';

const DPI = 150;
/** Where the dark square of a code ends is measured on the picture itself: a quarter of its pixel. */
const EDGE_MM = 25.4 / DPI / 4;
/** How far off a reader may take a corner with a mark in it: cards and sheets, where modules fall on its pixels, and others. */
const CORNER_MM = 0.15;
const ROUGH_MM = 0.25;

/**
 * Where bars end is measured on the picture as well. Seen on 206 bar codes, all stocks and printers that have any: 0.042 mm at most,
 * which is one of the four steps in which Poppler softens an edge, and a rounding of the manifest more.
 */
const BAR_EDGE_MM = EDGE_MM + 0.002;
/**
 * Where a reader takes them to end, as a check that it read these bars and no others. Seen with zxing-wasm on the same: 0.015 mm at
 * the left; at the right 0.14 to 0.26 mm short, for it gives its last pixel; never more than 0.13 mm above, nor below at all.
 */
const BAR_READ_MM = 0.3;

/** How closely a reader finds the corners that have marks, and what is taken off a dark edge where dots grow. */
interface Reading {
  readonly cornerMm: number;
  readonly insetMm: number;
}

/** As this printer is read: where its dots do not fall on the reader's pixels, corners are found to a pixel and a half. */
export function readingOf({ insetDots, dotsPerMm }: PrinterProfile): Reading {
  return { cornerMm: insetDots > 0 ? ROUGH_MM : CORNER_MM, insetMm: insetDots / dotsPerMm };
}

/** What stands beside the labels of a sheet. */
export const SHEET_MARGIN = /^print at 100 % · this line is 100 mm · \S+ · (back of )?sheet \d+ of \d+$/;

/** The file is sound, and both cuts of the type are embedded and subset. */
export function expectSoundFile(path: string): void {
  expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
  const types = run('pdffonts', path).trim().split('\n').slice(2);
  expect(types).toHaveLength(2);
  for (const type of types) expect(type).toMatch(/AtkinsonHyperlegible\S+ +CID TrueType +Identity-H +yes yes yes/);
  expect(run('qpdf', '--show-object=trailer', path)).toContain('/ID');
}

/** A page as it is drawn at 150 dots per inch, and what a program that did not draw it reads there. */
export interface DrawnPage {
  readonly raster: Raster;
  readonly codes: readonly ReadCode[];
  readonly bars: readonly ReadCode[];
}

/** Every page of a file, drawn once and read once for both kinds of codes; a page without a piece on it is not read. */
export async function drawnPages(path: string, manifest: Manifest): Promise<readonly DrawnPage[]> {
  const pages: DrawnPage[] = [];
  for (const [at, raster] of rastersOf(path, DPI).entries()) {
    const read = onPage(manifest, at + 1).length === 0 ? [] : await readRaster(raster, ['QRCode', 'EAN13']);
    const of = (kind: ReadCode['kind']) => read.filter((code) => code.kind === kind);
    pages.push({ raster, codes: of('QRCode'), bars: of('EAN13') });
  }
  return pages;
}

/**
 * Every code of every page reads from a raster of 150 dots per inch as the manifest says, and its dark square lies where
 * the manifest says. The last corner has no mark, and a reader works it out up to a module off; so all four edges of the
 * square are measured on the raster, which gives all four corners.
 */
export function expectCodesWhereTheyStand(
  pages: readonly DrawnPage[],
  manifest: Manifest,
  { cornerMm, insetMm }: Reading = readingOf(OFFICE_600),
): void {
  expect(pages).toHaveLength(manifest.pages.length);
  for (const [at, { raster, codes }] of pages.entries()) {
    const pieces = onPage(manifest, at + 1);
    expect(codes).toHaveLength(pieces.length);
    for (const piece of pieces) {
      const code = [...codes].sort((a, b) => offCorners(a, piece)[0] - offCorners(b, piece)[0])[0];
      expect(code?.text).toBe(piece.payload);
      const [topLeft, topRight, last, bottomLeft] = code ? offCorners(code, piece) : [9, 9, 9, 9];
      expect(Math.max(topLeft, topRight, bottomLeft)).toBeLessThan(cornerMm);
      expect(last).toBeLessThan(Math.max(CORNER_MM, piece.symbolMm[2] / piece.modules));
      expectInk(boxOfInk(raster, piece), piece.symbolMm, insetMm, EDGE_MM);
    }
  }
}

/**
 * Every bar code of the manifest, and no other, is read as an EAN-13 by a program that did not draw it, from a raster of 150 dots
 * per inch, and its bars lie where the manifest says; gives how many there are.
 */
export function expectBarsWhereTheyStand(
  pages: readonly DrawnPage[],
  manifest: Manifest,
  { insetMm }: Reading = readingOf(OFFICE_600),
): number {
  for (const [at, { raster, bars: read }] of pages.entries()) {
    const bars = onPage(manifest, at + 1).flatMap(({ bar }) => bar ?? []);
    expect(read.map(({ text }) => text).sort()).toEqual(bars.map(({ digits }) => digits).sort());
    for (const { digits, boxMm } of bars) {
      const near = read.filter(({ text }) => text === digits).map(({ corners }) => barOff(corners, boxMm));
      expect(Math.min(...near)).toBeLessThan(BAR_READ_MM);
      expectInk(boxOfBars(raster, boxMm), boxMm, insetMm, BAR_EDGE_MM);
    }
  }
  return manifest.pieces.filter(({ bar }) => bar !== undefined).length;
}

/** The ink of a box ends where the manifest says, but for what is taken off where dots grow. */
function expectInk(ink: InkBox, [x, y, width, height]: ManifestPiece['boxMm'], insetMm: number, mostMm: number): void {
  const meant = [x + insetMm, y + insetMm, x + width - insetMm, y + height - insetMm];
  for (const [edge, mm] of meant.entries()) expect(Math.abs((ink[edge] ?? 99) - mm)).toBeLessThan(mostMm);
}

/** How far the ends of a read bar code lie from those in the manifest, and how far it lies above or below them. */
function barOff(corners: ReadCode['corners'], [left, top, width, height]: ManifestPiece['boxMm']): number {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [above, below] = [top - Math.min(...ys), Math.max(...ys) - top - height];
  return Math.max(Math.abs(Math.min(...xs) - left), Math.abs(Math.max(...xs) - left - width), above, below);
}

/** Every word of the manifest stands inside its card and outside the quiet zone; beside the cards stands `margin` only. */
export function expectWordsWhereTheyBelong(path: string, manifest: Manifest, margin: RegExp): void {
  const pages = wordsByPage(path);
  expect(pages).toHaveLength(manifest.pages.length);
  for (const [at, words] of pages.entries()) {
    const rest = new Set(words);
    for (const piece of onPage(manifest, at + 1)) {
      const inside = words.filter((word) => isWithin(word, piece.boxMm));
      for (const word of inside) rest.delete(word);
      const wanted = piece.lines.flatMap((line) => line.split(' '));
      expect(inside.map(({ text }) => text).sort()).toEqual(wanted.sort());
      expect(inside.filter((word) => touchesCode(word, piece))).toEqual([]);
    }
    expect([...rest].map(({ text }) => text).join(' ')).toMatch(margin);
  }
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
