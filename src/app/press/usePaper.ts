import { useState } from 'preact/hooks';
import type { Stock } from '../../../print/stocks/stock.ts';
import type { What } from './batch.ts';
import { nextFirst, type Paper, papersFor, rememberedPaper, rememberPaper } from './paper.ts';

/** The paper for one kind of printed things, and what changes it; the device remembers it. */
export interface PaperModel {
  readonly paper: Paper;
  readonly papers: readonly Stock[];
  lay(paper: Paper): void;
  /** So many pieces are on it now. */
  printed(pieces: number): void;
}

/** The paper that was last used for this kind. */
export function usePaper(what: What): PaperModel {
  const [paper, setPaper] = useState<Paper>(() => rememberedPaper(what));
  function lay(next: Paper): void {
    setPaper(next);
    rememberPaper(what, next);
  }
  return {
    paper,
    papers: papersFor(what),
    lay,
    printed: (pieces) => lay({ ...paper, first: nextFirst(paper, pieces) }),
  };
}
