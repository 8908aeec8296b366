import type { Manifest, ReadFault } from '../../../print/index.ts';
import type { Stock } from '../../../print/stocks/stock.ts';
import { nameOf, parseId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { sayPieces, type What } from './batch.ts';
import type { Paper } from './paper.ts';
import { faultProblem, sayReadBack } from './readBackWords.ts';
import { type ReadBackModel, useReadBack } from './useReadBack.ts';

interface ReadBackLineProps {
  readonly what: What;
  readonly pdf: Blob;
  readonly manifest: Manifest;
  /** The last page of the run that is not in this file, but before it. */
  readonly after: number;
  readonly paper: Paper;
}

/** Whether every code of the made file reads: from what the file draws, before any paper is spent. */
export function ReadBackLine({ what, pdf, manifest, after, paper }: ReadBackLineProps) {
  const model = useReadBack(pdf, manifest, paper.printer);
  const { check } = model;
  return (
    <div class="read-back" aria-live="polite">
      {check.at === 'read' ? (
        <>
          <p class={check.read.faults.length === 0 ? 'done-line' : 'read-back-bad'}>{sayReadBack(check.read)}</p>
          <Faults what={what} faults={check.read.faults} after={after} stock={paper.stock} />
        </>
      ) : (
        <Unread model={model} what={what} count={manifest.pieces.length} />
      )}
    </div>
  );
}

interface UnreadProps {
  readonly model: ReadBackModel;
  readonly what: What;
  readonly count: number;
}

function Unread({ model: { check, start, stop }, what, count }: UnreadProps) {
  if (check.at === 'working')
    return (
      <div class="run-working">
        <label>
          Reading {sayPieces(what, count)} back…
          <progress max={count} value={check.done} />
        </label>
        <button type="button" class="secondary" onClick={stop}>
          Stop
        </button>
      </div>
    );
  return (
    <>
      {check.at === 'failed' ? <ProblemLine problem={check.problem} /> : <p>The codes are not checked.</p>}
      <button type="button" class="secondary" onClick={start}>
        Check the codes
      </button>
    </>
  );
}

/** The list stays readable: a page full of faults has one cause. */
const MOST_SAID = 20;

interface FaultsProps {
  readonly what: What;
  readonly faults: readonly ReadFault[];
  readonly after: number;
  readonly stock: Stock;
}

function Faults({ what, faults, after, stock }: FaultsProps) {
  const { site } = useApp();
  if (faults.length === 0) return null;
  const said = faults.slice(0, MOST_SAID).map((fault) => {
    const read = parseId(fault.piece.id.split('/')[0] ?? '');
    const name = read.ok ? nameOf(site.facility.value, read.value.id) : fault.piece.id;
    return faultProblem(fault, { of: what, name, stock, firstPage: after + 1 });
  });
  return (
    <div class="left-out" role="alert">
      <ul>
        {said.map(({ message }) => (
          <li key={message}>{message}</li>
        ))}
      </ul>
      {faults.length > said.length ? <p>And {faults.length - said.length} more.</p> : null}
      <p>{said[0]?.remedy}</p>
    </div>
  );
}
