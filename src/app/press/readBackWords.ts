import type { ReadBack, ReadFault } from '../../../print/index.ts';
import { labelBox, labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';
import { type Problem, problem, sayNumber } from '../../core/index.ts';
import { WHAT_WORDS, type What } from './batch.ts';

/** `600 of 600 read back`, with the bar codes where there are any. */
export function sayReadBack({ codes, bars, faults }: ReadBack): string {
  const bad = (what: ReadFault['what']) => faults.filter((fault) => fault.what === what).length;
  const said = `${sayNumber(codes - bad('code'))} of ${sayNumber(codes)} read back`;
  return bars === 0 ? `${said}.` : `${said}, and ${sayNumber(bars - bad('bar'))} of ${sayNumber(bars)} bar codes.`;
}

/** The piece that did not read, where it lies, and what to do. `page` counts in the run, of which a file may be a part. */
export function faultProblem(
  { piece, what, read }: ReadFault,
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
