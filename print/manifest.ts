import type { LabelKind } from '../src/core/index.ts';
import type { Form } from './layout/words.ts';
import type { BoxMm } from './stocks/stock.ts';

/** What a printed piece is. */
export type PieceKind = 'card' | LabelKind | 'calibration' | 'list' | 'hand-over' | 'pack';

/** A bar code beside a piece's own code. */
export interface ManifestBar {
  readonly digits: string;
  readonly symbology: 'ean-13';
  /** The bars without their blank rims. */
  readonly boxMm: BoxMm;
}

/** One printed piece, in mm from its page's top left corner. */
export interface ManifestPiece {
  readonly kind: PieceKind;
  /** The animal's, place's or clutch's id; a stamp by its name. The marks of a clutch's eggs share its id. */
  readonly id: string;
  readonly payload: string;
  /** Counts from 1. */
  readonly page: number;
  /** The label; with a calibration, where it is drawn so that it comes out in its place. */
  readonly boxMm: BoxMm;
  /** The code without its quiet zone. */
  readonly symbolMm: BoxMm;
  readonly symbology: 'qr';
  /** The code's modules from side to side: 21 for version 1, 25 for version 2 and so on. */
  readonly modules: number;
  /** On what the shop sells. */
  readonly bar?: ManifestBar;
  /** Every text printed on the piece, top to bottom. */
  readonly lines: readonly string[];
  /** The shortest form used on the piece. */
  readonly form: Form;
  /** True for a second face. */
  readonly back: boolean;
}

/** The id of pages that were asked for and are not in the run begins so. */
export const PAGES_LEFT = 'pages ';

/** Something that was asked for and not printed, and why, with what to do. */
export interface LeftOut {
  readonly id: string;
  readonly why: string;
}

/** Something that is printed otherwise than it was written, and how. */
export interface Warning {
  readonly id: string;
  readonly why: string;
}

/** The pages of a run that a file holds, where it does not hold all. */
export interface PartOfRun {
  /** The run's page that is this file's first. */
  readonly from: number;
  readonly of: number;
}

/** A page's size; of a page that is no sheet of labels also every text on it, in the order in which it is drawn. */
export interface ManifestPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines?: readonly string[];
}

/** What was printed where: the paper's table of contents, for whoever checks it. */
export interface Manifest {
  readonly stock: string;
  readonly pages: readonly ManifestPage[];
  readonly pieces: readonly ManifestPiece[];
  readonly left: readonly LeftOut[];
  /** Only where there are any. */
  readonly warnings?: readonly Warning[];
  readonly part?: PartOfRun;
  /** SHA-256 of the PDF's bytes, in hexadecimal. */
  readonly sha256: string;
}
