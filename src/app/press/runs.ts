// Not by print's face: that would bring the PDF maker onto the page.
import type { Manifest } from '../../../print/index.ts';
import { type RunProgress, runProgress } from '../../../print/run/progress.ts';
import {
  askedSheet,
  asksOf,
  cardContent,
  type Day,
  type EventDraft,
  type Facility,
  type Id,
  isCardStale,
  type LaidRun,
  MOST_RUN_PAGES,
  partsOfRun,
  type RunRecord,
  sayNumber,
} from '../../core/index.ts';
import { type Batch, sayPieces, WHAT_WORDS, WHATS, type What } from './batch.ts';
import type { PressCard } from './selection.ts';

/** What a run is printed on, and how. */
export type RunPaper = Pick<LaidRun, 'run' | 'stock' | 'printer' | 'first' | 'order' | 'flip' | 'cutMarks'>;

interface Asked {
  readonly ask: string;
  readonly key: string;
  readonly revision: string;
}

/** The run of a made file of all its pages; null for one of which nothing is on paper, or that is longer than the log knows pages. */
export function laidRun(batch: Batch, manifest: Pick<Manifest, 'pages' | 'pieces'>, paper: RunPaper): LaidRun | null {
  const last = lastPages(batch, manifest.pieces, 1);
  const asked = askedOf(batch).filter(({ ask }) => last.has(ask));
  const pages = manifest.pages.length;
  if (asked.length === 0 || pages > MOST_RUN_PAGES) return null;
  return {
    ...paper,
    what: batch.what,
    ids: asked.map(({ ask }) => ask),
    revisions: asked.map(({ revision }) => revision),
    lastPages: asked.map(({ ask }) => last.get(ask) ?? pages),
    pages,
  };
}

/**
 * The same run once its pages from `manifest.part` on are made again: with the words that they now have. Null where what is on
 * those pages is not what was laid there, since some piece takes more or less room now.
 */
export function relaidRun(run: LaidRun, batch: Batch, manifest: Pick<Manifest, 'part' | 'pieces'>): LaidRun | null {
  const from = manifest.part?.from ?? 1;
  if (manifest.part !== undefined && manifest.part.of !== run.pages) return null;
  const last = lastPages(batch, manifest.pieces, from);
  const now = new Map(askedOf(batch).map(({ ask, revision }) => [ask, revision]));
  const isRest = (at: number) => (run.lastPages[at] ?? 0) >= from;
  if (run.ids.some((ask, at) => isRest(at) && last.get(ask) !== run.lastPages[at])) return null;
  const revisions = run.ids.map((ask, at) => (isRest(at) && now.get(ask)) || (run.revisions[at] ?? ''));
  return { ...run, revisions };
}

/** By the word that asks for it: the page of the run on which the last face of each thing stands. */
function lastPages(batch: Batch, pieces: Manifest['pieces'], from: number): ReadonlyMap<string, number> {
  const asks = new Map(askedOf(batch).map(({ ask, key }) => [key, ask]));
  const things =
    batch.what === 'card'
      ? batch.cards.map(({ content: { id } }) => ({ id, key: id as string }))
      : batch.labels.map(({ id, ask }) => ({ id, key: ask ?? id }));
  const last = new Map<string, number>();
  let at = 0;
  for (const { id, key } of things) {
    // The faces of a thing follow each other; what was left out, or stands on another page of the run, has none here.
    for (let face = 0; pieces[at]?.id === id && (face === 0 || pieces[at]?.back === true); face++, at++) {
      const ask = asks.get(key) ?? key;
      last.set(ask, Math.max(last.get(ask) ?? 0, (pieces[at]?.page ?? 1) + from - 1));
    }
  }
  return last;
}

function askedOf(batch: Batch): readonly Asked[] {
  if (batch.what !== 'card') return asksOf(batch.what, batch.labels);
  return batch.cards.map(({ content: { id, revision } }) => ({ ask: id, key: id, revision }));
}

/** What the pieces of a run say today; what is gone from the site is missing. */
export function batchOfRun(facility: Facility, what: What, asks: readonly string[], today: Day): Batch {
  if (what !== 'card') return { what, labels: askedSheet(facility, what, asks.join(), today).labels };
  const cards = asks.flatMap((id): PressCard[] => {
    const animal = facility.animals.get(id as Id);
    if (animal === undefined || animal.left !== null) return [];
    const content = cardContent(facility, animal, today);
    return [{ animal, content, stale: isCardStale(animal, content), rack: null }];
  });
  return { what, cards };
}

/** A run that can be taken up again: its record, what its pieces say now, and what is left to do. */
export interface OpenRun {
  readonly record: RunRecord;
  readonly what: What;
  readonly batch: Batch;
  readonly progress: RunProgress;
}

/** The runs that are not all on paper, the latest first; kinds of a newer program are left to it. */
export function openRuns(facility: Facility, today: Day): readonly OpenRun[] {
  return facility.site.paper.runs.toReversed().flatMap((record) => {
    const what = WHATS.find((one) => one === record.what);
    return what === undefined ? [] : [openRun(facility, record, what, today)];
  });
}

function openRun(facility: Facility, record: RunRecord, what: What, today: Day): OpenRun {
  const batch = batchOfRun(facility, what, record.ids, today);
  const onPage = Array.from({ length: record.pages }, (): string[] => []);
  for (const [at, ask] of record.ids.entries()) onPage[(record.lastPages[at] ?? 1) - 1]?.push(ask);
  const laid = new Map(record.ids.map((ask, at) => [ask, record.revisions[at] ?? '']));
  const now = new Map(askedOf(batch).map(({ ask, revision }) => [ask, revision]));
  const plan = { pages: record.pages, onPage, left: [] };
  return { record, what, batch, progress: runProgress(plan, record.printedTo, laid, now) };
}

/** `Tub cards on a4-85x54: printed to page 7 of 60; 3 cards have changed since`. */
export function sayRun({ record: { stock, pages, printedTo }, what, progress: { stale } }: OpenRun): string {
  const [to, of] = [sayNumber(printedTo), sayNumber(pages)];
  const far = printedTo === 0 ? `no page of ${of} printed yet` : `printed to page ${to} of ${of}`;
  const { length } = stale;
  const changed = length === 0 ? '' : `; ${sayPieces(what, length)} ${length === 1 ? 'has' : 'have'} changed since`;
  return `${WHAT_WORDS[what].name} on ${stock}: ${far}${changed}`;
}

/** The page that the rest of a run begins with. A sheet with a back is printed whole again, or its back would come out as a front. */
export function restFrom({ printedTo, flip }: Pick<RunRecord, 'printedTo' | 'flip'>): number {
  return (flip === undefined ? printedTo : printedTo - (printedTo % 2)) + 1;
}

/** `pages 8 to 60`, or the one page that is left. */
export function sayPages(from: number, to: number): string {
  return from === to ? `page ${sayNumber(to)}` : `pages ${sayNumber(from)} to ${sayNumber(to)}`;
}

/** That a run was laid, in as many parts as it needs; of one that is laid again only the parts that say something new. */
export function laidDrafts(run: LaidRun, day: Day, before: LaidRun | null = null): readonly EventDraft[] {
  const known = before === null ? [] : partsOfRun(before);
  return partsOfRun(run).flatMap((payload, at): EventDraft[] => {
    const isNew = payload.revisions.some((revision, piece) => revision !== known[at]?.revisions[piece]);
    return isNew ? [{ kind: 'run-laid', subjects: [], payload, day }] : [];
  });
}

/** How far a run was printed before and now. */
export interface CameOut {
  /** The last page that was on paper already; 0 for none. */
  readonly after: number;
  readonly toPage: number;
  readonly day: Day;
}

/**
 * Rule PRINT-RESUME: that the pages of a run up to one came out. Cards, and tags that go out of date, are marked as printed once
 * the last of their faces did; nothing is marked that did not come out.
 */
export function cameOutDrafts(run: LaidRun, { after, toPage, day }: CameOut): readonly EventDraft[] {
  const printed: EventDraft = { kind: 'run-printed', subjects: [], payload: { run: run.run, toPage }, day };
  return [printed, ...markedBy(run, { after, toPage, day })];
}

/** The marks alone: how many cards or tags count as printed then. */
export function markedBy(run: LaidRun, { after, toPage, day }: CameOut): readonly EventDraft[] {
  return run.ids.flatMap((ask, at): EventDraft[] => {
    const [last = 0, revision = ''] = [run.lastPages[at], run.revisions[at]];
    return last > after && last <= toPage ? markOf(run, ask, revision, day) : [];
  });
}

/** Tags that say a price go out of date; what else is printed does not, and nothing is written of it. */
const DATED: readonly string[] = ['ware', 'shed', 'sale'];

function markOf({ what, stock }: LaidRun, ask: string, revision: string, day: Day): EventDraft[] {
  const [id = '', copies] = ask.split('/');
  const subjects = [id as Id];
  if (what === 'card') return [{ kind: 'card-printed', subjects, payload: { revision, stock }, day }];
  if (!DATED.includes(what)) return [];
  return [{ kind: 'tag-printed', subjects, payload: { revision, stock, copies: Number(copies ?? 1) }, day }];
}

/** How many things of a run lie on its pages after one and up to another. */
export function thingsOn({ lastPages }: LaidRun, after: number, toPage: number): number {
  return lastPages.filter((last) => last > after && last <= toPage).length;
}

/** That the rest of a run is not wanted any more. */
export function doneDraft({ run, printedTo }: Pick<RunRecord, 'run' | 'printedTo'>, day: Day): EventDraft {
  return { kind: 'run-printed', subjects: [], payload: { run, toPage: printedTo, done: true }, day };
}
