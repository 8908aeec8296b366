import type { Manifest, ManifestPage, ManifestPiece } from '../manifest.ts';
import { breathe } from '../platform.ts';
import type { PrinterProfile } from '../qr/profiles.ts';
import type { BoxMm } from '../stocks/stock.ts';
import { type DrawnWords, drawPage, wordsOf } from './interpreter.ts';
import { openOwnPdf } from './ownPdf.ts';
import { cropped, type Raster } from './raster.ts';

/** A look at a picture: the texts of all codes and bar codes that can be read in it. */
export type Look = (picture: { data: Uint8ClampedArray; width: number; height: number }) => Promise<readonly string[]>;

/** A code that does not read as it should, or a line of a page that is no label: what reads instead, or nothing. */
export type ReadFault = CodeFault | LineFault;

/** A code or a bar code of a piece. */
export interface CodeFault {
  readonly piece: ManifestPiece;
  readonly what: 'code' | 'bar';
  readonly read: string | null;
}

/** A line that is missing, says something else, or does not lie on its page whole. */
export interface LineFault {
  readonly what: 'line';
  readonly page: number;
  readonly line: string;
  readonly read: string | null;
}

/** What came of reading a file back: how many codes, bar codes and lines there are, and those that did not read. */
export interface ReadBack {
  readonly codes: number;
  readonly bars: number;
  /** Of pages that are no sheets of labels. */
  readonly lines: number;
  readonly faults: readonly ReadFault[];
}

/** What should stand in a file: as much of its table of contents as reading it back takes. */
export type Expected = Pick<Manifest, 'pieces'> & { readonly pages: readonly Pick<ManifestPage, 'lines'>[] };

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
 * Rule PRINT-READBACK: every code of a made file, and every line of pages that are no labels, is read back from what the
 * file itself draws on each page, never from what it was meant to say, and compared with the table of contents.
 * `onProgress` hears of pieces. Rejects with an Error where the file cannot be drawn.
 */
export async function readBack(
  pdf: Uint8Array,
  { pieces, pages }: Expected,
  printer: Pick<PrinterProfile, 'dotsPerMm'>,
  { look, onProgress }: { readonly look: Look; readonly onProgress?: (done: number) => void },
): Promise<ReadBack> {
  const file = openOwnPdf(pdf);
  const byPage = onPages(pieces);
  const faults: ReadFault[] = [];
  let [done, bars, lines] = [0, 0, 0];
  let buffer: Uint8ClampedArray | undefined;
  for (let number = 1; number <= file.pages; number++) {
    const [here, wanted] = [byPage.get(number) ?? [], pages[number - 1]?.lines ?? []];
    if (here.length === 0 && wanted.length === 0) continue;
    const page = await file.page(number);
    lines += wanted.length;
    faults.push(...lineFaults(number, wanted, wanted.length === 0 ? [] : wordsOf(page)));
    const picture = here.length === 0 ? null : drawPage(page, lookDotsPerMm(printer), buffer);
    buffer = picture?.grey ?? buffer;
    for (const piece of here) {
      const codes = wantedOf(piece);
      bars += codes.length - 1;
      for (const one of codes) if (picture) faults.push(...(await faultsOf(picture, piece, one, look)));
      onProgress?.(++done);
    }
    await breathe();
  }
  return { codes: pieces.length, bars, lines, faults };
}

function onPages(pieces: readonly ManifestPiece[]): ReadonlyMap<number, readonly ManifestPiece[]> {
  const byPage = new Map<number, ManifestPiece[]>();
  for (const piece of pieces) {
    const here = byPage.get(piece.page);
    if (here === undefined) byPage.set(piece.page, [piece]);
    else here.push(piece);
  }
  return byPage;
}

/** How many lines may be lost in a row before what follows counts as misread. */
const AHEAD = 8;

/** Lines against what is drawn, in order: one that says something else, one that is lost, one that is not on the page whole. */
function lineFaults(page: number, wanted: readonly string[], drawn: readonly DrawnWords[]): readonly LineFault[] {
  const faults: LineFault[] = [];
  let at = 0;
  for (const [place, line] of wanted.entries()) {
    const found = drawn[at];
    const isLost = found === undefined || wanted.slice(place + 1, place + 1 + AHEAD).includes(found.text);
    if (found?.text === line) {
      at++;
      if (!found.isOnPage) faults.push({ what: 'line', page, line, read: null });
    } else if (isLost) faults.push({ what: 'line', page, line, read: null });
    else {
      at++;
      faults.push({ what: 'line', page, line, read: found.text });
    }
  }
  return faults;
}

interface Wanted {
  readonly what: CodeFault['what'];
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
): Promise<readonly CodeFault[]> {
  const { grey, width, height } = cropped(picture, roomMm);
  const read = width === 0 || height === 0 ? [] : await look({ data: grey, width, height });
  if (read.length === 1 && read[0] === says) return [];
  return [{ piece, what, read: read.find((text) => text !== says) ?? null }];
}
