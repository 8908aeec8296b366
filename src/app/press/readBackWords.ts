import type { CodeFault, ReadBack, ReadFault } from '../../../print/index.ts';
import { labelBox, labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';
import { type Problem, problem, sayNumber } from '../../core/index.ts';
import { WHAT_WORDS, type What } from './batch.ts';

/** `600 of 600 read back`, with the bar codes and the lines where there are any. */
export function sayReadBack({ codes, bars, lines, faults }: ReadBack): string {
  const of = (all: number, what: ReadFault['what'], words: string): readonly string[] => {
    const bad = faults.filter((fault) => fault.what === what).length;
    return all === 0 ? [] : [`${sayNumber(all - bad)} of ${sayNumber(all)}${words}`];
  };
  // Where nothing but codes is read, everybody knows what is counted.
  const codeWords = lines === 0 ? '' : codes === 1 ? ' code' : ' codes';
  const said = [...of(codes, 'code', codeWords), ...of(bars, 'bar', ' bar codes'), ...of(lines, 'line', ' lines')];
  return said.length === 0 ? 'Nothing to read back.' : `${said.join(', ')} read back.`;
}

/** What did not read on pages that are no labels, and what to do. */
export function documentFault(fault: ReadFault): Problem {
  const { read } = fault;
  if (fault.what === 'line') {
    const { page, line } = fault;
    return read === null ? problem('line-unread', { page, line }) : problem('line-misread', { page, line, read });
  }
  const { page } = fault.piece;
  return read === null ? problem('code-unreadable', { page }) : problem('code-misread', { page, read });
}

/** The piece that did not read, where it lies, and what to do. `page` counts in the run, of which a file may be a part. */
export function faultProblem(
  { piece, what, read }: CodeFault,
  { of, name, stock, firstPage }: { of: What; name: string; stock: Stock; firstPage: number },
): Problem {
  const where = {
    what: what === 'bar' ? 'bar code' : 'code',
    piece: `${WHAT_WORDS[of].one} ${name}`.trim(),
    page: piece.page + firstPage - 1,
    label: labelAt(stock, piece.boxMm),
  };
  return read === null ? problem('piece-unreadable', where) : problem('piece-misread', { ...where, read });
}

/** The label whose place is the nearest: what a calibration moved is still that label. */
export function labelAt(stock: Stock, [x, y]: readonly [number, number, ...unknown[]]): number {
  let [label, least] = [1, Number.POSITIVE_INFINITY];
  for (let at = 1; at <= labelsPerPage(stock); at++) {
    const [left, top] = labelBox(stock, at);
    const far = Math.hypot(left - x, top - y);
    if (far < least) [label, least] = [at, far];
  }
  return label;
}
