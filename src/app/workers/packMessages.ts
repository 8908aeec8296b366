import type { FontBytes, PackPaper } from '../../../print/index.ts';
import type { Day, LogEvent, PackChoice, PackFile, Problem } from '../../core/index.ts';
import type { DocumentAnswer } from './printMessages.ts';

/** What the page asks of the pack worker: the log goes with it, since a worker has none. */
export interface PackOrder {
  readonly events: readonly LogEvent[];
  readonly choice: PackChoice;
  readonly profile: string;
  readonly on: Day;
  readonly paper: PackPaper;
  readonly fonts: FontBytes;
}

/** How far the worker is (from 0 to 1), and then what it made or why it did not. */
export type PackAnswer =
  | { readonly kind: 'at'; readonly share: number }
  | ({ readonly kind: 'made'; readonly files: readonly PackFile[]; readonly animals: number } & DocumentAnswer)
  | { readonly kind: 'failed'; readonly problem: Problem };
