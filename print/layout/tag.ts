import type { LabelLine, LabelSlot } from '../../src/core/index.ts';
import { type Block, drawStack, rowHeight, ruleRow, stackHeight, textMark, textRow } from './blocks.ts';
import type { SetFace } from './front.ts';
import type { LabelFrame } from './labelFrame.ts';
import type { Mark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { ledger } from './minor.ts';
import { rowsOf } from './room.ts';
import { type Form, fitting, LEVELS, type Worded, type Wording, worseForm } from './words.ts';

/** Sizes of one tag in points; `bare` ones have no rules, for labels that are too small for them. */
interface TagSetting {
  readonly idPt: number;
  readonly mainPt: number;
  readonly bodyPt: number;
  readonly gapMm: number;
  readonly leading: number;
  readonly bare: boolean;
}

/** From roomy to tight; the tightest is what stays legible with the tag in hand. */
const SETTINGS: readonly TagSetting[] = [
  step(34, 30, 18, 2.2, 1.24),
  step(28, 25, 15.5, 1.8, 1.22),
  step(24, 21, 13.5, 1.4, 1.2),
  step(20, 18, 12, 1, 1.2),
  step(18, 16, 11, 0.8, 1.18),
  step(16, 14.5, 10, 0.7, 1.16),
  step(14, 13, 9.5, 0.6, 1.14),
  step(13, 12, 9, 0.5, 1.12),
  step(12, 11, 8.5, 0.4, 1.1),
  { ...step(11.5, 10.5, 8.5, 0.3, 1.12), bare: true },
  { ...step(10.5, 9.5, 8, 0.25, 1.1), bare: true },
  { ...step(9.5, 9, 7.5, 0.2, 1.08), bare: true },
];
/** The small print’s least and most. */
const FOOT_PT = [7, 9] as const;
const FOOT_GAP_MM = 0.5;
const HEAVY_MM = 0.6;
/** Under the id, in parts of its size. */
const UNDER_ID = 0.2;
const MAIN_ROWS = 2;
const BODY_ROWS = 3;
/** Room that is left goes between the rows, at most this much each. */
const SPREAD_MM = 1.6;

/** What a tag is set with; `print` is its small print. */
export interface TagBench {
  readonly frame: LabelFrame;
  readonly measure: Measure;
  readonly print: Worded<unknown>;
}

/**
 * Sets a clutch tag: the id level with the code, the parents, and under a rule the ledger of small lines, which runs on
 * below the code. Null when the words do not fit in these forms.
 */
export function setTag(lines: readonly Worded<LabelLine>[], bench: TagBench, limit: Form): SetFace | null {
  for (const setting of SETTINGS) {
    const face = setIn(setting, lines, bench, limit);
    if (face !== null) return face;
  }
  return null;
}

function setIn(setting: TagSetting, lines: readonly Worded<LabelLine>[], bench: TagBench, limit: Form): SetFace | null {
  const of = (slot: LabelSlot) => lines.filter((line) => line.of.slot === slot);
  const foot = footOf(bench, Math.min(FOOT_PT[1], Math.max(FOOT_PT[0], setting.bodyPt / 2)));
  const head = headOf(of('id'), setting, bench);
  const main = head && mainOf(of('main'), head.endMm, setting, bench, limit);
  if (foot === null || head === null || !main) return null;
  const bodyMm = head.endMm + stackHeight(main) + setting.gapMm;
  const body = bodyOf([...of('body'), ...of('small')], bodyMm, setting, bench, limit);
  if (body === null) return null;
  const blocks = [...main, ...body.map((row, at) => (at === 0 ? { ...row, gapMm: setting.gapMm } : row))];
  const roomMm = foot.topMm - FOOT_GAP_MM - head.endMm;
  if (stackHeight(blocks) > roomMm) return null;
  const marks: Mark[] = [...head.marks];
  // Rows only move down, where they have as much room or more.
  drawStack(blocks, { topMm: head.endMm, roomMm, spreadMm: SPREAD_MM, fromMm: 0 }, marks);
  marks.push(foot.mark);
  const form = blocks.reduce<Form>((worst, block) => worseForm(worst, block.form), 'long');
  return { marks, form };
}

/** The id's capitals start level with the code. */
function headOf(ids: readonly Worded<LabelLine>[], setting: TagSetting, { frame, measure }: TagBench) {
  const marks: Mark[] = [];
  let endMm = frame.code.yMm;
  for (const line of ids) {
    const wording = fitting(line, frame.code.besideMm - frame.left, setting.idPt, 'long');
    if (wording === null) return null;
    const baseline = endMm + measure.capHeight * setting.idPt * PT_MM;
    marks.push(textMark({ wording, cut: line.cut, xMm: frame.left }, setting.idPt, baseline));
    endMm = baseline + UNDER_ID * setting.idPt * PT_MM;
  }
  return { marks, endMm };
}

/** The parents beside the code, in one row or two. */
function mainOf(
  lines: readonly Worded<LabelLine>[],
  topMm: number,
  { mainPt, gapMm, leading }: TagSetting,
  { frame, measure }: TagBench,
  limit: Form,
): readonly Block[] | null {
  const blocks: Block[] = [];
  for (const line of lines) {
    const width = rightAt(frame, topMm + stackHeight(blocks)) - frame.left;
    const rows = inRows(line, width, mainPt, MAIN_ROWS, measure, limit);
    if (rows === null) return null;
    for (const [at, wording] of rows.entries()) {
      const gap = at === 0 && blocks.length > 0 ? gapMm : 0;
      const cells = [{ wording, cut: line.cut, xMm: frame.left }];
      blocks.push(textRow(cells, { sizePt: mainPt, leading, gapMm: gap }, measure));
    }
  }
  return blocks;
}

/** A heavy rule and the ledger; long lines are broken for the width below the code, or if need be for the one beside it. */
function bodyOf(
  lines: readonly Worded<LabelLine>[],
  topMm: number,
  setting: TagSetting,
  { frame, measure }: TagBench,
  limit: Form,
): readonly Block[] | null {
  const { bodyPt, leading, bare } = setting;
  const { left } = frame;
  const rule = bare ? [] : [ruleRow(left, rightAt(frame, topMm) - left, HEAVY_MM)];
  const room = { left, rightAt: (yMm: number) => rightAt(frame, yMm), sizePt: bodyPt, leading, limit, bare };
  for (const width of [frame.right - left, frame.code.besideMm - left]) {
    const broken = lines.map((line) => brokenLine(line, width, bodyPt, measure, limit));
    const whole = broken.every((rows) => rows !== null) ? broken.flatMap((rows) => rows ?? []) : null;
    const rows = whole && ledger(whole, { ...room, topMm: topMm + stackHeight(rule) }, measure);
    // The heavy rule stands for the first row's own.
    if (rows) return [...rule, ...rows.map((row, at) => (at === 0 && !bare ? { ...row, stretch: 0 } : row))];
  }
  return null;
}

function brokenLine(
  line: Worded<LabelLine>,
  width: number,
  sizePt: number,
  measure: Measure,
  limit: Form,
): readonly Worded<LabelLine>[] | null {
  if (fitting(line, width, sizePt, limit) !== null) return [line];
  const rows = inRows(line, width, sizePt, BODY_ROWS, measure, limit);
  return rows === null ? null : rows.map((row, at) => ({ ...line, wordings: [row], follows: at > 0 }));
}

function inRows(
  line: Worded<LabelLine>,
  width: number,
  sizePt: number,
  most: number,
  measure: Measure,
  limit: Form,
): readonly Wording[] | null {
  const whole = fitting(line, width, sizePt, limit);
  if (whole !== null) return [whole];
  const shortest = line.wordings[Math.min(LEVELS[limit], line.wordings.length - 1)];
  const rows = shortest === undefined ? [] : rowsOf(shortest, line, width / sizePt, measure);
  const fits = rows.length <= most && rows.every((row) => row.widthAtOnePt * sizePt <= width);
  return fits && rows.length > 0 ? rows : null;
}

/** The small print at the foot, below the code where there is room, else beside it. */
function footOf({ frame, measure, print }: TagBench, sizePt: number) {
  const height = rowHeight(sizePt, 1);
  const topMm = frame.bottom - height;
  const width = rightAt(frame, topMm) - frame.left;
  const wording = fitting(print, width, sizePt, 'short');
  if (wording === null) return null;
  const baseline = frame.bottom - measure.descent * sizePt * PT_MM;
  return { topMm, mark: textMark({ wording, cut: print.cut, xMm: frame.left }, sizePt, baseline) };
}

function rightAt({ code, right }: LabelFrame, yMm: number): number {
  return yMm >= code.belowMm ? right : code.besideMm;
}

function step(idPt: number, mainPt: number, bodyPt: number, gapMm: number, leading: number): TagSetting {
  return { idPt, mainPt, bodyPt, gapMm, leading, bare: false };
}
