import { useMemo } from 'preact/hooks';
import { OFFICE_600 } from '../../../print/qr/profiles.ts';
import { findPrinter, findStock } from '../../../print/stocks/own.ts';
import type { PaperRecord } from '../../core/index.ts';
import { ok, problem, type Result, type RunRecord, sayNumber } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { What } from './batch.ts';
import { laidPaper, nextFirst, type Paper, rememberedPaper, rememberPaper } from './paper.ts';
import { RunPanel } from './RunPanel.tsx';
import { type OpenRun, openRuns, restFrom, sayRun } from './runs.ts';

/** The rest of a run that was begun, on the paper that it was laid out for. */
export function ResumePress({ run: name }: { readonly run: string }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  // Once it is all on paper it is no longer among the unfinished; what lies on the screen then stays.
  const run = useMemo(() => openRuns(facility, clock.today.value).find(({ record }) => record.run === name), [name]);
  const paper = run === undefined ? NO_SUCH : paperOf(run.what, run.record, facility.site.paper);
  if (run === undefined || !paper.ok)
    return <ProblemLine problem={paper.ok ? problem('run-unknown', {}) : paper.problem} />;
  return <Rest run={run} paper={paper.value} />;
}

const NO_SUCH: Result<Paper> = { ok: false, problem: problem('run-unknown', {}) };

function Rest({ run, paper }: { readonly run: OpenRun; readonly paper: Paper }) {
  const { record, what, batch, progress } = run;
  function printed(labels: number): void {
    // Sheets before these are full, so the rest begins on a fresh one unless nothing was printed yet.
    const first = nextFirst({ ...paper, pages: null, first: restFrom(record) === 1 ? paper.first : 1 }, labels);
    const remembered = rememberedPaper(what);
    if (remembered.stock === paper.stock.id) rememberPaper(what, { ...remembered, first });
  }
  const { changed } = progress;
  return (
    <div class="press-body">
      <div class="resumed">
        <p>
          <strong>{sayRun(run)}</strong>
        </p>
        <p>
          Put {paper.stock.name} into the printer, beginning with an unused sheet
          {restFrom(record) === 1 && paper.first > 1 ? ` from label ${paper.first} on` : ''}.
        </p>
        {changed.length > 0 ? (
          <p>{sayNumber(changed.length)} of the rest say something else by now, and come out as they are today.</p>
        ) : null}
      </div>
      <RunPanel batch={batch} paper={paper} printed={printed} resumed={record} />
    </div>
  );
}

function paperOf(what: What, record: RunRecord, own: PaperRecord): Result<Paper> {
  const stock = findStock(record.stock, own);
  if (!stock.ok) return stock;
  const printer = record.printer === undefined ? ok(OFFICE_600) : findPrinter(record.printer, own);
  if (!printer.ok) return printer;
  const { order = 'walk', first = 1, flip = null, cutMarks = false } = record;
  const kept = { stock: record.stock, printer: printer.value.id, order, first, flip, cutMarks };
  return ok(laidPaper(what, kept, null, own));
}
