import type { Mark, TextMark } from './marks.ts';
import { type Measure, PT_MM } from './measure.ts';
import { type Form, type Worded, type Wording, worseForm } from './words.ts';

/** A strip of a card. Its marks are only made once the whole face is known to fit: most ways of setting do not. */
export interface Block {
  readonly heightMm: number;
  /** The space it likes above it. */
  readonly gapMm: number;
  /** Its share of the room that is left over, put above it; 0 keeps it close to what it follows. */
  readonly stretch: number;
  readonly form: Form;
  /** Adds its marks, with its top edge at that height. */
  draw(topMm: number, onto: Mark[]): void;
}

/** A worded line on its way to a place in a row. */
export interface Cell {
  readonly wording: Pick<Wording, 'text' | 'widthAtOnePt' | 'form'>;
  readonly cut: TextMark['cut'];
  readonly xMm: number;
}

/** How a row of text is set. */
export interface RowStyle {
  readonly sizePt: number;
  /** Line height in parts of the size. */
  readonly leading: number;
  readonly gapMm: number;
}

/** Capitals stand this much lower than the middle, in parts of the size: accents need more room than descenders. */
const ACCENT_DROP = 0.06;

/** The height of a row of text in mm. */
export function rowHeight(sizePt: number, leading: number): number {
  return sizePt * PT_MM * leading;
}

/** A worded line set at `xMm`. */
export function cellOf<T>(worded: Worded<T>, wording: Wording, xMm: number): Cell {
  return { wording, cut: worded.cut, xMm };
}

/** A row of texts on one baseline. */
export function textRow(cells: readonly Cell[], style: RowStyle, measure: Measure): Block {
  const { sizePt, leading, gapMm } = style;
  const heightMm = rowHeight(sizePt, leading);
  let form: Form = 'long';
  for (const cell of cells) form = worseForm(form, cell.wording.form);
  return {
    heightMm,
    gapMm,
    stretch: 1,
    form,
    draw(topMm, onto) {
      const size = sizePt * PT_MM;
      const drop = (heightMm + size * (measure.capHeight - measure.descent)) / 2 + size * ACCENT_DROP;
      for (const cell of cells) onto.push(textMark(cell, sizePt, topMm + drop));
    },
  };
}

/** One text at a baseline. */
export function textMark(
  cell: { readonly wording: Omit<Wording, 'form'>; readonly cut: TextMark['cut']; readonly xMm: number },
  sizePt: number,
  yMm: number,
  tone: TextMark['tone'] = 'ink',
): TextMark {
  const { text, widthAtOnePt } = cell.wording;
  return { kind: 'text', text, cut: cell.cut, sizePt, xMm: cell.xMm, yMm, widthMm: widthAtOnePt * sizePt, tone };
}

/** A ruled line across the card. */
export function ruleRow(xMm: number, widthMm: number, weightMm: number): Block {
  return {
    heightMm: weightMm,
    gapMm: 0,
    stretch: 0,
    form: 'long',
    draw: (yMm, onto) => onto.push({ kind: 'rule', xMm, yMm, widthMm, heightMm: weightMm }),
  };
}

/** The height of blocks set one below the other, gaps included. */
export function stackHeight(blocks: readonly Block[]): number {
  let height = 0;
  for (const block of blocks) height += block.gapMm + block.heightMm;
  return height;
}

/** Where blocks are stacked, and how far apart at most. */
export interface Shaft {
  readonly topMm: number;
  readonly roomMm: number;
  readonly spreadMm: number;
  /** Blocks above this height keep their places: their width hangs on where they stand. */
  readonly fromMm: number;
}

/** Draws blocks one below the other; room that is left goes between them by their `stretch`. */
export function drawStack(blocks: readonly Block[], shaft: Shaft, onto: Mark[]): void {
  let parts = 0;
  let y = shaft.topMm;
  for (const block of blocks) {
    if (y + block.gapMm >= shaft.fromMm) parts += block.stretch;
    y += block.gapMm + block.heightMm;
  }
  const spare = Math.max(0, shaft.topMm + shaft.roomMm - y);
  const unit = parts > 0 ? Math.min(shaft.spreadMm, spare / parts) : 0;
  let drop = 0;
  y = shaft.topMm;
  for (const block of blocks) {
    y += block.gapMm;
    if (y >= shaft.fromMm) drop += unit * block.stretch;
    block.draw(y + drop, onto);
    y += block.heightMm;
  }
}
