import type { Expected, PrinterProfile, ReadBack } from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';

/** What the page asks of the worker that reads a made file back: the file, what should stand in it, and the reader's address. */
export interface ReadBackOrder extends Expected {
  readonly pdf: Uint8Array<ArrayBuffer>;
  readonly printer: PrinterProfile;
  readonly wasmUrl: string;
}

/** How many pieces are looked at, and then what came of it or why it was not done. */
export type ReadBackAnswer =
  | { readonly kind: 'at'; readonly done: number }
  | ({ readonly kind: 'read' } & ReadBack)
  | { readonly kind: 'failed'; readonly problem: Problem };
