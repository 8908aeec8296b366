import type { Form } from './layout/words.ts';
import type { BoxMm } from './stocks/stock.ts';

/** One printed piece, in mm from its page's top left corner. */
export interface ManifestPiece {
  readonly kind: 'card';
  readonly id: string;
  readonly payload: string;
  /** Counts from 1. */
  readonly page: number;
  readonly boxMm: BoxMm;
  /** The code without its quiet zone. */
  readonly symbolMm: BoxMm;
  readonly symbology: 'qr';
  /** Every text printed on the piece, top to bottom. */
  readonly lines: readonly string[];
  /** The shortest form used on the piece. */
  readonly form: Form;
  /** True for a second face. */
  readonly back: boolean;
}

/** Something that was asked for and not printed, and why, with what to do. */
export interface LeftOut {
  readonly id: string;
  readonly why: string;
}

/** What was printed where: the paper's table of contents, for whoever checks it. */
export interface Manifest {
  readonly stock: string;
  readonly pages: readonly { readonly widthMm: number; readonly heightMm: number }[];
  readonly pieces: readonly ManifestPiece[];
  readonly left: readonly LeftOut[];
  /** SHA-256 of the PDF's bytes, in hexadecimal. */
  readonly sha256: string;
}
