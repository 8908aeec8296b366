import './press.css';
import type { Manifest, PrinterProfile, ReadFault } from '../../../print/index.ts';
import type { Problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { sayReadBack } from './readBackWords.ts';
import { type ReadBackModel, useReadBack } from './useReadBack.ts';

interface ReadBackLineProps {
  readonly pdf: Blob;
  readonly manifest: Manifest;
  readonly printer: PrinterProfile;
  /** What is read, as a sentence says it: `12 cards`. */
  readonly what: string;
  readonly say: (fault: ReadFault) => Problem;
}

/** Whether every code and line of the made file reads: from what the file draws, before any paper is spent. */
export function ReadBackLine({ pdf, manifest, printer, what, say }: ReadBackLineProps) {
  const model = useReadBack(pdf, manifest, printer);
  const { check } = model;
  return (
    <div class="read-back" aria-live="polite">
      {check.at === 'read' ? (
        <>
          <p class={check.read.faults.length === 0 ? 'done-line' : 'read-back-bad'}>{sayReadBack(check.read)}</p>
          <Faults faults={check.read.faults} say={say} />
        </>
      ) : (
        <Unread model={model} what={what} count={manifest.pieces.length} />
      )}
    </div>
  );
}

interface UnreadProps {
  readonly model: ReadBackModel;
  readonly what: string;
  readonly count: number;
}

function Unread({ model: { check, start, stop }, what, count }: UnreadProps) {
  if (check.at === 'working')
    return (
      <div class="run-working">
        <label>
          Reading {what} back…
          <progress {...(count === 0 ? {} : { max: count, value: check.done })} />
        </label>
        <button type="button" class="secondary" onClick={stop}>
          Stop
        </button>
      </div>
    );
  return (
    <>
      {check.at === 'failed' ? <ProblemLine problem={check.problem} /> : <p>Not checked.</p>}
      <button type="button" class="secondary" onClick={start}>
        Check it
      </button>
    </>
  );
}

/** The list stays readable: a page full of faults has one cause. */
const MOST_SAID = 20;

function Faults({ faults, say }: { readonly faults: readonly ReadFault[] } & Pick<ReadBackLineProps, 'say'>) {
  if (faults.length === 0) return null;
  const said = faults.slice(0, MOST_SAID).map(say);
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
