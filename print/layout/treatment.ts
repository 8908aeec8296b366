import type { LabelLine } from '../../src/core/index.ts';
import { type Block, ruleRow, stackHeight, textMark, textRow } from './blocks.ts';
import { footOf } from './flags.ts';
import type { SetFace } from './front.ts';
import type { LabelFrame } from './labelFrame.ts';
import type { Mark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { type FlowPart, fill, flowOf } from './treatmentFlow.ts';
import { brokenLine } from './treatmentRows.ts';
import { COMFORTABLE, type SheetSetting, TIGHT } from './treatmentSettings.ts';
import { type Form, fitting, type Worded, worseForm } from './words.ts';

/** A paper of a treatment to be set: its lines, its small print by the number of its face, and the code rooms it may have. */
export interface SheetJob {
  readonly lines: readonly Worded<LabelLine>[];
  readonly measure: Measure;
  /** The first face's, the best first; later faces take the last, since they are mostly for the pen. */
  readonly frames: readonly LabelFrame[];
  readonly print: (face: number, faces: number) => Worded<unknown>;
}

/** A face of a paper and the frame that it was set in. */
export interface SheetFace {
  readonly face: SetFace;
  readonly frame: LabelFrame;
}

/** A paper has no more faces; what needs more is for a larger stock. */
const MOST_FACES = 6;
const FOOT_GAP_MM = 0.7;
const RULE_MM = 0.3;
const UNDER_ID = 0.25;
const MAIN_ROWS = 2;
/** The head of later faces, in parts of the first one’s size, and its least in points. */
const LATER = { part: 0.72, idPt: 11, mainPt: 10 } as const;
const BESIDE_ID_MM = 4;

/**
 * Sets a paper of a treatment: on one face if its words can stand there in a comfortable size, then on two, then smaller and
 * on more. Every face has the id, the name, the flag and the cautions; the first has the figure and all that is read with it,
 * and lines to sign may go on over the others. Null when something fits nowhere. Nothing is cut or dropped.
 */
export function setTreatment(job: SheetJob): readonly SheetFace[] | null {
  if (job.frames.length === 0) return null;
  const single = remembered((words, setting, frame) => facesOf({ job, words, setting, frame, most: 1 }));
  const several = remembered((words, setting, frame) => facesOf({ job, words, setting, frame, most: MOST_FACES }));
  for (const { settings, most, least } of PASSES)
    for (let faces = least; faces <= most; faces++)
      for (const words of WORDS)
        for (const setting of settings)
          for (const frame of job.frames) {
            const set = (faces === 1 ? single : several)(words, setting, frame);
            const done = set?.length === faces ? drawn(set, job) : null;
            if (done !== null) return done;
          }
  return null;
}

type Ways<T> = (words: WordLimits, setting: SheetSetting, frame: LabelFrame) => T;

/** How many faces a way of setting needs is asked again for each number of faces. */
function remembered<T>(set: Ways<T>): Ways<T> {
  const known = new Map<WordLimits, Map<SheetSetting, Map<LabelFrame, T>>>();
  return (words, setting, frame) => {
    const bySetting = known.get(words) ?? new Map<SheetSetting, Map<LabelFrame, T>>();
    const byFrame = bySetting.get(setting) ?? new Map<LabelFrame, T>();
    const found = byFrame.get(frame);
    if (found !== undefined) return found;
    const made = set(words, setting, frame);
    known.set(words, bySetting.set(setting, byFrame.set(frame, made)));
    return made;
  };
}

/** How short the words may get, step by step: the cautions go to their short form before what the vet wrote does. */
const WORDS = [
  { limit: 'long', cautionLimit: 'long' },
  { limit: 'long', cautionLimit: 'short' },
  { limit: 'medium', cautionLimit: 'short' },
  { limit: 'short', cautionLimit: 'short' },
] as const satisfies readonly WordLimits[];

interface WordLimits {
  readonly limit: Form;
  readonly cautionLimit: Form;
}

const PASSES = [
  { settings: COMFORTABLE, least: 1, most: 2 },
  { settings: TIGHT, least: 1, most: 2 },
  { settings: TIGHT, least: 3, most: MOST_FACES },
] as const;

interface Way {
  readonly job: SheetJob;
  readonly words: WordLimits;
  readonly setting: SheetSetting;
  readonly frame: LabelFrame;
  readonly most: number;
}

/** The faces that a way of setting needs; null where something fits nowhere, or it needs too many. Marks are only made for the way that is taken. */
function facesOf({ job, words, setting, frame, most }: Way): readonly FaceBench[] | null {
  const back = job.frames.at(-1) ?? frame;
  const planned: FaceBench[] = [];
  let parts = flowOf(job.lines);
  for (let number = 1; number <= most; number++) {
    const bench = { job, frame: number === 1 ? frame : back, setting, ...words, number, faces: most };
    const face = oneFace(parts, bench);
    if (face === null) return null;
    planned.push(bench);
    parts = face.rest;
    if (parts.length === 0) return planned;
  }
  return null;
}

/** Set once more with the true number of faces in the small print, which may take another row: null if the faces then no longer hold all. */
function drawn(planned: readonly FaceBench[], job: SheetJob): readonly SheetFace[] | null {
  const faces: SheetFace[] = [];
  let parts = flowOf(job.lines);
  for (const bench of planned) {
    const face = oneFace(parts, { ...bench, faces: planned.length });
    if (face === null) return null;
    faces.push({ face: face.draw(), frame: bench.frame });
    parts = face.rest;
  }
  return parts.length === 0 ? faces : null;
}

interface FaceBench extends WordLimits {
  readonly job: SheetJob;
  readonly frame: LabelFrame;
  readonly setting: SheetSetting;
  readonly number: number;
  readonly faces: number;
}

function oneFace(parts: readonly FlowPart[], bench: FaceBench) {
  const { job, frame, setting, limit } = bench;
  const head = headOf(bench);
  const foot = head && footOfFace(bench);
  const cautions = foot && cautionsOf(bench, foot.topMm);
  if (!head || !foot || !cautions || head.endMm > cautions.topMm) return null;
  const filled = fill(parts, head.endMm, cautions.topMm - FOOT_GAP_MM, { frame, measure: job.measure, setting, limit });
  if (filled === null || (filled.placed.length === 0 && parts.length > 0)) return null;
  // What is read together stands together: only lines to sign may wait for the next face.
  if (bench.number === 1 && filled.rest.some((part) => part.kind === 'figure')) return null;
  const draw = (): SetFace => {
    const marks: Mark[] = [...head.marks];
    let form = worseForm(foot.form, cautions.form);
    for (const { topMm, block } of filled.placed) {
      block.draw(topMm, marks);
      form = worseForm(form, block.form);
    }
    cautions.draw(marks);
    foot.draw(marks);
    return { marks, form };
  };
  return { draw, rest: filled.rest };
}

/** The id level with the code, and the name under it; on later faces smaller, and beside it where there is room. */
function headOf({ job, frame, setting, limit, number }: FaceBench) {
  const { measure } = job;
  const isLater = number > 1;
  const idPt = isLater ? Math.max(LATER.idPt, setting.idPt * LATER.part) : setting.idPt;
  const mainPt = isLater ? Math.max(LATER.mainPt, setting.mainPt * LATER.part) : setting.mainPt;
  const marks: Mark[] = [];
  const width = frame.code.besideMm - frame.left;
  let endMm = frame.code.yMm;
  let idEnds: { readonly xMm: number; readonly yMm: number } | null = null;
  for (const line of job.lines.filter(({ of }) => of.slot === 'id')) {
    const wording = fitting(line, width, idPt, 'long');
    if (wording === null) return null;
    const yMm = endMm + measure.capHeight * idPt * PT_MM;
    marks.push(textMark({ wording, cut: line.cut, xMm: frame.left }, idPt, yMm));
    endMm = yMm + UNDER_ID * idPt * PT_MM;
    idEnds = { xMm: frame.left + wording.widthAtOnePt * idPt, yMm };
  }
  for (const line of job.lines.filter(({ of }) => of.slot === 'main')) {
    const beside = isLater && idEnds && fitting(line, frame.code.besideMm - idEnds.xMm - BESIDE_ID_MM, mainPt, 'short');
    if (beside && idEnds) {
      marks.push(textMark({ wording: beside, cut: line.cut, xMm: idEnds.xMm + BESIDE_ID_MM }, mainPt, idEnds.yMm));
      idEnds = null;
      continue;
    }
    const rows = brokenLine(line, width, mainPt, measure, limit);
    if (rows === null || rows.length > MAIN_ROWS) return null;
    for (const row of rows) {
      const wording = fitting(row, width, mainPt, limit);
      if (wording === null) return null;
      const style = { sizePt: mainPt, leading: setting.leading, gapMm: 0 };
      const block = textRow([{ wording, cut: row.cut, xMm: frame.left }], style, measure);
      block.draw(endMm, marks);
      endMm += block.heightMm;
    }
  }
  return { marks, endMm };
}

/** The small print at the left and the flag at the right, at the very bottom of every face; in one strip if any wording of the print allows it. */
function footOfFace({ job, frame, setting, limit, number, faces }: FaceBench) {
  const flags = job.lines.filter(({ of }) => of.slot === 'flag');
  const print = job.print(number, faces);
  for (const right of [frame.right, frame.code.besideMm]) {
    const span = { left: frame.left, right };
    const feet = print.wordings.flatMap(
      (wording) => footOf(wording, flags, span, { setting, limit }, job.measure) ?? [],
    );
    const [first, ...others] = feet;
    if (first === undefined) continue;
    const foot = others.reduce((least, one) => (one.heightMm < least.heightMm ? one : least), first);
    const topMm = frame.bottom - foot.heightMm;
    if (right === frame.right && topMm < frame.code.belowMm) continue;
    return { topMm, form: foot.form, draw: (onto: Mark[]) => foot.draw(frame.bottom, onto) };
  }
  return null;
}

/** The cautions above the foot of every face: in full on the first, as short as need be on the others. */
function cautionsOf({ job, frame, setting, cautionLimit, number }: FaceBench, footMm: number) {
  const lines = job.lines.filter(({ of }) => of.slot === 'caution');
  const bottom = footMm - FOOT_GAP_MM;
  if (lines.length === 0) return { topMm: bottom, form: 'long' as Form, draw: () => undefined };
  for (const right of [frame.right, frame.code.besideMm]) {
    const blocks = cautionBlocks(
      lines,
      right,
      { job, frame, setting },
      number === 1 ? cautionLimit : 'short',
      number > 1 || cautionLimit === 'short',
    );
    if (blocks === null) continue;
    const topMm = bottom - stackHeight(blocks);
    if (right === frame.right && topMm < frame.code.belowMm) continue;
    const draw = (onto: Mark[]): void => {
      let y = topMm;
      for (const block of blocks) {
        block.draw(y + block.gapMm, onto);
        y += block.gapMm + block.heightMm;
      }
    };
    return { topMm, form: blocks.reduce<Form>((form, block) => worseForm(form, block.form), 'long'), draw };
  }
  return null;
}

function cautionBlocks(
  lines: readonly Worded<LabelLine>[],
  right: number,
  { job, frame, setting }: Pick<FaceBench, 'job' | 'frame' | 'setting'>,
  limit: Form,
  isShort: boolean,
): readonly Block[] | null {
  const width = right - frame.left;
  const blocks: Block[] = [ruleRow(frame.left, width, RULE_MM)];
  for (const line of lines) {
    const said = isShort ? { ...line, wordings: line.wordings.slice(-1) } : line;
    const rows = brokenLine(said, width, setting.cautionPt, job.measure, limit);
    if (rows === null) return null;
    for (const [at, row] of rows.entries()) {
      const wording = fitting(row, width, setting.cautionPt, limit);
      if (wording === null) return null;
      const gapMm = at === 0 ? 0.5 : 0;
      const style = { sizePt: setting.cautionPt, leading: 1.14, gapMm };
      blocks.push(textRow([{ wording, cut: row.cut, xMm: frame.left }], style, job.measure));
    }
  }
  return blocks;
}
