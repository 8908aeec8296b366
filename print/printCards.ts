import type { Measure } from './layout/measure.ts';
import type { Manifest } from './manifest.ts';
import { layPieces, printPieces } from './printPieces.ts';
import type { CardToPrint, LaidJob, Paper, PdfMaking, PieceJob } from './run/job.ts';

/** Cards to print, in walking order, on what, and how. */
export interface CardJob extends Paper {
  readonly cards: readonly CardToPrint[];
  readonly pages?: PieceJob['pages'];
}

/** Sets every card, see {@link layPieces}. */
export function layCards(job: CardJob, measure: Measure): Promise<LaidJob> {
  return layPieces(asPieces(job), measure);
}

/** Prints cards, see {@link printPieces}. */
export function printCards(
  job: CardJob & PdfMaking,
): Promise<{ readonly pdf: Uint8Array; readonly manifest: Manifest }> {
  return printPieces(asPieces(job));
}

function asPieces<J extends CardJob>(job: J): J & PieceJob {
  return { ...job, pieces: job.cards.map((card) => ({ card })) };
}
