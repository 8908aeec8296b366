import { useState } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { LeftOutList } from './LeftOutList.tsx';
import { PdfPreview } from './PdfPreview.tsx';
import type { Paper } from './paper.ts';
import type { PressCard } from './selection.ts';
import { type Run, useRun } from './useRun.ts';

interface RunPanelProps {
  readonly cards: readonly PressCard[];
  readonly paper: Paper;
  readonly printed: (pieces: number) => void;
}

/** Makes the PDF, shows it, and asks whether it is on paper; no card counts as printed before that is said. */
export function RunPanel({ cards, paper, printed }: RunPanelProps) {
  const { run, make, stop, mark } = useRun(cards, paper);
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
      {run.at === 'idle' || run.at === 'failed' ? <MakeButton count={cards.length} make={make} /> : null}
      <div aria-live="polite">
        <RunState run={run} stop={stop} />
      </div>
      {run.at === 'ready' && run.manifest.pieces.length > 0 ? (
        <div class="slotted">
          <p>
            <strong>Slotted?</strong> Once the cards are printed and in their tubs, say so: they then count as up to
            date.
          </p>
          <button type="button" class="primary" onClick={() => void sayPrinted()}>
            These are printed
          </button>
        </div>
      ) : null}
      {failed === null ? null : <ProblemLine problem={failed} />}
      {run.at === 'ready' || run.at === 'marked' ? <PdfPreview url={run.url} /> : null}
      {run.at === 'marked' ? (
        <button type="button" class="secondary" onClick={stop}>
          Next run
        </button>
      ) : null}
    </section>
  );
}

function MakeButton({ count, make }: { readonly count: number; readonly make: () => void }) {
  if (count === 0) return <p class="done-line">No card is out of date: nothing to print in this choice.</p>;
  return (
    <button type="button" class="primary" onClick={make}>
      Make the PDF of {count} {count === 1 ? 'card' : 'cards'}
    </button>
  );
}

function RunState({ run, stop }: { readonly run: Run; readonly stop: () => void }) {
  switch (run.at) {
    case 'idle':
      return null;
    case 'working':
      return (
        <div class="run-working">
          <label>
            Setting {run.count} {run.count === 1 ? 'card' : 'cards'}…
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
          <Made run={run} />
          <LeftOutList left={run.manifest.left} />
        </>
      );
    case 'marked':
      return (
        <p class="done-line">
          {run.count} {run.count === 1 ? 'card is' : 'cards are'} marked as printed. Undo stands with the last entries.
        </p>
      );
    default:
      return run satisfies never;
  }
}

function Made({ run: { manifest } }: { readonly run: Extract<Run, { at: 'ready' }> }) {
  const cards = new Set(manifest.pieces.map(({ id }) => id)).size;
  const backs = manifest.pieces.filter(({ back }) => back).length;
  if (cards === 0) return <p>Nothing could be printed.</p>;
  return (
    <div class="made">
      <p class="made-figures">
        <strong>{cards}</strong> {cards === 1 ? 'card' : 'cards'} on <strong>{manifest.pages.length}</strong>{' '}
        {manifest.pages.length === 1 ? 'page' : 'pages'}
        {backs === 0 ? '' : `, ${backs} with a second face`}
      </p>
      <p class="at-100">Print at 100 %, never “fit to page”: the code and the labels must keep their size.</p>
    </div>
  );
}
