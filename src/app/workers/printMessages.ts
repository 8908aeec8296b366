import type {
  CalibrationPrint,
  FontBytes,
  ListsPrint,
  Manifest,
  PieceJob,
  PrintedDocument,
} from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';

/** What the page asks of the print worker, the type left out; everything in it can be copied to another thread. */
export type PrintAsk = PieceJob | { readonly calibrate: Omit<CalibrationPrint, 'fonts' | 'sha256'> };

/** Lists on whole pages, which are nobody's labels. */
export interface ListsAsk {
  readonly lists: Omit<ListsPrint, 'fonts' | 'compress'>;
}

/** The same with the type that is embedded. */
export interface PrintOrder {
  readonly ask: PrintAsk | ListsAsk;
  readonly fonts: FontBytes;
}

/** What the worker gives back: a PDF with its table of contents, or why there is none. */
export type PrintAnswer =
  | { readonly kind: 'printed'; readonly pdf: Uint8Array<ArrayBuffer>; readonly manifest: Manifest }
  | { readonly kind: 'failed'; readonly problem: Problem };

/** A PDF of lists with its table of contents and the signs that the type lacks, or why there is none. */
export type ListsAnswer =
  | ({ readonly kind: 'listed' } & DocumentAnswer)
  | { readonly kind: 'failed'; readonly problem: Problem };

/** Whole pages that are no labels, as they come out of a worker. */
export interface DocumentAnswer extends PrintedDocument {
  readonly pdf: Uint8Array<ArrayBuffer>;
}
