import type { CalibrationPrint, FontBytes, Manifest, PieceJob } from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';

/** What the page asks of the print worker, the type left out; everything in it can be copied to another thread. */
export type PrintAsk = PieceJob | { readonly calibrate: Omit<CalibrationPrint, 'fonts' | 'sha256'> };

/** The same with the type that is embedded. */
export interface PrintOrder {
  readonly ask: PrintAsk;
  readonly fonts: FontBytes;
}

/** What the worker gives back: a PDF with its table of contents, or why there is none. */
export type PrintAnswer =
  | { readonly kind: 'printed'; readonly pdf: Uint8Array<ArrayBuffer>; readonly manifest: Manifest }
  | { readonly kind: 'failed'; readonly problem: Problem };
