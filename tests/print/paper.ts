import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

/** A code that was read off a page, in mm from the page's top left corner. */
export interface ReadCode {
  readonly text: string;
  readonly corners: readonly (readonly [number, number])[];
}

/** A word that stands on a page, in mm from its top left corner. */
export interface ReadWord {
  readonly text: string;
  readonly box: readonly [left: number, top: number, right: number, bottom: number];
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

/** Draws a page in grey and reads every QR code on it. */
export async function readPage(path: string, page: number, dpi: number): Promise<readonly ReadCode[]> {
  const wasmBinary = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
  await prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasmBinary).buffer }, fireImmediately: true });
  const raw = execFileSync('pdftoppm', ['-r', `${dpi}`, '-gray', '-f', `${page}`, '-l', `${page}`, path], {
    maxBuffer: 2 ** 28,
  });
  const found = await readBarcodes(imageOf(raw), { formats: ['QRCode'], maxNumberOfSymbols: 255, tryHarder: true });
  const mm = 25.4 / dpi;
  return found.map(({ text, position }) => ({
    text,
    corners: [position.topLeft, position.topRight, position.bottomRight, position.bottomLeft].map(
      ({ x, y }) => [x * mm, y * mm] as const,
    ),
  }));
}

/** The words of a page with their boxes. */
export function wordsOf(path: string, page: number): readonly ReadWord[] {
  const pt = 25.4 / 72;
  const html = run('pdftotext', '-bbox', '-f', `${page}`, '-l', `${page}`, path, '-');
  const word = /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)<\/word>/g;
  return [...html.matchAll(word)].map(([, left, top, right, bottom, text = '']) => ({
    text: text.replaceAll('&amp;', '&').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"'),
    box: [Number(left) * pt, Number(top) * pt, Number(right) * pt, Number(bottom) * pt],
  }));
}

/** A binary PGM as RGBA pixels. */
function imageOf(pgm: Uint8Array): ImageData {
  const head = Buffer.from(pgm.subarray(0, 60)).toString('latin1');
  const found = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(head);
  if (!found) throw new RangeError('pdftoppm gave no grey picture');
  const [width, height] = [Number(found[1]), Number(found[2])];
  const grey = pgm.subarray(found[0].length);
  const data = new Uint8ClampedArray(width * height * 4);
  for (let at = 0; at < width * height; at++)
    data.fill(grey[at] ?? 255, at * 4, at * 4 + 3).fill(255, at * 4 + 3, at * 4 + 4);
  return { data, width, height, colorSpace: 'srgb' } as ImageData;
}
