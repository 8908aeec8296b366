import { prepareZXingModule, type ReaderOptions, type ReadResult, readBarcodes } from 'zxing-wasm/reader';
import { type Corners, type Picture, toRgba } from './picture.ts';

/** Where the decoder's WebAssembly comes from: its bytes (Node), or an address of our own (browser). */
export type WasmSource = { readonly binary: ArrayBuffer } | { readonly url: string };

/** A whole code that one look found, with its place in the picture that was looked at. */
export interface Seen {
  readonly text: string;
  readonly corners: Corners;
}

/** How one pass looks at the picture. */
export interface PassOptions {
  readonly most: number;
  readonly threshold: 'local' | 'global';
}

/** Loads the decoder; rejects with the reason if its WebAssembly cannot be had. */
export async function loadZxing(source: WasmSource): Promise<void> {
  const overrides = 'binary' in source ? { wasmBinary: source.binary } : { locateFile: () => source.url };
  await prepareZXingModule({ overrides, fireImmediately: true });
}

/**
 * Turned symbols are found anyway, inverted ones are never printed; both would only cost time. The format `QRCode` would
 * stand for its small relatives too, and a smudge was once read as a Micro QR code with three digits: ours are model 2.
 * EAN-13 is what stands on wares; its twelve-digit form without the leading 0 is the same bars.
 */
const SETTINGS: ReaderOptions = {
  formats: ['QRCodeModel2', 'EAN13'],
  tryHarder: true,
  tryDenoise: true,
  tryInvert: false,
  tryRotate: false,
  textMode: 'Plain',
};

/** One look at a picture; {@link loadZxing} must have gone before. */
export async function pass(picture: Picture, { most, threshold }: PassOptions): Promise<readonly Seen[]> {
  const results = await readBarcodes(toRgba(picture), {
    ...SETTINGS,
    maxNumberOfSymbols: Math.min(Math.max(Math.trunc(most), 1), 255),
    binarizer: threshold === 'local' ? 'LocalAverage' : 'GlobalHistogram',
  });
  return results.map((result) => ({ text: result.text, corners: cornersOf(result) }));
}

/**
 * True if a symbol has a place but cannot be read. A look of its own: among whole codes the broken ones would take up
 * the number that a look may find, and hide them. Bars are not asked for: any printed line looks like half of one.
 */
export async function seesBroken(picture: Picture): Promise<boolean> {
  const settings: ReaderOptions = {
    ...SETTINGS,
    formats: ['QRCodeModel2'],
    maxNumberOfSymbols: 255,
    returnErrors: true,
  };
  const results = await readBarcodes(toRgba(picture), settings);
  return results.some((result) => !result.isValid);
}

function cornersOf({ position: { topLeft, topRight, bottomRight, bottomLeft } }: ReadResult): Corners {
  return [
    [topLeft.x, topLeft.y],
    [topRight.x, topRight.y],
    [bottomRight.x, bottomRight.y],
    [bottomLeft.x, bottomLeft.y],
  ];
}
