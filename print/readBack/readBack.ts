import type { Manifest, ManifestPiece } from '../manifest.ts';
import { breathe } from '../platform.ts';
import type { PrinterProfile } from '../qr/profiles.ts';
import type { BoxMm } from '../stocks/stock.ts';
import { drawPage } from './interpreter.ts';
import { openOwnPdf } from './ownPdf.ts';
import { cropped, type Raster } from './raster.ts';

/** A look at a picture: the texts of all codes and bar codes that can be read in it. */
export type Look = (picture: { data: Uint8ClampedArray; width: number; height: number }) => Promise<readonly string[]>;

/** A code that does not read as it should: what reads instead, or nothing. */
export interface ReadFault {
  readonly piece: ManifestPiece;
  readonly what: 'code' | 'bar';
  readonly read: string | null;
}

/** What came of reading a run back: how many codes and bar codes there are, and those that did not read. */
export interface ReadBack {
  readonly codes: number;
  readonly bars: number;
  readonly faults: readonly ReadFault[];
}

/** On a fine printer every fourth dot is looked at: 150 an inch of 600. */
const FINE_DOTS_PER_MM = 20;
const QUARTER = 4;
/** Blank rim that belongs to a code, in modules of a QR symbol; and to bars, in mm. */
const QUIET_MODULES = 4;
const BAR_QUIET_MM = 4.5;

/** Pixels a mm at which a run for this printer is read: its own dots, or every fourth of a fine printer's. */
export function lookDotsPerMm({ dotsPerMm }: Pick<PrinterProfile, 'dotsPerMm'>): number {
  return dotsPerMm > FINE_DOTS_PER_MM ? dotsPerMm / QUARTER : dotsPerMm;
}

/**
 * Rule PRINT-READBACK: every code of a made file is read back from what the file itself draws on each page, never from what
 * it was meant to say, and compared with the table of contents. Rejects with an Error where the file cannot be drawn.
 */
export async function readBack(
  pdf: Uint8Array,
  manifest: Pick<Manifest, 'pieces'>,
  printer: Pick<PrinterProfile, 'dotsPerMm'>,
  { look, onProgress }: { readonly look: Look; readonly onProgress?: (done: number) => void },
): Promise<ReadBack> {
  const file = openOwnPdf(pdf);
  const faults: ReadFault[] = [];
  let [done, bars] = [0, 0];
  let buffer: Uint8ClampedArray | undefined;
  for (let number = 1; number <= file.pages; number++) {
    const pieces = manifest.pieces.filter(({ page }) => page === number);
    if (pieces.length === 0) continue;
    const picture = drawPage(await file.page(number), lookDotsPerMm(printer), buffer);
    buffer = picture.grey;
    for (const piece of pieces) {
      const wanted = wantedOf(piece);
      bars += wanted.length - 1;
      for (const one of wanted) faults.push(...(await faultsOf(picture, piece, one, look)));
      onProgress?.(++done);
    }
    await breathe();
  }
  return { codes: manifest.pieces.length, bars, faults };
}

interface Wanted {
  readonly what: ReadFault['what'];
  readonly says: string;
  readonly roomMm: BoxMm;
}

function wantedOf({ payload, symbolMm, modules, bar }: ManifestPiece): readonly Wanted[] {
  const quietMm = (symbolMm[2] / modules) * QUIET_MODULES;
  const code: Wanted = { what: 'code', says: payload, roomMm: widened(symbolMm, quietMm, quietMm) };
  if (bar === undefined) return [code];
  return [code, { what: 'bar', says: bar.digits, roomMm: widened(bar.boxMm, BAR_QUIET_MM, 0) }];
}

function widened([x, y, width, height]: BoxMm, across: number, down: number): BoxMm {
  return [x - across, y - down, width + 2 * across, height + 2 * down];
}

async function faultsOf(
  picture: Raster,
  piece: ManifestPiece,
  { what, says, roomMm }: Wanted,
  look: Look,
): Promise<readonly ReadFault[]> {
  const { grey, width, height } = cropped(picture, roomMm);
  const read = width === 0 || height === 0 ? [] : await look({ data: grey, width, height });
  if (read.length === 1 && read[0] === says) return [];
  return [{ piece, what, read: read.find((text) => text !== says) ?? null }];
}
