import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

/** Kinds of codes that our paper has. */
export type CodeKind = 'QRCode' | 'EAN13';

/** A code that was read off a page, in mm from the page's top left corner. */
export interface ReadCode {
  readonly kind: CodeKind;
  readonly text: string;
  readonly corners: readonly (readonly [number, number])[];
}

/** A word that stands on a page, in mm from its top left corner. */
export interface ReadWord {
  readonly text: string;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
}

/** A page as a renderer draws it: one byte a pixel, 0 is black. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly dotsPerMm: number;
  readonly grey: Uint8Array;
}

/** Runs `look` with the PDF as a file, and clears it away. */
export async function withFile<T>(pdf: Uint8Array, look: (path: string) => Promise<T> | T): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'print-'));
  try {
    const path = join(folder, 'x.pdf');
    writeFileSync(path, pdf);
    return await look(path);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What a program says of a file; throws when the program finds it unsound. */
export function run(program: string, ...words: readonly string[]): string {
  return execFileSync(program, words, { encoding: 'utf8', maxBuffer: 2 ** 28 });
}

/** The pages of a file in grey, as Poppler draws them with soft edges. */
export function rastersOf(path: string, dpi: number): readonly Raster[] {
  const raw = execFileSync('pdftoppm', ['-r', `${dpi}`, '-gray', path], { maxBuffer: 2 ** 30 });
  return picturesIn(raw, dpi / 25.4);
}

/** Draws a page in grey and reads every QR code on it. */
export async function readPage(path: string, page: number, dpi: number): Promise<readonly ReadCode[]> {
  const which = ['-f', `${page}`, '-l', `${page}`];
  const raw = execFileSync('pdftoppm', ['-r', `${dpi}`, '-gray', ...which, path], { maxBuffer: 2 ** 28 });
  const [raster] = picturesIn(raw, dpi / 25.4);
  return raster === undefined ? [] : readRaster(raster);
}

let reader: Promise<unknown> | undefined;

/** The reader's program, compiled once for all pages of a process. */
function prepareReader(): Promise<unknown> {
  const wasmBinary = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  return prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasmBinary).buffer }, fireImmediately: true });
}

/** Every code of these kinds in a raster. */
export async function readRaster(
  raster: Raster,
  formats: readonly CodeKind[] = ['QRCode'],
): Promise<readonly ReadCode[]> {
  reader ??= prepareReader();
  await reader;
  const found = await readBarcodes(imageOf(raster), {
    formats: [...formats],
    maxNumberOfSymbols: 255,
    tryHarder: true,
  });
  return found.map(({ format, text, position }) => ({
    kind: format === 'EAN13' ? 'EAN13' : 'QRCode',
    text,
    corners: [position.topLeft, position.topRight, position.bottomRight, position.bottomLeft].map(
      ({ x, y }) => [x / raster.dotsPerMm, y / raster.dotsPerMm] as const,
    ),
  }));
}

/** The words of a page with their boxes. */
export function wordsOf(path: string, page: number): readonly ReadWord[] {
  return wordsIn(run('pdftotext', '-bbox', '-f', `${page}`, '-l', `${page}`, path, '-'));
}

/** The words of every page with their boxes. */
export function wordsByPage(path: string): readonly (readonly ReadWord[])[] {
  return run('pdftotext', '-bbox', path, '-').split('<page ').slice(1).map(wordsIn);
}

function wordsIn(html: string): readonly ReadWord[] {
  const pt = 25.4 / 72;
  const word = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)<\/word>/g;
  return [...html.matchAll(word)].map(([, left, top, right, bottom, text = '']) => ({
    text: text.replaceAll('&amp;', '&').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"'),
    box: [Number(left) * pt, Number(top) * pt, Number(right) * pt, Number(bottom) * pt],
  }));
}

/** Binary PGM or PBM pictures one after the other, as renderers give them. */
export function picturesIn(raw: Uint8Array, dotsPerMm: number): readonly Raster[] {
  const pictures: Raster[] = [];
  let at = 0;
  while (at < raw.length) {
    const head = Buffer.from(raw.subarray(at, at + 120)).toString('latin1');
    const found = /^P([45])\s+(?:#[^\n]*\s+)*(\d+)\s+(\d+)\s(?:255\s)?/.exec(head);
    if (!found) throw new RangeError('the renderer gave no grey picture');
    const [width, height, from] = [Number(found[2]), Number(found[3]), at + found[0].length];
    const isBits = found[1] === '4';
    const bytes = isBits ? Math.ceil(width / 8) * height : width * height;
    const body = raw.subarray(from, from + bytes);
    pictures.push({ width, height, dotsPerMm, grey: isBits ? unpacked(body, width, height) : body });
    at = from + bytes;
  }
  return pictures;
}

function unpacked(bits: Uint8Array, width: number, height: number): Uint8Array {
  const grey = new Uint8Array(width * height);
  const row = Math.ceil(width / 8);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const byte = bits[y * row + (x >> 3)] ?? 0;
      grey[y * width + x] = (byte >> (7 - (x & 7))) & 1 ? 0 : 255;
    }
  return grey;
}

function imageOf({ width, height, grey }: Raster): ImageData {
  const words = new Uint32Array(width * height);
  for (let at = 0; at < words.length; at++) words[at] = (grey[at] ?? 255) * 0x10101 + 0xff000000;
  const data = new Uint8ClampedArray(words.buffer);
  return { data, width, height, colorSpace: 'srgb' } as ImageData;
}
