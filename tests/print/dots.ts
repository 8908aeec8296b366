import { type ExecFileSyncOptionsWithBufferEncoding, execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ManifestPiece, PrinterProfile, QrSymbol } from '../../print/index.ts';
import { picturesIn, type Raster } from './paper.ts';

/** The pages of a file in the dots of a printer, black or white, as one renderer draws them. */
export type Renderer = (path: string, printer: PrinterProfile) => readonly Raster[];

const MOST: ExecFileSyncOptionsWithBufferEncoding = { maxBuffer: 2 ** 29, stdio: ['ignore', 'pipe', 'ignore'] };
const perInch = ({ dotsPerMm }: PrinterProfile): string => String(Math.round(dotsPerMm * 25.4 * 1e4) / 1e4);

/** Renderers that share no code: what they all draw alike, a printer's own will hardly draw otherwise. */
export const RENDERERS: Readonly<Record<'ghostscript' | 'poppler' | 'mupdf', Renderer>> = {
  ghostscript: (path, printer) => {
    const words = [
      '-q',
      '-dSAFER',
      '-dBATCH',
      '-dNOPAUSE',
      '-sDEVICE=pbmraw',
      `-r${perInch(printer)}`,
      '-o',
      '-',
      path,
    ];
    return picturesIn(execFileSync('gs', words, MOST), printer.dotsPerMm);
  },
  poppler: (path, printer) =>
    picturesIn(execFileSync('pdftoppm', ['-mono', '-r', perInch(printer), path], MOST), printer.dotsPerMm),
  mupdf: (path, printer) => {
    const words = ['draw', '-q', '-F', 'pbm', '-A', '0', '-r', perInch(printer), '-o', '-', path];
    return picturesIn(execFileSync('mutool', words, MOST), printer.dotsPerMm);
  },
};

/** The first page as Cairo draws it, in grey with soft edges: of all renderers the one that errs least in size. */
export function cairoRaster(path: string, dpi: number): Raster {
  const folder = mkdtempSync(join(tmpdir(), 'cairo-'));
  try {
    const to = join(folder, 'page');
    const words = ['-tiff', '-tiffcompression', 'none', '-gray', '-r', String(dpi), '-singlefile', path, to];
    execFileSync('pdftocairo', words, MOST);
    return tiffRaster(readFileSync(`${to}.tif`), dpi / 25.4);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** An uncompressed grey TIFF (TIFF 6.0, section 4) in strips that follow each other. */
function tiffRaster(bytes: Buffer, dotsPerMm: number): Raster {
  const small = bytes.toString('latin1', 0, 2) === 'II';
  const short = (at: number) => (small ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at));
  const long = (at: number) => (small ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at));
  const first = long(4);
  const fields = new Map<number, number>();
  let strips = { count: 1, at: 0 };
  for (let n = 0; n < short(first); n++) {
    const at = first + 2 + 12 * n;
    fields.set(short(at), short(at + 2) === 3 ? short(at + 8) : long(at + 8));
    if (short(at) === 273) strips = { count: long(at + 4), at: at + 8 };
  }
  const [width = 0, height = 0] = [fields.get(256), fields.get(257)];
  const from = strips.count === 1 ? long(strips.at) : long(long(strips.at));
  return { width, height, dotsPerMm, grey: bytes.subarray(from, from + width * height) };
}

/** How a code came out in dots, against how it was meant. */
export interface Growth {
  readonly dotsPerModule: number;
  /** How much longer runs are than their modules, in dots, by both axes; ink that is missing counts as well. */
  readonly dots: number;
}

/** Compares a code on a page with its modules, dot for dot, the blank module around it included. */
export function growthOf(raster: Raster, piece: ManifestPiece, symbol: QrSymbol): Growth {
  const { size, modules } = symbol;
  const [x, y, width] = piece.symbolMm.map((mm) => Math.round(mm * raster.dotsPerMm)) as [number, number, number];
  const dotsPerModule = Math.round(width / size);
  const isDark = (column: number, row: number) =>
    column >= 0 && row >= 0 && column < size && row < size && modules[row * size + column] === 1;
  let wrong = 0;
  let edges = 0;
  for (let row = -1; row <= size; row++)
    for (let column = -1; column <= size; column++) {
      const dark = isDark(column, row);
      if (dark !== isDark(column - 1, row)) edges++;
      if (dark !== isDark(column, row - 1)) edges++;
      for (let dy = 0; dy < dotsPerModule; dy++)
        for (let dx = 0; dx < dotsPerModule; dx++) {
          const [px, py] = [x + column * dotsPerModule + dx, y + row * dotsPerModule + dy];
          if ((raster.grey[py * raster.width + px] ?? 255) < 128 !== dark) wrong++;
        }
    }
  // A run has two edges, and each edge is a module long.
  return { dotsPerModule, dots: (2 * wrong) / (edges * dotsPerModule) };
}
