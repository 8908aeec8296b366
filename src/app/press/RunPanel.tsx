import { useState } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type Batch, sayPieces, WHAT_WORDS, type What } from './batch.ts';
import { LeftOutList } from './LeftOutList.tsx';
import { PdfPreview } from './PdfPreview.tsx';
import type { Paper } from './paper.ts';
import { type Run, useRun } from './useRun.ts';

interface RunPanelProps {
  readonly batch: Batch;
  readonly paper: Paper;
  readonly printed: (pieces: number) => void;
}

/** Makes the PDF, shows it, and asks whether it is on paper; no card counts as printed before that is said. */
export function RunPanel({ batch, paper, printed }: RunPanelProps) {
  const { what } = batch;
  const count = batch.what === 'card' ? batch.cards.length : batch.labels.length;
  const { run, make, stop, mark } = useRun(batch, paper);
  const [failed, setFailed] = useState<Problem | null>(null);
  async function sayPrinted(): Promise<void> {
    const pieces = run.at === 'ready' ? run.manifest.pieces.length : 0;
    const marked = await mark();
    setFailed(marked.ok ? null : marked.problem);
    if (marked.ok) printed(pieces);
  }
  return (
    <section class="run" aria-labelledby="run-title">
      <h2 id="run-title">Run</h2>
      {run.at === 'idle' || run.at === 'failed' ? <MakeButton what={what} count={count} make={make} /> : null}
      <div aria-live="polite">
        <RunState what={what} run={run} stop={stop} />
      </div>
      {run.at === 'ready' && run.manifest.pieces.length > 0 ? (
        <div class="slotted">
          <SlottedWords what={what} />
          <button type="button" class="primary" onClick={() => void sayPrinted()}>
            These are printed
          </button>
        </div>
      ) : null}
      {failed === null ? null : <ProblemLine problem={failed} />}
      {run.at === 'ready' || run.at === 'marked' ? <PdfPreview url={run.url} what={what} /> : null}
      {run.at === 'marked' ? (
        <button type="button" class="secondary" onClick={stop}>
          Next run
        </button>
      ) : null}
    </section>
  );
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
}

function MakeButton({ what, count, make }: MakeButtonProps) {
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
  readonly stop: () => void;
}

function RunState({ what, run, stop }: RunStateProps) {
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
        </>
      );
    case 'marked':
      return (
        <p class="done-line">
          {sayPieces(what, run.count)} {run.count === 1 ? 'is' : 'are'} marked as printed.
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

function Made({ what, run: { manifest } }: MadeProps) {
  const backs = manifest.pieces.filter(({ back }) => back).length;
  const count = manifest.pieces.length - backs;
  if (count === 0) return <p>Nothing could be printed.</p>;
  const { one, many } = WHAT_WORDS[what];
  return (
    <div class="made">
      <p class="made-figures">
        <strong>{count}</strong> {count === 1 ? one : many} on <strong>{manifest.pages.length}</strong>{' '}
        {manifest.pages.length === 1 ? 'page' : 'pages'}
        {backs === 0 ? '' : `, ${backs} with a second face`}
      </p>
      <p class="at-100">Print at 100 %, never “fit to page”: the code and the labels must keep their size.</p>
    </div>
  );
}
