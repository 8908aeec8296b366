import { useMemo, useState } from 'preact/hooks';
import type { Stock } from '../../../print/stocks/stock.ts';
import { useApp } from '../model/app.ts';
import type { What } from './batch.ts';
import {
  type KeptPaper,
  keptOf,
  laidPaper,
  nextFirst,
  type Pages,
  type Paper,
  papersFor,
  rememberedPaper,
  rememberPaper,
} from './paper.ts';

/** The paper for one kind of printed things, and what changes it; the device remembers it. */
export interface PaperModel {
  readonly paper: Paper;
  readonly papers: readonly Stock[];
  lay(paper: Paper): void;
  /** So many pieces are on it now. */
  printed(pieces: number): void;
}

/** The paper that was last used for this kind, as the site knows it now. */
export function usePaper(what: What): PaperModel {
  const { paper: known } = useApp().site.facility.value.site;
  const [kept, keep] = useState<KeptPaper>(() => rememberedPaper(what));
  const [pages, setPages] = useState<Pages | null>(null);
  const papers = useMemo(() => papersFor(what, known), [what, known]);
  const paper = useMemo(() => laidPaper(what, kept, pages, known), [what, kept, pages, known]);
  function lay(next: Paper): void {
    keep(keptOf(next));
    setPages(next.pages);
    rememberPaper(what, keptOf(next));
  }
  return {
    paper,
    papers,
    lay,
    printed: (pieces) => lay({ ...paper, first: nextFirst(paper, pieces), pages: null }),
  };
}
