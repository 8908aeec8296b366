import type { Placing } from '../calibration/calibration.ts';
import type { Mark } from '../layout/marks.ts';
import { checkStock, type Stock } from '../stocks/stock.ts';
import { rulerRoom } from './ruler.ts';

/** Marks start this far outside the labels, are this long where there is room, and end before the printer's reach does. */
const CLEAR_MM = 0.4;
const LONGEST_MM = 4;
const SHORTEST_MM = 0.8;
const THICK_MM = 0.1;

interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Rule PRINT-CUT: a mark at each end of every line to cut along, in the sheet's margins and never on a label: between
 * labels there is nothing to print over. A margin that the printer hardly reaches has none.
 */
export function cutMarks(stock: Stock, place: Placing): readonly Mark[] {
  if (!checkStock(stock).ok) return [];
  const lines = { x: edges(stock, 'x'), y: edges(stock, 'y') };
  const [left, right] = [Math.min(...lines.x), Math.max(...lines.x)];
  const [top, bottom] = [Math.min(...lines.y), Math.max(...lines.y)];
  const ruler = rulerRoom(stock);
  const low = ruler && ruler.yMm > bottom ? ruler.yMm : Number.POSITIVE_INFINITY;
  const high = ruler && ruler.yMm < top ? ruler.yMm + 5 : 0;
  const { printerInsetMm: inset, pageWidthMm, pageHeightMm } = stock;
  const down = [
    spanOf(Math.max(inset, high), top - CLEAR_MM, 'end'),
    spanOf(bottom + CLEAR_MM, Math.min(pageHeightMm - inset, low - CLEAR_MM), 'start'),
  ];
  const across = [spanOf(inset, left - CLEAR_MM, 'end'), spanOf(right + CLEAR_MM, pageWidthMm - inset, 'start')];
  return [
    ...lines.x.flatMap((x) => down.flatMap((span) => (span ? [upright(x, span, place)] : []))),
    ...lines.y.flatMap((y) => across.flatMap((span) => (span ? [level(y, span, place)] : []))),
  ];
}

/** The places of cuts along one axis, each once: labels that touch share theirs. */
function edges(stock: Stock, axis: 'x' | 'y'): readonly number[] {
  const [first, pitch, size, count] =
    axis === 'x'
      ? [stock.firstXMm, stock.pitchXMm, stock.labelWidthMm, stock.columns]
      : [stock.firstYMm, stock.pitchYMm, stock.labelHeightMm, stock.rows];
  const all = Array.from({ length: count }, (_none, at) => [first + at * pitch, first + at * pitch + size]).flat();
  return [...new Set(all.map((mm) => Math.round(mm * 100) / 100))].sort((a, b) => a - b);
}

/** The part of a margin that lies next to the labels; null where there is hardly any. */
function spanOf(from: number, to: number, side: 'start' | 'end'): Span | null {
  if (to - from < SHORTEST_MM) return null;
  return side === 'start'
    ? { from, to: Math.min(to, from + LONGEST_MM) }
    : { from: Math.max(from, to - LONGEST_MM), to };
}

function upright(x: number, { from, to }: Span, place: Placing): Mark {
  const [xMm, yMm] = place.at(x, from);
  return { kind: 'rule', xMm: xMm - THICK_MM / 2, yMm, widthMm: THICK_MM, heightMm: to - from };
}

function level(y: number, { from, to }: Span, place: Placing): Mark {
  const [xMm, yMm] = place.at(from, y);
  return { kind: 'rule', xMm, yMm: yMm - THICK_MM / 2, widthMm: to - from, heightMm: THICK_MM };
}
