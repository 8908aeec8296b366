import { useEffect, useRef, useState } from 'preact/hooks';
import type { Manifest, PieceJob } from '../../../print/index.ts';
import { type EventDraft, type LaidRun, ok, type Problem, type Result, type RunRecord } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { releaseLater } from '../model/files.ts';
import type { PrintAnswer } from '../workers/printMessages.ts';
import { type Batch, batchKey, piecesOf, sayPieces } from './batch.ts';
import { jobPaper, type Paper } from './paper.ts';
import { type Printing, startPrinting } from './printing.ts';
import { runOnScreen } from './runOnScreen.ts';
import { batchOfRun, cameOutDrafts, doneDraft, laidDrafts, laidRun, relaidRun, restFrom, thingsOn } from './runs.ts';
import { shown } from './shown.ts';

/** A made file, and what the log will know of it. */
export interface MadeRun {
  readonly url: string;
  readonly pdf: Blob;
  readonly manifest: Manifest;
  /** Null where nothing is on paper. */
  readonly laid: LaidRun | null;
  /** The last page that was on paper before; the file begins behind it. */
  readonly after: number;
  /** What is written when the printing begins: the run, and the end of the one in whose place it is. */
  readonly opening: readonly EventDraft[];
  /** The rest of a run did not fit its old pages any more. */
  readonly isAnew: boolean;
}

/** A print run from its order to the keeper's word that it is on paper. */
export type Run =
  | { readonly at: 'idle' }
  | { readonly at: 'working'; readonly count: number }
  | ({ readonly at: 'ready' } & MadeRun)
  | ({ readonly at: 'marked'; readonly count: number; readonly toPage: number } & MadeRun)
  | { readonly at: 'failed'; readonly problem: Problem };

export interface RunModel {
  readonly run: Run;
  /** How many things are being marked now; null while none are. */
  readonly marking: number | null;
  make(): void;
  stop(): void;
  /** The keeper opens or saves the file, which is where printing begins: from now on the run can be taken up again. */
  begin(): void;
  /** Writes that the pages up to one came out, and of what stands on them that it is printed; gives how many things that is. */
  mark(toPage: number): Promise<Result<number>>;
}

/** One run at a time; other pieces or another paper put the last one away. With `resumed` it is the rest of that run. */
export function useRun(batch: Batch, paper: Paper, resumed: RunRecord | null = null): RunModel {
  const { site, clock, strip, signs } = useApp();
  const [run, setRun] = useState<Run>({ at: 'idle' });
  const [marking, setMarking] = useState<number | null>(null);
  const isMarking = useRef(false);
  const printing = useRef<Printing | null>(null);
  const opened = useRef<Promise<Result<unknown>> | null>(null);
  /** Which order is wanted: what an older one still brings is not. */
  const turn = useRef(0);
  const order = orderKey(batch, paper);
  const madeFor = useRef(order);

  function stop(): void {
    turn.current++;
    printing.current?.stop();
    printing.current = null;
    opened.current = null;
    runOnScreen.value = null;
    setRun(idle);
  }

  useEffect(() => {
    // The order changes by itself once the cards are marked as printed, which of many is seen before all is written: what
    // lies on the screen then stays.
    if (run.at !== 'idle' && run.at !== 'marked' && !isMarking.current && madeFor.current !== order) stop();
  }, [order]);
  useEffect(
    () => () => {
      turn.current++;
      printing.current?.stop();
      runOnScreen.value = null;
    },
    [],
  );
  const url = run.at === 'ready' ? run.url : null;
  useEffect(() => (url === null ? undefined : () => releaseLater(url)), [url]);

  function make(): void {
    stop();
    madeFor.current = order;
    const mine = turn.current;
    const today = clock.today.value;
    const press = (job: Job): Promise<PrintAnswer> => {
      const started = startPrinting({ ...job, printedOn: today });
      printing.current = started;
      setRun({ at: 'working', count: job.pieces.length });
      return started.answer;
    };
    const job = jobOf(batch, paper, site.facility.value.site.host);
    const restOf = (asks: readonly string[]): Batch =>
      batchOfRun(site.facility.value, batch.what, asks, clock.today.value);
    const made =
      resumed === null ? makeWhole(batch, job, press, today) : makeRest({ batch, job, press, resumed, restOf, today });
    void made.then((answer) => {
      if (turn.current !== mine) return;
      setRun('problem' in answer ? { at: 'failed', problem: answer.problem } : { at: 'ready', ...answer });
    });
  }

  function begin(): void {
    if (run.at !== 'ready' || opened.current !== null) return;
    runOnScreen.value = run.laid?.run ?? null;
    if (run.opening.length > 0) opened.current = site.write(run.opening);
  }

  async function mark(toPage: number): Promise<Result<number>> {
    // A second touch while the first is written would mark all of it twice.
    if (run.at !== 'ready' || isMarking.current) return ok(0);
    const count = run.laid === null ? run.manifest.pieces.length : thingsOn(run.laid, run.after, toPage);
    isMarking.current = true;
    setMarking(count);
    const marked = await writeMarks(run, toPage, count);
    isMarking.current = false;
    setMarking(null);
    return marked;
  }

  async function writeMarks(
    run: Extract<Run, { at: 'ready' }>,
    toPage: number,
    count: number,
  ): Promise<Result<number>> {
    const begun = await opened.current;
    await shown(count);
    const opening = begun?.ok === true ? [] : run.opening;
    const out = run.laid === null ? [] : cameOutDrafts(run.laid, { after: run.after, toPage, day: clock.today.value });
    const written = await site.write([...opening, ...out]);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written;
    const name = sayPieces(batch.what, count);
    strip.add({ subject: null, name, said: 'printed', result: 'accepted', problem: null, events: written.value });
    setRun({ ...run, at: 'marked', count, toPage });
    return ok(count);
  }

  return { run, marking, make, stop, begin, mark };
}

type Job = Omit<PieceJob, 'printedOn'>;
type Press = (job: Job) => Promise<PrintAnswer>;
type Made = MadeRun | { readonly problem: Problem };

const idle: Run = { at: 'idle' };
async function makeWhole(batch: Batch, job: Job, press: Press, day: EventDraft['day']): Promise<Made> {
  const answer = await press(job);
  if (answer.kind === 'failed') return answer;
  const laid = laidRun(batch, answer.manifest, { run: runName(), ...paperOf(job) });
  return madeOf(answer, { laid, after: 0, opening: laid === null ? [] : laidDrafts(laid, day), isAnew: false });
}

interface Rest {
  readonly batch: Batch;
  readonly job: Job;
  readonly press: Press;
  readonly resumed: RunRecord;
  readonly restOf: (asks: readonly string[]) => Batch;
  readonly today: EventDraft['day'];
}

/** The pages that are left, as they are in the whole run; where pieces grew or are gone, the rest is laid out anew. */
async function makeRest({ batch, job, press, resumed, restOf, today }: Rest): Promise<Made> {
  const { day: _day, keeper: _keeper, printedTo, ...old } = resumed;
  const { first, order, flip, cutMarks, pages } = old;
  const from = restFrom(resumed);
  const answer = await press({ ...job, first, order, flip, cutMarks, pages: [from, pages] });
  if (answer.kind === 'failed') return answer;
  const again = relaidRun(old, batch, answer.manifest);
  if (again !== null) {
    return madeOf(answer, { laid: again, after: from - 1, opening: laidDrafts(again, today, old), isAnew: false });
  }
  const rest = restOf(old.ids.filter((_ask, at) => (old.lastPages[at] ?? 0) > printedTo));
  const made = await makeWhole(rest, { ...job, pieces: piecesOf(rest), first: 1, order, flip, cutMarks }, press, today);
  if ('problem' in made) return made;
  return { ...made, opening: [...made.opening, doneDraft(resumed, today)], isAnew: true };
}

function madeOf(
  { pdf, manifest }: Extract<PrintAnswer, { kind: 'printed' }>,
  more: Pick<MadeRun, 'laid' | 'after' | 'opening' | 'isAnew'>,
): MadeRun {
  const blob = new Blob([pdf], { type: 'application/pdf' });
  return { pdf: blob, url: URL.createObjectURL(blob), manifest, ...more };
}

function paperOf({
  stock,
  printer,
  first,
  order,
  flip,
  cutMarks,
  pages,
}: Job): Omit<Parameters<typeof laidRun>[2], 'run'> {
  return {
    stock: stock.id,
    ...(printer !== undefined && { printer: printer.id }),
    // Pages that were chosen from a longer run are a run of their own here, and begin with a whole sheet.
    ...(first !== undefined && { first: pages === undefined || pages[0] === 1 ? first : 1 }),
    ...(order !== undefined && { order }),
    ...(flip !== undefined && { flip }),
    ...(cutMarks === true && { cutMarks }),
  };
}

const NAME_BYTES = 10;

/** A name that no other device gives to a run. */
function runName(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(NAME_BYTES));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function orderKey(batch: Batch, paper: Paper): string {
  return [JSON.stringify(jobPaper(paper)), batchKey(batch)].join();
}

function jobOf(batch: Batch, paper: Paper, host: string | null): Job {
  const job = { pieces: piecesOf(batch), ...jobPaper(paper) };
  return host === null ? job : { ...job, host };
}
