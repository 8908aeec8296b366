import type { LabelLine } from '../../src/core/index.ts';
import { type Block, cellOf, ruleRow, stackHeight, textRow } from './blocks.ts';
import type { LabelFrame } from './labelFrame.ts';
import type { Measure } from './measure.ts';
import { ledger } from './minor.ts';
import { brokenLine } from './treatmentRows.ts';
import type { SheetSetting } from './treatmentSettings.ts';
import { signTable } from './treatmentSign.ts';
import { type Form, fitting, type Worded, worseForm } from './words.ts';

/** What stands below the head of a paper, in reading order: small lines, the figure, lines to sign. */
export interface FlowPart {
  readonly kind: 'body' | 'figure' | 'sign';
  readonly lines: readonly Worded<LabelLine>[];
}

/** What the flow is set with. */
export interface FlowBench {
  readonly frame: LabelFrame;
  readonly measure: Measure;
  readonly setting: SheetSetting;
  readonly limit: Form;
}

/** A block at its height. */
export interface Placed {
  readonly topMm: number;
  readonly block: Block;
}

/** How far a face could be filled, and what is left for the next one. */
export interface Filled {
  readonly placed: readonly Placed[];
  readonly rest: readonly FlowPart[];
  readonly endMm: number;
}

const HEAVY_MM = 0.6;
/** The space above a table of lines to sign, in gaps. */
const OVER_TABLE = 1.6;
/** Where nothing more fits beside the code, the flow goes on below it. */
const SLACK_MM = 1e-6;

/**
 * The lines of a paper as parts of its flow; lines of one kind that follow each other are one part. A strong figure begins a
 * part of its own, and the plain ones after it stand beside it.
 */
export function flowOf(lines: readonly Worded<LabelLine>[]): readonly FlowPart[] {
  const parts: { kind: FlowPart['kind']; lines: Worded<LabelLine>[] }[] = [];
  for (const line of lines) {
    const last = parts.at(-1);
    const kind = kindOf(line.of, last?.kind);
    if (kind === null) continue;
    const isNew = last?.kind !== kind || (kind === 'figure' && line.of.strong);
    if (isNew) parts.push({ kind, lines: [line] });
    else last.lines.push(line);
  }
  return parts;
}

function kindOf({ slot, strong }: LabelLine, before: FlowPart['kind'] | undefined): FlowPart['kind'] | null {
  switch (slot) {
    case 'body':
    case 'small':
      return 'body';
    case 'figure':
      return strong || before === 'figure' ? 'figure' : 'body';
    case 'sign':
      return 'sign';
    case 'id':
    case 'main':
    case 'flag':
    case 'caution':
      return null;
    default:
      return slot satisfies never;
  }
}

/** Fills a face from the top; parts that do not fit go on with the next one. Null when something fits on no face. */
export function fill(parts: readonly FlowPart[], topMm: number, bottomMm: number, bench: FlowBench): Filled | null {
  const placed: Placed[] = [];
  const queue = [...parts];
  let y = topMm;
  while (queue.length > 0) {
    const [part, ...others] = queue;
    if (part === undefined) break;
    const step = take(part, y, bottomMm, bench);
    if (step === null) return null;
    const isStuck = step.rest !== null && step.placed.length === 0 && step.endMm <= y;
    for (const one of step.placed) placed.push(one);
    y = step.endMm;
    if (isStuck) break;
    queue.splice(0, queue.length, ...(step.rest === null ? [] : [step.rest]), ...others);
  }
  return { placed, rest: queue, endMm: y };
}

interface Step {
  readonly placed: readonly Placed[];
  readonly rest: FlowPart | null;
  /** Where the next one may begin; below the code where nothing fitted beside it. */
  readonly endMm: number;
}

function take(part: FlowPart, y: number, bottomMm: number, bench: FlowBench): Step | null {
  switch (part.kind) {
    case 'body':
      return takeBody(part, y, bottomMm, bench);
    case 'figure':
      return takeFigure(part, y, bottomMm, bench);
    case 'sign':
      return takeSign(part, y, bottomMm, bench);
    default:
      return part.kind satisfies never;
  }
}

/** As many small lines as fit, on ledger rules; beside the code only as far as the code goes. */
function takeBody(part: FlowPart, y: number, bottomMm: number, bench: FlowBench): Step | null {
  const { frame, setting } = bench;
  const isBeside = y < frame.code.belowMm - SLACK_MM;
  const end = isBeside ? Math.min(bottomMm, frame.code.belowMm) : bottomMm;
  const topMm = y + setting.gapMm;
  const right = isBeside ? frame.code.besideMm : frame.right;
  const broken = brokenLines(part.lines, right - frame.left, bench);
  if (broken.length === 0 && !isBeside) return null;
  let best: { readonly count: number; readonly rows: readonly Block[] } | null = null;
  let [least, most] = [1, broken.length];
  while (least <= most) {
    const count = (least + most) >> 1;
    const rows = bodyRows(broken.slice(0, count).flat(), right, topMm, bench);
    if (rows !== null && topMm + stackHeight(rows) <= end + SLACK_MM) {
      best = { count, rows };
      least = count + 1;
    } else most = count - 1;
  }
  if (best === null) return { placed: [], rest: part, endMm: isBeside ? frame.code.belowMm : y };
  const lines = part.lines.slice(best.count);
  const rest = lines.length === 0 ? null : { ...part, lines };
  return { placed: stacked(best.rows, topMm), rest, endMm: topMm + stackHeight(best.rows) };
}

/** The lines up to the first that cannot be broken for that width, each in its rows. */
function brokenLines(lines: readonly Worded<LabelLine>[], widthMm: number, { measure, setting, limit }: FlowBench) {
  const broken: (readonly Worded<LabelLine>[])[] = [];
  for (const line of lines) {
    const rows = brokenLine(line, widthMm, setting.bodyPt, measure, limit);
    if (rows === null) break;
    broken.push(rows);
  }
  return broken;
}

function bodyRows(
  lines: readonly Worded<LabelLine>[],
  right: number,
  topMm: number,
  { frame, measure, setting, limit }: FlowBench,
): readonly Block[] | null {
  const { bodyPt: sizePt, leading, bare } = setting;
  const room = { left: frame.left, rightAt: () => right, topMm, sizePt, leading, limit, bare, alone: true };
  return ledger(lines, room, measure);
}

/** The figure under a heavy rule, and what belongs to it at its right; they never part. */
function takeFigure(part: FlowPart, y: number, bottomMm: number, bench: FlowBench): Step | null {
  const { frame } = bench;
  const isBeside = y < frame.code.belowMm - SLACK_MM;
  const right = isBeside ? frame.code.besideMm : frame.right;
  const blocks = figureBlocks(part.lines, right, bench);
  if (blocks === null && !isBeside) return null;
  const below: Step = { placed: [], rest: part, endMm: isBeside ? frame.code.belowMm : y };
  const end = isBeside ? Math.min(bottomMm, frame.code.belowMm) : bottomMm;
  if (blocks === null || y + stackHeight(blocks) > end + SLACK_MM) return below;
  return { placed: stacked(blocks, y), rest: null, endMm: y + stackHeight(blocks) };
}

const FIGURE_LEADING = 1.08;
const BESIDE_FIGURE_MM = 4;

function figureBlocks(
  lines: readonly Worded<LabelLine>[],
  right: number,
  { frame, measure, setting, limit }: FlowBench,
): readonly Block[] | null {
  const [figure, ...others] = lines;
  const bench = { frame, measure, setting, limit };
  const width = right - frame.left;
  const wording = figure && fitting(figure, width, setting.figurePt, limit);
  if (!wording) return null;
  const style = { sizePt: setting.figurePt, leading: FIGURE_LEADING, gapMm: 0 };
  const large = textRow([cellOf(figure, wording, frame.left)], style, measure);
  const rule = { ...ruleRow(frame.left, width, HEAVY_MM), gapMm: setting.gapMm };
  const left = frame.left + wording.widthAtOnePt * setting.figurePt + BESIDE_FIGURE_MM;
  for (let count = others.length; count >= 0; count--) {
    const rows = besideRows(others.slice(0, count), { left, right }, bench);
    if (rows === null || stackHeight(rows) > large.heightMm) continue;
    const under = besideRows(others.slice(count), { left: frame.left, right }, bench);
    return under && [rule, together(large, rows), ...under];
  }
  return null;
}

function besideRows(
  lines: readonly Worded<LabelLine>[],
  { left, right }: { readonly left: number; readonly right: number },
  { measure, setting, limit }: FlowBench,
): readonly Block[] | null {
  const rows: Block[] = [];
  for (const line of lines) {
    const broken = right > left ? brokenLine(line, right - left, setting.bodyPt, measure, limit) : null;
    if (broken === null) return null;
    for (const one of broken) {
      const wording = fitting(one, right - left, setting.bodyPt, limit);
      if (wording === null) return null;
      const style = { sizePt: setting.bodyPt, leading: setting.leading, gapMm: 0 };
      rows.push(textRow([cellOf(one, wording, left)], style, measure));
    }
  }
  return rows;
}

/** A large row and small ones beside it, as one block; the small ones stand in the middle of its height. */
function together(large: Block, rows: readonly Block[]): Block {
  const form = rows.reduce((worst, row) => worseForm(worst, row.form), large.form);
  return {
    ...large,
    form,
    draw(topMm, onto) {
      large.draw(topMm, onto);
      let y = topMm + (large.heightMm - stackHeight(rows)) / 2;
      for (const row of rows) {
        row.draw(y, onto);
        y += row.heightMm;
      }
    },
  };
}

/** The heading and as many lines to sign as fit, below the code, where the pen has the whole width. */
function takeSign(part: FlowPart, y: number, bottomMm: number, bench: FlowBench): Step | null {
  const { frame, measure, setting, limit } = bench;
  const top = Math.max(y, frame.code.belowMm) + setting.gapMm * OVER_TABLE;
  const table = signTable(part.lines, frame, setting, measure, limit);
  if (table === null) return null;
  const room = bottomMm - top - table.head.heightMm;
  const count = Math.min(part.lines.length, Math.floor((room + SLACK_MM) / setting.signMm));
  if (count < 1) return { placed: [], rest: part, endMm: Math.max(y, frame.code.belowMm) };
  const blocks = [table.head, ...table.rows.slice(0, count)];
  const lines = part.lines.slice(count);
  return {
    placed: stacked(blocks, top),
    rest: lines.length === 0 ? null : { ...part, lines },
    endMm: top + stackHeight(blocks),
  };
}

function stacked(blocks: readonly Block[], topMm: number): readonly Placed[] {
  let y = topMm;
  return blocks.map((block) => {
    y += block.gapMm;
    const one = { topMm: y, block };
    y += block.heightMm;
    return one;
  });
}
