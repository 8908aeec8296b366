import type { LeftOut, Manifest } from '../manifest.ts';

/** What stands on which page of a run; a piece with several faces stands on several. */
export interface RunPlan {
  readonly pages: number;
  /** By page, the first at 0: the ids on it, in the order of its labels. */
  readonly onPage: readonly (readonly string[])[];
  readonly left: readonly LeftOut[];
}

/** What content a run's pieces have: a revision by id. */
export type Revisions = ReadonlyMap<string, string>;

/** How far a run has come, and what to do next. */
export interface RunProgress {
  /** On paper with every face. */
  readonly printed: readonly string[];
  /** Not yet, or only in part. */
  readonly rest: readonly string[];
  /** The pages that are still to be printed: what {@link PieceJob}'s `pages` takes; null when all are. */
  readonly pages: readonly [from: number, to: number] | null;
  /** On paper, and changed since the run was laid: these cards no longer say what is known. */
  readonly stale: readonly string[];
  /** Not on paper yet, and changed since: the rest no longer comes out as it was laid, so lay it anew. */
  readonly changed: readonly string[];
}

/** The plan of a run from the table of contents of all its pages. */
export function planOf({ pages, pieces, left }: Manifest): RunPlan {
  const onPage = pages.map((): string[] => []);
  for (const { page, id } of pieces) onPage[page - 1]?.push(id);
  return { pages: pages.length, onPage, left };
}

/**
 * Rule PRINT-RESUME: how far a run has come when it was printed up to a page, and what has changed since it was laid. A
 * piece counts as printed once the last of its faces is; one that is gone from `now` counts as changed.
 */
export function runProgress(plan: RunPlan, toPage: number, laid: Revisions, now: Revisions): RunProgress {
  const lastPage = new Map<string, number>();
  for (const [at, ids] of plan.onPage.entries()) for (const id of ids) lastPage.set(id, at + 1);
  const isPrinted = (id: string) => (lastPage.get(id) ?? Number.POSITIVE_INFINITY) <= toPage;
  const isChanged = (id: string) => now.get(id) !== laid.get(id);
  const ids = [...lastPage.keys()];
  const printed = ids.filter(isPrinted);
  const rest = ids.filter((id) => !isPrinted(id));
  return {
    printed,
    rest,
    pages: toPage >= plan.pages ? null : [Math.max(0, toPage) + 1, plan.pages],
    stale: printed.filter(isChanged),
    changed: rest.filter(isChanged),
  };
}
