import { type Block, type Cell, cellOf, rowHeight, textRow } from './blocks.ts';
import type { Measure } from './measure.ts';
import { type Form, fitting, type Worded } from './words.ts';

/** What a ledger of small lines is set in; its width may change on the way down, past the code. */
export interface LedgerRoom {
  readonly left: number;
  readonly rightAt: (yMm: number) => number;
  readonly topMm: number;
  readonly sizePt: number;
  readonly leading: number;
  readonly limit: Form;
  /** True for rows without rules, which small labels have no room for. */
  readonly bare?: boolean;
  /** True where nothing may stand beside the last row of a broken line, because the two could be read as one. */
  readonly alone?: boolean;
}

const GUTTER_MM = 3;
const HAIRLINE_MM = 0.15;
/** Air at a hairline, in parts of the leading's own. */
const AIR = 1.7;
const LEAST_AIR_MM = 0.26;
/** Small lines stand closer than large ones when there is room to spare. */
const STRETCH = 0.4;

interface Row {
  readonly cells: Cell[];
  readonly rightMm: number;
  /** True when the first line leaves the row free from the middle on. */
  readonly half: boolean;
  /** Where a second line would start; null when there is one. */
  free: number | null;
}

/**
 * Small lines on ledger rules, two to a row where they fit, the second from the middle or after the first. A line that
 * waits for a partner is joined by the next that fits. Null when a line fits in no form.
 */
export function ledger(lines: readonly Worded<unknown>[], room: LedgerRoom, measure: Measure): readonly Block[] | null {
  const airMm = airOf(room);
  const rowMm = rowOf(room);
  const rows: Row[] = [];
  for (const line of lines) {
    const last = rows.at(-1);
    // Nothing may stand between the rows of a broken line.
    if (line.follows && last) last.free = null;
    if (!(join(line, rows, room) || open(line, rows, room, rowMm))) return null;
    const row = rows.at(-1);
    if (room.alone && line.follows && row) row.free = null;
  }
  const style = { sizePt: room.sizePt, leading: room.leading, gapMm: 0 };
  return rows.map((row) => {
    const text = textRow(row.cells, style, measure);
    return room.bare ? text : ruled(text, room.left, row.rightMm, airMm);
  });
}

/** What a ledger of so many lines cannot be lower than: it spares most of the tries that are too large. */
export function leastLedger(lines: number, room: Pick<LedgerRoom, 'sizePt' | 'leading' | 'bare'>): number {
  return Math.ceil(lines / 2) * rowOf(room);
}

function rowOf(room: Pick<LedgerRoom, 'sizePt' | 'leading' | 'bare'>): number {
  return rowHeight(room.sizePt, room.leading) + (room.bare ? 0 : HAIRLINE_MM + 1.5 * airOf(room));
}

function airOf({ leading }: Pick<LedgerRoom, 'leading'>): number {
  return Math.max(LEAST_AIR_MM, (leading - 1) * AIR);
}

/** Puts a line into the row above, or into an earlier one that is free from the middle on, if it fits. */
function join(line: Worded<unknown>, rows: readonly Row[], room: LedgerRoom): boolean {
  if (line.follows) return false;
  for (const [at, row] of rows.entries()) {
    if (at < rows.length - 1 && !row.half) continue;
    const wording = row.free === null ? null : fitting(line, row.rightMm - row.free, room.sizePt, room.limit);
    if (row.free === null || !wording) continue;
    row.cells.push(cellOf(line, wording, row.free));
    row.free = null;
    return true;
  }
  return false;
}

/** Starts a row: in its left half if the line fits there, else across. */
function open(line: Worded<unknown>, rows: Row[], room: LedgerRoom, rowMm: number): boolean {
  const rightMm = room.rightAt(room.topMm + rows.length * rowMm);
  const half = (rightMm - room.left - GUTTER_MM) / 2;
  const wording =
    fitting(line, half, room.sizePt, room.limit) ?? fitting(line, rightMm - room.left, room.sizePt, room.limit);
  if (!wording) return false;
  const width = wording.widthAtOnePt * room.sizePt;
  const free = room.left + Math.max(half, width) + GUTTER_MM;
  rows.push({ cells: [cellOf(line, wording, room.left)], rightMm, half: width <= half, free });
  return true;
}

/** A hairline above the row, with a little air. */
function ruled(row: Block, xMm: number, right: number, airMm: number): Block {
  return {
    heightMm: row.heightMm + HAIRLINE_MM + 1.5 * airMm,
    gapMm: 0,
    stretch: STRETCH,
    form: row.form,
    draw(yMm, onto) {
      onto.push({ kind: 'rule', xMm, yMm, widthMm: right - xMm, heightMm: HAIRLINE_MM });
      row.draw(yMm + HAIRLINE_MM + airMm, onto);
    },
  };
}
