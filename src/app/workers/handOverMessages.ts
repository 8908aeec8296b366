import type { FontBytes, PackPaper } from '../../../print/index.ts';
import type { HandOver, Problem } from '../../core/index.ts';
import type { DocumentAnswer } from './printMessages.ts';

/** What the page asks of the hand-over worker: the sheet’s words, since a worker has no log. */
export interface HandOverOrder {
  readonly sheet: HandOver;
  readonly paper: PackPaper;
  readonly host: string | null;
  readonly fonts: FontBytes;
}

/** What it made, or why it did not. */
export type HandOverAnswer =
  | ({ readonly kind: 'made' } & DocumentAnswer)
  | { readonly kind: 'failed'; readonly problem: Problem };
