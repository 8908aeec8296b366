import type { LabelKind, LabelLine, LabelSlot } from '../../src/core/index.ts';
import { type Block, drawStack, stackHeight, textRow } from './blocks.ts';
import type { SetFace } from './front.ts';
import type { LabelFrame } from './labelFrame.ts';
import type { Mark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { rowsOf } from './room.ts';
import { type Form, fitting, LEVELS, type Worded, type Wording, worseForm } from './words.ts';

/** Sizes of what is read from afar, largest first. */
const MAIN_PT = [150, 125, 104, 86, 72, 60, 50, 42, 36, 31, 27, 24, 21, 18, 16.5, 15, 13.5, 12] as const;
/** Below these nothing is printed: 12 pt is 16' at 60 cm (ISO 9241 asks for that much); a number in a row of eggs wants more. */
const LEAST_MAIN_PT: Readonly<Record<LabelKind, number>> = {
  place: 12,
  clutch: 12,
  egg: 18,
  pairing: 12,
  treatment: 12,
  tube: 12,
  lot: 12,
  ...{ ware: 9, shed: 9, shelf: 14, hang: 9, sale: 12, exhibit: 24 },
  stamp: 12,
  'layout-test': 12,
};
/** Rows that a line may be broken into. */
const MOST_ROWS: Readonly<Record<LabelSlot, number>> = {
  ...{ main: 2, id: 1, body: 4, small: 1 },
  ...{ figure: 1, flag: 1, caution: 4, sign: 1 },
};
/** How large each line is in parts of the main one, and its bounds in points; the least is what stays legible in hand. */
const SIZES: Readonly<Record<Exclude<LabelSlot, 'main'>, { part: number; least: number; most: number }>> = {
  id: { part: 0.38, least: 8.5, most: 26 },
  body: { part: 0.32, least: 8, most: 18 },
  small: { part: 0.26, least: 7, most: 13 },
  figure: { part: 0.8, least: 12, most: 40 },
  flag: { part: 0.32, least: 8, most: 18 },
  caution: { part: 0.26, least: 7, most: 13 },
  sign: { part: 0.26, least: 7, most: 13 },
};
/** Line height in parts of the size; with less the type's own height would leave the label. */
const LEADING = 1.2;
/** The space above a line, in parts of the main size. */
const GAP = 0.05;
/** Room that is left goes between the lines, at most this much each. */
const SPREAD_MM = 2.4;

interface Column {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly isCentred: boolean;
}

/** Sets a label with one word for the distance, as large as it can be. Null when the words do not fit in these forms. */
export function setSign(
  kind: LabelKind,
  lines: readonly Worded<LabelLine>[],
  frame: LabelFrame,
  measure: Measure,
  limit: Form,
): SetFace | null {
  const column = columnOf(frame);
  for (const mainPt of MAIN_PT.filter((pt) => pt >= LEAST_MAIN_PT[kind])) {
    const blocks = blocksOf(lines, mainPt, column, measure, limit);
    if (blocks !== null && stackHeight(blocks) <= column.bottom - column.top) return draw(blocks, column);
  }
  return null;
}

function columnOf({ way, left, right, top, bottom, code }: LabelFrame): Column {
  return way === 'tower'
    ? { left, right, top: code.belowMm, bottom, isCentred: true }
    : { left, right: code.besideMm, top, bottom, isCentred: false };
}

function blocksOf(
  lines: readonly Worded<LabelLine>[],
  mainPt: number,
  column: Column,
  measure: Measure,
  limit: Form,
): readonly Block[] | null {
  const blocks: Block[] = [];
  for (const line of lines) {
    const set = sizedRows(line, mainPt, column.right - column.left, measure, limit);
    if (set === null) return null;
    for (const [at, wording] of set.rows.entries()) {
      const widthMm = wording.widthAtOnePt * set.sizePt;
      const xMm = column.isCentred ? (column.left + column.right - widthMm) / 2 : column.left;
      const gapMm = blocks.length === 0 || at > 0 ? 0 : GAP * mainPt * PT_MM;
      const row = textRow([{ wording, cut: line.cut, xMm }], { sizePt: set.sizePt, leading: LEADING, gapMm }, measure);
      blocks.push({ ...row, stretch: gapMm === 0 ? 0 : 1 });
    }
  }
  return blocks;
}

/** A line's rows and size: the id and the side note may be smaller to stand in one row, the rest is broken instead. */
function sizedRows(
  line: Worded<LabelLine>,
  mainPt: number,
  widthMm: number,
  measure: Measure,
  limit: Form,
): { readonly rows: readonly Wording[]; readonly sizePt: number } | null {
  const { slot } = line.of;
  if (slot === 'main') return inRows(line, mainPt, widthMm, measure, limit);
  const { part, least, most } = SIZES[slot];
  const sizePt = Math.min(most, Math.max(least, mainPt * part));
  if (MOST_ROWS[slot] > 1) return inRows(line, sizePt, widthMm, measure, limit);
  const wording = fitting(line, widthMm, least, limit);
  if (wording === null) return null;
  return { rows: [wording], sizePt: Math.min(sizePt, Math.floor((widthMm / wording.widthAtOnePt) * 10) / 10) };
}

function inRows(line: Worded<LabelLine>, sizePt: number, widthMm: number, measure: Measure, limit: Form) {
  const whole = fitting(line, widthMm, sizePt, limit);
  if (whole !== null) return { rows: [whole], sizePt };
  const shortest = line.wordings[Math.min(LEVELS[limit], line.wordings.length - 1)];
  if (shortest === undefined) return null;
  const rows = rowsOf(shortest, line, widthMm / sizePt, measure);
  const fits = rows.length <= MOST_ROWS[line.of.slot] && rows.every((row) => row.widthAtOnePt * sizePt <= widthMm);
  return fits ? { rows, sizePt } : null;
}

/** In the middle of its height, with air between the lines as far as there is room. */
function draw(blocks: readonly Block[], { top, bottom }: Column): SetFace {
  const marks: Mark[] = [];
  const roomMm = bottom - top;
  const gaps = blocks.reduce((sum, block) => sum + block.stretch, 0);
  const spare = roomMm - stackHeight(blocks);
  const spread = Math.min(spare / (gaps + 2), SPREAD_MM) * gaps;
  const height = stackHeight(blocks) + spread;
  const shaft = { topMm: top + (roomMm - height) / 2, roomMm: height, spreadMm: SPREAD_MM, fromMm: 0 };
  drawStack(blocks, shaft, marks);
  return { marks, form: blocks.reduce<Form>((form, block) => worseForm(form, block.form), 'long') };
}
