import type { CardFlag, CardLine, CardSlot } from '../../src/core/index.ts';
import {
  type Block,
  type Cell,
  cellOf,
  drawStack,
  rowHeight,
  ruleRow,
  stackHeight,
  textMark,
  textRow,
} from './blocks.ts';
import { bandHeight, type Foot, footOf, holdBand, type Sizing } from './flags.ts';
import type { Frame } from './frame.ts';
import type { Mark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { leastLedger, ledger } from './minor.ts';
import { type Setting, sizeIn, TIGHTEST } from './settings.ts';
import { atLevel, type Form, LEVELS, type Worded, type Wording, worseForm } from './words.ts';

/** The words of a face that are not lines of the content: its id and its small print. */
export interface FaceWords {
  readonly id: Omit<Wording, 'form'>;
  readonly print: Omit<Wording, 'form'>;
}

/** What every part of a face is set with. */
export interface Bench {
  readonly frame: Frame;
  readonly measure: Measure;
  readonly words: FaceWords;
}

/** What stands on a first face, sorted out once for all the ways of setting it. */
export interface FrontContent {
  readonly bySlot: BySlot;
  readonly hold: Worded<CardFlag> | undefined;
  readonly tabs: readonly Worded<CardFlag>[];
}

/** A card's lines by where they stand. */
export type BySlot = Readonly<Partial<Record<CardSlot, readonly Worded<CardLine>[]>>>;

/** A face that fits: its marks from the label's top left corner, without the code. */
export interface SetFace {
  readonly marks: readonly Mark[];
  readonly form: Form;
}

const HEAVY_MM = 0.7;
const UNDER_ID_MM = 0.9;
const FOOT_GAP_MM = 0.6;
const LEDGER_GAP_MM = 0.3;
/** Room that is left goes between the rows, at most this much each. */
const SPREAD_MM = 1.3;
/** What stands large in the lower part. */
const LOWER_FIRST = ['due', 'feed'] as const satisfies readonly CardSlot[];
const LOWER_SMALL = ['weight', 'dates', 'pairings', 'place'] as const satisfies readonly CardSlot[];

/**
 * The first face in one size; null when it does not hold everything. The lower part starts under the code if that
 * leaves it room enough, else where the upper part ends.
 */
export function setFront(content: FrontContent, bench: Bench, sizing: Sizing): SetFace | null {
  const { frame, measure, words } = bench;
  const topMm = frame.code.yMm + measure.capHeight * sizing.setting.idPt * PT_MM + UNDER_ID_MM;
  const least = topMm + leastHeight(content, sizing.setting);
  if (least + sizing.setting.footPt * PT_MM + FOOT_GAP_MM > frame.bottom) return null;
  const foot = footOf(words.print, content.tabs, frame, sizing, measure);
  if (!foot || frame.bottom - foot.heightMm < frame.code.belowMm) return null;
  const endMm = frame.bottom - foot.heightMm - FOOT_GAP_MM;
  if (least > endMm) return null;
  for (const below of [true, false]) {
    const upper = upperPart(content.bySlot, below ? frame.code.belowMm - topMm : endMm, bench, sizing);
    if (!upper) continue;
    const upperEnd = topMm + stackHeight(upper.blocks) + sizing.setting.gapMm;
    const lowerTop = below ? Math.max(frame.code.belowMm, upperEnd) : upperEnd;
    const lower = lowerPart(upper.late, content, { topMm: lowerTop, endMm }, bench, sizing);
    if (lower && lowerTop + stackHeight(lower) <= endMm)
      return draw({ upper: upper.blocks, topMm, lower, lowerTop, endMm, foot, below }, bench, sizing.setting);
  }
  return null;
}

/** What a face cannot be lower than, by counting alone: it spares most of the tries that are too large. */
function leastHeight({ bySlot, hold }: FrontContent, setting: Setting): number {
  const count = (slot: CardSlot) => bySlot[slot]?.length ?? 0;
  const large =
    count('name') * setting.namePt +
    (count('sex') + count('species') > 0 ? setting.speciesPt : 0) +
    count('traitCode') * setting.traitPt +
    count('due') * setting.duePt +
    count('feed') * setting.feedPt;
  const small = LOWER_SMALL.reduce((sum, slot) => sum + count(slot), count('traitWords'));
  const text = rowHeight(large + Math.ceil(small / 2) * setting.minorPt, setting.leading);
  return text + (hold ? bandHeight(setting) : HEAVY_MM);
}

interface Parts {
  readonly upper: readonly Block[];
  readonly topMm: number;
  readonly lower: readonly Block[];
  readonly lowerTop: number;
  readonly endMm: number;
  readonly foot: Foot;
  readonly below: boolean;
}

function draw(parts: Parts, bench: Bench, setting: Setting): SetFace {
  const { upper, topMm, lower, lowerTop, endMm, foot } = parts;
  // Beside the code a row's width hangs on its height on the card, so there the rows stay where they were measured.
  const fromMm = parts.below ? 0 : bench.frame.code.belowMm;
  const marks: Mark[] = [idMark(bench, setting)];
  drawStack(upper, { topMm, roomMm: lowerTop - topMm - FOOT_GAP_MM, spreadMm: SPREAD_MM, fromMm }, marks);
  drawStack(lower, { topMm: lowerTop, roomMm: endMm - lowerTop, spreadMm: SPREAD_MM, fromMm }, marks);
  foot.draw(bench.frame.bottom, marks);
  let form = foot.form;
  for (const block of upper) form = worseForm(form, block.form);
  for (const block of lower) form = worseForm(form, block.form);
  return { marks, form };
}

/** The id's capitals start level with the code. */
function idMark({ frame, measure, words }: Bench, { idPt }: Setting): Mark {
  const yMm = frame.code.yMm + measure.capHeight * idPt * PT_MM;
  return textMark({ wording: words.id, cut: 'bold', xMm: frame.left }, idPt, yMm);
}

interface Upper {
  readonly blocks: readonly Block[];
  /** Lines that have no room beside the code and come first below it. */
  readonly late: BySlot;
}

/**
 * Beside the code, under the id: the name, sex and species, and the traits as far as they fit; traits in the long form
 * only, since below there is more room. Null when the id, the name or the species needs smaller type or shorter words.
 */
function upperPart(lines: BySlot, roomMm: number, bench: Bench, sizing: Sizing): Upper | null {
  const { frame, words } = bench;
  const { setting, limit } = sizing;
  const width = frame.code.besideMm - frame.left;
  if (words.id.widthAtOnePt * setting.idPt > width) return null;
  const blocks: Block[] = [];
  const late: Partial<Record<CardSlot, readonly Worded<CardLine>[]>> = {};
  let height = 0;
  const fits = (row: Block | null): row is Block => row !== null && height + row.gapMm + row.heightMm <= roomMm;
  const take = (row: Block) => {
    height += row.gapMm + row.heightMm;
    blocks.push(row);
  };
  const identity = [...(lines.sex ?? []), ...(lines.species ?? [])];
  for (const group of [...(lines.name ?? []).map((line) => [line]), identity]) {
    if (group.length === 0) continue;
    const row = rowOf(group, width, bench, sizing);
    // The rest of a broken line stays behind the part before it.
    const follows = group.some((line) => line.follows && late[line.of.slot] !== undefined);
    if (!follows && fits(row)) take(row);
    else if (!follows && (row || limit !== 'short')) return null;
    else for (const line of group) late[line.of.slot] = [...(late[line.of.slot] ?? []), line];
  }
  for (const slot of ['traitCode', 'traitWords'] as const)
    for (const line of lines[slot] ?? []) {
      const inOrder = Object.keys(late).length === 0;
      const row = inOrder ? rowOf([line], width, bench, { ...sizing, limit: 'long' }) : null;
      if (fits(row)) take(row);
      else late[slot] = [...(late[slot] ?? []), line];
    }
  return { blocks, late };
}

/** The space between two texts of a row, in mm at 1 pt. */
const WORD_GAP = 0.75 * PT_MM;

/**
 * Lines one after the other on one baseline: the longest form up to the limit that fits in the width at the setting's
 * size, or at a smaller one that is still legible for what the line says. Null when none does.
 */
function rowOf(
  lines: readonly Worded<CardLine>[],
  width: number,
  bench: Bench,
  { setting, limit }: Sizing,
): Block | null {
  const slot = lines[0]?.of.slot ?? 'name';
  for (let level = 0; level <= LEVELS[limit]; level++) {
    const cells: Cell[] = [];
    let atOnePt = 0;
    for (const line of lines) {
      const wording = atLevel(line, level);
      if (!wording) break;
      if (cells.length > 0) atOnePt += WORD_GAP;
      cells.push(cellOf(line, wording, atOnePt));
      atOnePt += wording.widthAtOnePt;
    }
    const sizePt = Math.min(sizeIn(setting, slot), Math.floor((width / atOnePt) * 10) / 10);
    if (cells.length < lines.length || sizePt < sizeIn(TIGHTEST, slot)) continue;
    const placed = cells.map((cell) => ({ ...cell, xMm: bench.frame.left + cell.xMm * sizePt }));
    return textRow(placed, { sizePt, leading: setting.leading, gapMm: setting.gapMm }, bench.measure);
  }
  return null;
}

/** Under a heavy rule or the hold's band: when it is due, what it eats, and the ledger of small lines. Null when it is too much. */
function lowerPart(
  late: BySlot,
  { bySlot, hold }: FrontContent,
  { topMm, endMm }: { readonly topMm: number; readonly endMm: number },
  bench: Bench,
  sizing: Sizing,
): readonly Block[] | null {
  const { frame, measure } = bench;
  const { setting, limit } = sizing;
  const { left } = frame;
  const rightAt = (yMm: number) => (yMm >= frame.code.belowMm ? frame.right : frame.code.besideMm);
  const right = rightAt(topMm);
  const head = hold ? holdBand(hold, { left, right }, sizing, measure) : ruleRow(left, right - left, HEAVY_MM);
  if (!head) return null;
  const blocks: Block[] = [head];
  let y = topMm + head.heightMm;
  for (const lines of [late.name, late.sex, late.species, ...LOWER_FIRST.map((slot) => bySlot[slot]), late.traitCode])
    for (const line of lines ?? []) {
      const row = rowOf([line], rightAt(y + setting.gapMm) - left, bench, sizing);
      if (!row || y > endMm) return null;
      blocks.push(row);
      y += row.gapMm + row.heightMm;
    }
  const small = [...(late.traitWords ?? []), ...LOWER_SMALL.flatMap((slot) => bySlot[slot] ?? [])];
  const gapMm = setting.gapMm + LEDGER_GAP_MM;
  const room = { left, rightAt, topMm: y + gapMm, sizePt: setting.minorPt, leading: setting.leading, limit };
  if (room.topMm + leastLedger(small.length, room) > endMm + gapMm) return null;
  const rows = ledger(small, room, measure);
  return rows && [...blocks, ...rows.map((row, at) => (at === 0 ? { ...row, gapMm } : row))];
}

/** The second face: the id and name again, and the lines that the first did not hold. Null when one fits in no form. */
export function setBack(
  moved: readonly Worded<CardLine>[],
  name: readonly Worded<CardLine>[],
  bench: Bench,
  sizing: Sizing,
): SetFace | null {
  const { frame, measure, words } = bench;
  const { setting, limit } = sizing;
  const lowerTop = frame.code.belowMm;
  const topMm = frame.code.yMm + measure.capHeight * setting.idPt * PT_MM + UNDER_ID_MM;
  const foot = footOf(words.print, [], frame, sizing, measure);
  const upper = upperPart({ name }, lowerTop - topMm, bench, { ...sizing, limit: 'short' });
  const room = { left: frame.left, rightAt: () => frame.right, topMm: lowerTop, sizePt: setting.minorPt };
  const lower = ledger(moved, { ...room, leading: setting.leading, limit }, measure);
  if (!foot || !upper || !lower) return null;
  const endMm = frame.bottom - foot.heightMm - FOOT_GAP_MM;
  if (lowerTop + stackHeight(lower) > endMm) return null;
  return draw({ upper: upper.blocks, topMm, lower, lowerTop, endMm, foot, below: true }, bench, setting);
}
