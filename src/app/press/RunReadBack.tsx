import type { Manifest, ReadFault } from '../../../print/index.ts';
import { nameOf, type Problem, parseId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { sayPieces, type What } from './batch.ts';
import type { Paper } from './paper.ts';
import { ReadBackLine } from './ReadBackLine.tsx';
import { documentFault, faultProblem } from './readBackWords.ts';

interface RunReadBackProps {
  readonly what: What;
  readonly pdf: Blob;
  readonly manifest: Manifest;
  /** The last page of the run that is not in this file, but before it. */
  readonly after: number;
  readonly paper: Paper;
}

/** Whether every code of a run reads, each fault with the name of whose piece it is and the label that it lies on. */
export function RunReadBack({ what, pdf, manifest, after, paper: { stock, printer } }: RunReadBackProps) {
  const { site } = useApp();
  function say(fault: ReadFault): Problem {
    if (fault.what === 'line') return documentFault(fault);
    const read = parseId(fault.piece.id.split('/')[0] ?? '');
    const name = read.ok ? nameOf(site.facility.value, read.value.id) : fault.piece.id;
    return faultProblem(fault, { of: what, name, stock, firstPage: after + 1 });
  }
  const pieces = sayPieces(what, manifest.pieces.length);
  return <ReadBackLine pdf={pdf} manifest={manifest} printer={printer} what={pieces} say={say} />;
}
