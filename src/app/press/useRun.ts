import { useEffect, useRef, useState } from 'preact/hooks';
import type { Manifest } from '../../../print/index.ts';
import type { EventDraft, Id, Problem, Result } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { type Batch, batchKey, piecesOf, sayPieces } from './batch.ts';
import { jobPaper, type Paper } from './paper.ts';
import { type Printing, startPrinting } from './printing.ts';

/** A print run from its order to the keeper's word that it is on paper. */
export type Run =
  | { readonly at: 'idle' }
  | { readonly at: 'working'; readonly count: number }
  | { readonly at: 'ready'; readonly url: string; readonly manifest: Manifest; readonly drafts: readonly EventDraft[] }
  | { readonly at: 'marked'; readonly url: string; readonly manifest: Manifest; readonly count: number }
  | { readonly at: 'failed'; readonly problem: Problem };

export interface RunModel {
  readonly run: Run;
  make(): void;
  stop(): void;
  /** Writes that cards and priced tags are on paper, and nothing for other labels; only the keeper's touch calls it. */
  mark(): Promise<Result<number>>;
}

/** One run at a time; other pieces or another paper put the last one away. */
export function useRun(batch: Batch, paper: Paper): RunModel {
  const { site, clock, strip, signs } = useApp();
  const [run, setRun] = useState<Run>({ at: 'idle' });
  const printing = useRef<Printing | null>(null);
  const order = orderKey(batch, paper);
  const madeFor = useRef(order);

  function stop(): void {
    printing.current?.stop();
    printing.current = null;
    setRun(idle);
  }

  useEffect(() => {
    // The order changes by itself once the cards are marked as printed: what lies on the screen then stays.
    if (run.at !== 'idle' && run.at !== 'marked' && madeFor.current !== order) stop();
  }, [order]);
  useEffect(() => () => printing.current?.stop(), []);
  useEffect(() => (run.at === 'ready' ? () => releaseLater(run.url) : undefined), [run]);

  function make(): void {
    printing.current?.stop();
    madeFor.current = order;
    const job = jobOf(batch, paper, site.facility.value.site.host);
    const started = startPrinting({ ...job, printedOn: clock.today.value });
    printing.current = started;
    setRun({ at: 'working', count: job.pieces.length });
    void started.answer.then((answer) => {
      if (printing.current !== started) return;
      if (answer.kind === 'failed') return setRun({ at: 'failed', problem: answer.problem });
      const url = URL.createObjectURL(new Blob([answer.pdf], { type: 'application/pdf' }));
      const drafts = printedDrafts(batch, answer.manifest, paper.stock.id, clock.today.value);
      setRun({ at: 'ready', url, manifest: answer.manifest, drafts });
    });
  }

  async function mark(): Promise<Result<number>> {
    if (run.at !== 'ready') return { ok: true, value: 0 };
    const { url, manifest, drafts } = run;
    if (drafts.length === 0) {
      setRun({ at: 'marked', url, manifest, count: manifest.pieces.length });
      return { ok: true, value: manifest.pieces.length };
    }
    const written = await site.write(drafts);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written;
    const count = drafts.length;
    const name = sayPieces(batch.what, count);
    strip.add({ subject: null, name, said: 'printed', result: 'accepted', problem: null, events: written.value });
    setRun({ at: 'marked', url, manifest, count });
    return { ok: true, value: count };
  }

  return { run, make, stop, mark };
}

const idle: Run = { at: 'idle' };
/** A tab that was opened from the link still reads the address for a moment. */
const RELEASE_MS = 600_000;

function releaseLater(url: string): void {
  setTimeout(() => URL.revokeObjectURL(url), RELEASE_MS);
}

function orderKey(batch: Batch, paper: Paper): string {
  return [JSON.stringify(jobPaper(paper)), batchKey(batch)].join();
}

function jobOf(batch: Batch, paper: Paper, host: string | null) {
  const job = { pieces: piecesOf(batch), ...jobPaper(paper) };
  return host === null ? job : { ...job, host };
}

function printedDrafts(batch: Batch, manifest: Manifest, stock: string, day: EventDraft['day']): readonly EventDraft[] {
  const onPaper = new Set<string>(manifest.pieces.map(({ id }) => id));
  if (batch.what !== 'card') return tagDrafts(batch, onPaper, stock, day);
  return batch.cards
    .filter(({ content }) => onPaper.has(content.id))
    .map(({ content }) => ({
      kind: 'card-printed' as const,
      subjects: [content.id as Id],
      payload: { revision: content.revision, stock },
      day,
    }));
}

/** Tags that say a price go out of date; what else is printed does not, and nothing is written of it. */
const DATED: readonly string[] = ['ware', 'shed', 'sale'];

function tagDrafts(
  { what, labels }: Exclude<Batch, { what: 'card' }>,
  onPaper: ReadonlySet<string>,
  stock: string,
  day: EventDraft['day'],
): readonly EventDraft[] {
  if (!DATED.includes(what)) return [];
  const printed = new Map(labels.filter(({ id }) => onPaper.has(id)).map((label) => [label.id, label]));
  return [...printed.values()].map(({ id, revision }) => ({
    kind: 'tag-printed' as const,
    subjects: [id as Id],
    payload: { revision, stock, copies: labels.filter((label) => label.id === id).length },
    day,
  }));
}
