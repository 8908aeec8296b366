import { textMark } from '../layout/blocks.ts';
import type { Cut, Mark } from '../layout/marks.ts';
import { type Measure, PT_MM } from '../layout/measure.ts';
import { type WrappedLine, wrap } from './wrap.ts';

/** A strip of a page that is never torn; its marks count from its own top left corner. */
export interface PagePiece {
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** Stays on one page with the strip after it. */
  readonly keeps?: boolean;
  /** Set again at the top of the next page when the list that it heads goes on there. */
  readonly head?: PagePiece;
}

/** Where strips are set. */
export interface Bench {
  readonly widthMm: number;
  readonly measure: Measure;
}

export const BODY_PT = 8.5;
const LEADING = 1.28;
const ROW_GAP_MM = 0.9;
const COLUMN_GAP_MM = 3;
/** More lines than this in one row are cut into several rows, so that a row always fits on a page. */
const MOST_LINES = 40;

/** Words across the page. */
export function paragraph(text: string, { widthMm, measure }: Bench, style: Partial<TextStyle> = {}): PagePiece {
  const { sizePt, cut, gapMm, leftMm } = { ...PLAIN, ...style };
  const lines = wrap(text, cut, { widthMm: widthMm - leftMm, sizePt, measure });
  return {
    heightMm: lines.length * lineMm(sizePt) + gapMm,
    marks: lineMarks(lines, { cut, sizePt, xMm: leftMm, topMm: gapMm }),
  };
}

interface TextStyle {
  readonly sizePt: number;
  readonly cut: Cut;
  /** The space above it. */
  readonly gapMm: number;
  readonly leftMm: number;
}

const PLAIN: TextStyle = { sizePt: BODY_PT, cut: 'regular', gapMm: 0.8, leftMm: 0 };

/** A heading over a line of ink, which stays with what it heads. */
export function heading(text: string, bench: Bench, sizePt = 11): PagePiece {
  const words = paragraph(text, bench, { sizePt, cut: 'bold', gapMm: 4.5 });
  const yMm = words.heightMm + 0.4;
  const rule: Mark = { kind: 'rule', xMm: 0, yMm, widthMm: bench.widthMm, heightMm: 0.35 };
  return { heightMm: yMm + 0.9, marks: [...words.marks, rule], keeps: true };
}

/** An empty strip. */
export function space(heightMm: number): PagePiece {
  return { heightMm, marks: [] };
}

/** A column: its words, and its share of the width. */
export interface Column {
  readonly words: string;
  readonly share: number;
  readonly align?: 'end';
}

/** Rows under their heads; the heads stand again on each page. A row with no end in sight is cut into rows, not lost. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  bench: Bench,
): readonly PagePiece[] {
  const frame = framed(columns, bench);
  const head = {
    ...rowOf(
      columns.map(({ words }) => words),
      'bold',
      frame,
      bench,
    ),
    keeps: true,
  };
  return [head, ...rows.flatMap((row) => rowsOf(row, frame, bench).map((piece) => ({ ...piece, head })))];
}

/** Pairs of a label and what it says, without heads. */
export function pairs(rows: readonly (readonly [label: string, says: string])[], bench: Bench): readonly PagePiece[] {
  const frame = framed(
    [
      { words: '', share: 0.34 },
      { words: '', share: 0.66 },
    ],
    bench,
  );
  return rows.flatMap((row) => rowsOf(row, frame, bench));
}

interface Framed extends Column {
  readonly xMm: number;
  readonly widthMm: number;
}

function framed(columns: readonly Column[], { widthMm }: Bench): readonly Framed[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const room = widthMm - COLUMN_GAP_MM * (columns.length - 1);
  let xMm = 0;
  return columns.map((column) => {
    const own = { ...column, xMm, widthMm: (room * column.share) / whole };
    xMm += own.widthMm + COLUMN_GAP_MM;
    return own;
  });
}

function rowOf(cells: readonly string[], cut: Cut, frame: readonly Framed[], bench: Bench): PagePiece {
  return setRow(wrapped(cells, cut, frame, bench), cut, frame, bench);
}

function rowsOf(cells: readonly string[], frame: readonly Framed[], bench: Bench): readonly PagePiece[] {
  const lines = wrapped(cells, 'regular', frame, bench);
  const most = Math.max(1, ...lines.map((cell) => cell.length));
  const parts = Array.from({ length: Math.ceil(most / MOST_LINES) }, (_none, at) =>
    lines.map((cell) => cell.slice(at * MOST_LINES, (at + 1) * MOST_LINES)),
  );
  return parts.map((part) => setRow(part, 'regular', frame, bench));
}

type Cells = readonly (readonly WrappedLine[])[];

function wrapped(cells: readonly string[], cut: Cut, frame: readonly Framed[], { measure }: Bench): Cells {
  return frame.map(({ widthMm }, at) => wrap(cells[at] ?? '', cut, { widthMm, sizePt: BODY_PT, measure }));
}

function setRow(cells: Cells, cut: Cut, frame: readonly Framed[], { widthMm }: Bench): PagePiece {
  const most = Math.max(1, ...cells.map((cell) => cell.length));
  const marks = frame.flatMap((column, at) =>
    lineMarks(cells[at] ?? [], { cut, sizePt: BODY_PT, xMm: column.xMm, topMm: ROW_GAP_MM / 2, endMm: endOf(column) }),
  );
  const heightMm = most * lineMm(BODY_PT) + ROW_GAP_MM;
  const under: Mark =
    cut === 'bold'
      ? { kind: 'rule', xMm: 0, yMm: heightMm, widthMm, heightMm: 0.2 }
      : { kind: 'rule', faint: true, xMm: 0, yMm: heightMm, widthMm, heightMm: 0.12 };
  return { heightMm, marks: [...marks, under] };
}

function endOf({ align, xMm, widthMm }: Framed): number | undefined {
  return align === 'end' ? xMm + widthMm : undefined;
}

interface LinePlace {
  readonly cut: Cut;
  readonly sizePt: number;
  readonly xMm: number;
  readonly topMm: number;
  readonly endMm?: number | undefined;
}

function lineMarks(lines: readonly WrappedLine[], { cut, sizePt, xMm, topMm, endMm }: LinePlace): readonly Mark[] {
  return lines
    .filter(({ text }) => text !== '')
    .map((wording, at) => {
      const left = endMm === undefined ? xMm : endMm - wording.widthAtOnePt * sizePt;
      return textMark({ wording, cut, xMm: left }, sizePt, topMm + at * lineMm(sizePt) + sizePt * PT_MM * 0.98);
    });
}

function lineMm(sizePt: number): number {
  return sizePt * PT_MM * LEADING;
}
