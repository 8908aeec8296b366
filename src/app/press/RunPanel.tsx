import { useState } from 'preact/hooks';
import { type Problem, type RunRecord, sayNumber } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type Batch, sayPieces, WHAT_WORDS, type What } from './batch.ts';
import { CameOut } from './CameOut.tsx';
import { LeftOutList, WarningList } from './LeftOutList.tsx';
import { PdfPreview } from './PdfPreview.tsx';
import type { Paper } from './paper.ts';
import { RunReadBack } from './RunReadBack.tsx';
import { restFrom, sayPages } from './runs.ts';
import { type MadeRun, type Run, useRun } from './useRun.ts';

interface RunPanelProps {
  readonly batch: Batch;
  readonly paper: Paper;
  /** So many labels are used up now. */
  readonly printed: (pieces: number) => void;
  /** The run of which the rest is printed. */
  readonly resumed?: RunRecord;
}

/** Makes the PDF, shows it, and asks whether it is on paper; no card counts as printed before that is said. */
export function RunPanel({ batch, paper, printed, resumed }: RunPanelProps) {
  const { what } = batch;
  const count = batch.what === 'card' ? batch.cards.length : batch.labels.length;
  const { run, marking, make, stop, begin, mark } = useRun(batch, paper, resumed);
  const [failed, setFailed] = useState<Problem | null>(null);
  async function sayPrinted(toPage: number): Promise<void> {
    const labels = run.at === 'ready' ? labelsUsed(run, toPage) : 0;
    const marked = await mark(toPage);
    setFailed(marked.ok ? null : marked.problem);
    if (marked.ok) printed(labels);
  }
  return (
    <section class="run" aria-labelledby="run-title">
      <h2 id="run-title">Run</h2>
      {run.at === 'idle' || run.at === 'failed' ? (
        <MakeButton what={what} count={count} make={make} rest={resumed} />
      ) : null}
      <div aria-live="polite">
        <RunState what={what} run={run} paper={paper} stop={stop} />
      </div>
      {run.at === 'ready' && run.manifest.pieces.length > 0 ? (
        <div class="slotted">
          <SlottedWords what={what} />
          <CameOut
            after={run.after}
            pages={run.after + run.manifest.pages.length}
            writing={marking === null ? null : sayPieces(what, marking)}
            say={(toPage) => void sayPrinted(toPage)}
          />
        </div>
      ) : null}
      {failed === null ? null : <ProblemLine problem={failed} />}
      {(run.at === 'ready' || run.at === 'marked') && run.manifest.pieces.length > 0 ? (
        <PdfPreview url={run.url} name={WHAT_WORDS[what].many} begin={begin} />
      ) : null}
      {run.at === 'marked' ? (
        <button type="button" class="secondary" onClick={stop}>
          Next run
        </button>
      ) : null}
    </section>
  );
}

/** Second faces that lie on the back of the first take no label of their own. */
function labelsUsed({ manifest, laid, after }: MadeRun, toPage: number): number {
  return manifest.pieces.filter(({ page, back }) => page + after <= toPage && !(back && laid?.flip !== undefined))
    .length;
}

function SlottedWords({ what }: { readonly what: What }) {
  if (what !== 'card')
    return (
      <p>
        <strong>On paper?</strong> Say so once they are printed: the next run then begins at the first free label.
      </p>
    );
  return (
    <p>
      <strong>Slotted?</strong> Once the cards are printed and in their tubs, say so: they then count as up to date.
    </p>
  );
}

interface MakeButtonProps {
  readonly what: What;
  readonly count: number;
  readonly make: () => void;
  readonly rest: RunRecord | undefined;
}

function MakeButton({ what, count, make, rest }: MakeButtonProps) {
  if (rest !== undefined && count > 0)
    return (
      <button type="button" class="primary" onClick={make}>
        Make the PDF of {sayPages(restFrom(rest), rest.pages)}
      </button>
    );
  if (count === 0) return <p class="done-line">{WHAT_WORDS[what].none}</p>;
  return (
    <button type="button" class="primary" onClick={make}>
      Make the PDF of {sayPieces(what, count)}
    </button>
  );
}

interface RunStateProps {
  readonly what: What;
  readonly run: Run;
  readonly paper: Paper;
  readonly stop: () => void;
}

function RunState({ what, run, paper, stop }: RunStateProps) {
  switch (run.at) {
    case 'idle':
      return null;
    case 'working':
      return (
        <div class="run-working">
          <label>
            Setting {sayPieces(what, run.count)}…
            <progress />
          </label>
          <button type="button" class="secondary" onClick={stop}>
            Stop
          </button>
        </div>
      );
    case 'failed':
      return <ProblemLine problem={run.problem} />;
    case 'ready':
      return (
        <>
          <Made what={what} run={run} />
          <LeftOutList what={what} left={run.manifest.left} />
          <WarningList warnings={run.manifest.warnings ?? []} />
          {run.manifest.pieces.length > 0 ? (
            <RunReadBack what={what} pdf={run.pdf} manifest={run.manifest} after={run.after} paper={paper} />
          ) : null}
        </>
      );
    case 'marked':
      return (
        <p class="done-line">
          {sayPieces(what, run.count)} {run.count === 1 ? 'is' : 'are'} marked as printed.
          {run.laid !== null && run.toPage < run.laid.pages
            ? ` Left: ${sayPages(run.toPage + 1, run.laid.pages)}. The run stands on top of the Print screen until all of it is on paper.`
            : null}
          {what === 'card' ? ' Undo stands with the last entries.' : null}
        </p>
      );
    default:
      return run satisfies never;
  }
}

interface MadeProps {
  readonly what: What;
  readonly run: Extract<Run, { at: 'ready' }>;
}

function Made({ what, run: { manifest, isAnew } }: MadeProps) {
  const backs = manifest.pieces.filter(({ back }) => back).length;
  const count = manifest.pieces.length - backs;
  if (count === 0) return <p>Nothing could be printed.</p>;
  const { one, many } = WHAT_WORDS[what];
  return (
    <div class="made">
      <p class="made-figures">
        <strong>{sayNumber(count)}</strong> {count === 1 ? one : many} on{' '}
        <strong>{sayNumber(manifest.pages.length)}</strong> {manifest.pages.length === 1 ? 'page' : 'pages'}
        {backs === 0 ? '' : `, ${sayNumber(backs)} with a second face`}
      </p>
      {isAnew ? (
        <p>Some pieces take more or less room than when the run was laid out: the rest of it is laid out anew.</p>
      ) : null}
      <p class="at-100">Print at 100 %, never “fit to page”: the code and the labels must keep their size.</p>
    </div>
  );
}
