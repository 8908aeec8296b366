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
  /** Air above it, which it does not need at the top of a page. */
  readonly airMm?: number;
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
/** Figures end at the right of their column, and words that begin right after them would read as their unit. */
const AFTER_FIGURES_MM = 4;
const HEADING_AIR_MM = 4.5;
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
  const words = paragraph(text, bench, { sizePt, cut: 'bold', gapMm: HEADING_AIR_MM });
  const yMm = words.heightMm + 0.4;
  const rule: Mark = { kind: 'rule', xMm: 0, yMm, widthMm: bench.widthMm, heightMm: 0.35 };
  return { heightMm: yMm + 0.9, marks: [...words.marks, rule], keeps: true, airMm: HEADING_AIR_MM };
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

/** What stands in a cell; a bold one is what the eye has to find. */
export type TableCell = string | { readonly says: string; readonly cut: 'bold' };

/** Rows under their heads; the heads stand again on each page. A row with no end in sight is cut into rows, not lost. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly TableCell[])[],
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

/** A label and what it says. */
export type Pair = readonly [label: string, says: TableCell];

/** Pairs of a label and what it says, without heads. */
export function pairs(rows: readonly Pair[], bench: Bench): readonly PagePiece[] {
  const frame = framed(
    [
      { words: '', share: 0.34 },
      { words: '', share: 0.66 },
    ],
    bench,
  );
  return rows.flatMap((row) => rowsOf(row, frame, bench));
}

const ABREAST: readonly Column[] = [
  { words: '', share: 17 },
  { words: '', share: 31 },
  { words: '', share: 17 },
  { words: '', share: 31 },
];
/** A pair that needs more lines than this in half the page gets the whole width. */
const ABREAST_LINES = 2;

/** The same, short pairs two abreast, read down the left side first; longer ones below them over the whole width. */
export function pairsAbreast(rows: readonly Pair[], bench: Bench): readonly PagePiece[] {
  const frame = framed(ABREAST, bench);
  const isShort = (row: Pair): boolean =>
    wrapped(row, 'regular', frame, bench).every(({ length }) => length <= ABREAST_LINES);
  const short = rows.filter(isShort);
  const half = Math.ceil(short.length / 2);
  const abreast = short.slice(0, half).map((row, at) => [...row, ...(short[half + at] ?? [])]);
  const [label, says] = frame;
  const whole = label && says ? [label, { ...says, widthMm: bench.widthMm - says.xMm }] : [];
  return [
    ...abreast.flatMap((cells) => rowsOf(cells, frame, bench)),
    ...rows.filter((row) => !isShort(row)).flatMap((row) => rowsOf(row, whole, bench)),
  ];
}

interface Framed extends Column {
  readonly xMm: number;
  readonly widthMm: number;
}

function framed(columns: readonly Column[], { widthMm }: Bench): readonly Framed[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const gaps = columns.slice(0, -1).map(({ align }) => COLUMN_GAP_MM + (align === 'end' ? AFTER_FIGURES_MM : 0));
  const room = widthMm - gaps.reduce((sum, gap) => sum + gap, 0);
  let xMm = 0;
  return columns.map((column, at) => {
    const own = { ...column, xMm, widthMm: (room * column.share) / whole };
    xMm += own.widthMm + (gaps[at] ?? 0);
    return own;
  });
}

function rowOf(cells: readonly string[], cut: Cut, frame: readonly Framed[], bench: Bench): PagePiece {
  return setRow(wrapped(cells, cut, frame, bench), cut, frame, bench);
}

function rowsOf(cells: readonly TableCell[], frame: readonly Framed[], bench: Bench): readonly PagePiece[] {
  const lines = wrapped(cells, 'regular', frame, bench);
  const most = Math.max(1, ...lines.map((cell) => cell.length));
  const parts = Array.from({ length: Math.ceil(most / MOST_LINES) }, (_none, at) =>
    lines.map((cell) => cell.slice(at * MOST_LINES, (at + 1) * MOST_LINES)),
  );
  return parts.map((part) => setRow(part, 'regular', frame, bench));
}

/** A line of a cell, in its own cut. */
type CellLine = WrappedLine & { readonly cut: Cut };
type Cells = readonly (readonly CellLine[])[];

function wrapped(cells: readonly TableCell[], cut: Cut, frame: readonly Framed[], { measure }: Bench): Cells {
  return frame.slice(0, Math.max(cells.length, 1)).map(({ widthMm }, at) => {
    const cell = cells[at] ?? '';
    const [says, own] = typeof cell === 'string' ? [cell, cut] : [cell.says, cell.cut];
    return wrap(says, own, { widthMm, sizePt: BODY_PT, measure }).map((line) => ({ ...line, cut: own }));
  });
}

function setRow(cells: Cells, cut: Cut, frame: readonly Framed[], { widthMm }: Bench): PagePiece {
  const most = Math.max(1, ...cells.map((cell) => cell.length));
  const marks = frame.flatMap((column, at) => {
    const lines = cells[at] ?? [];
    const place = { sizePt: BODY_PT, xMm: column.xMm, topMm: ROW_GAP_MM / 2, endMm: endOf(column) };
    return lineMarks(lines, { ...place, cut: lines[0]?.cut ?? cut });
  });
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
