import type { FontBytes, ListsPrint, Manifest, PieceJob, PrinterProfile } from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';

/** What the page asks of the print worker; everything in it can be copied to another thread. */
export interface PrintOrder extends Omit<PieceJob, 'stock' | 'printer'> {
  readonly stockId: string;
  readonly printer: PrinterProfile;
  readonly fonts: FontBytes;
}

/** What the worker gives back: a PDF with its table of contents, or why there is none. */
export type PrintAnswer =
  | { readonly kind: 'printed'; readonly pdf: Uint8Array<ArrayBuffer>; readonly manifest: Manifest }
  | { readonly kind: 'failed'; readonly problem: Problem };

/** Lists on whole pages, which are nobody's labels. */
export type ListsOrder = Omit<ListsPrint, 'compress'>;

/** A PDF of lists with the number of its pages, or why there is none. */
export type ListsAnswer =
  | { readonly kind: 'listed'; readonly pdf: Uint8Array<ArrayBuffer>; readonly pages: number }
  | { readonly kind: 'failed'; readonly problem: Problem };
