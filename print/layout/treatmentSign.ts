import { type LabelLine, SIGN_COLUMNS } from '../../src/core/index.ts';
import { type Block, cellOf, rowHeight, textMark } from './blocks.ts';
import type { Span } from './flags.ts';
import type { Mark } from './marks.ts';
import type { Measure } from './measure.ts';
import type { SheetSetting } from './treatmentSettings.ts';
import { type Form, fitting, LEVELS, type Worded, type Wording } from './words.ts';

/** A table of lines to sign: its heading, and one block for each dose. */
export interface SignTable {
  readonly head: Block;
  readonly rows: readonly Block[];
}

/** What a column for the pen is at least wide, in mm, by the number of them: enough for a hand that hurries. */
const PEN_MM: Readonly<Record<'whole' | 'close', readonly number[]>> = {
  whole: [14, 12, 11, 19, 17],
  close: [15, 9, 13, 11.5],
};
const PAD_MM = 1;
const HAIRLINE_MM = 0.15;
const HEAVY_MM = 0.4;
const LEAST_HEAD_PT = 7;

/**
 * Sets the lines to sign across a span: what is printed of a dose at the left, and ruled columns for the pen. Null where the
 * pen would have too little room, or a dose’s words fit in no form.
 */
export function signTable(
  lines: readonly Worded<LabelLine>[],
  span: Span,
  setting: SheetSetting,
  measure: Measure,
  limit: Form,
): SignTable | null {
  for (const form of FORMS_FROM.filter((one) => LEVELS[one] <= LEVELS[limit]))
    for (const way of ['whole', 'close'] as const) {
      const set = tableIn({ lines, span, setting, measure, form, way });
      if (set !== null) return set;
    }
  return null;
}

const FORMS_FROM = ['long', 'medium', 'short'] as const;

interface Asked {
  readonly lines: readonly Worded<LabelLine>[];
  readonly span: Span;
  readonly setting: SheetSetting;
  readonly measure: Measure;
  readonly form: Form;
  readonly way: 'whole' | 'close';
}

function tableIn({ lines, span, setting, measure, form, way }: Asked): SignTable | null {
  const { signPt } = setting;
  const widest = Number.POSITIVE_INFINITY;
  const words = lines.map((line) => lineIn(line, widest, signPt, form));
  if (words.some((one) => one === null)) return null;
  const headPt = Math.max(LEAST_HEAD_PT, signPt * 0.8);
  const heads = SIGN_COLUMNS[way].map((text) => measure.read(text, 'regular'));
  const first = Math.max(
    ...words.map((one) => (one?.widthAtOnePt ?? 0) * signPt),
    (heads[0]?.widthAtOnePt ?? 0) * headPt,
  );
  const least = PEN_MM[way].reduce((sum, mm) => sum + mm, 0);
  const room = span.right - span.left - first - PAD_MM;
  if (room < least) return null;
  const edges = edgesOf(span.left + first + PAD_MM, PEN_MM[way], room / least);
  const fits = heads.slice(1).every((head, at) => {
    const width = (edges[at + 1] ?? span.right) - (edges[at] ?? span.left) - PAD_MM;
    return head.widthAtOnePt * headPt <= width;
  });
  if (!fits) return null;
  const head = headOf({ heads, edges, span, headPt, measure });
  const rows = lines.map((line, at) => {
    const wording = words[at];
    if (!wording) throw new RangeError('a line to sign without its words');
    return rowOf(line, wording, { edges, span, setting, measure });
  });
  return { head, rows };
}

/** All lines in one form, so that they read as one column. */
function lineIn(line: Worded<LabelLine>, width: number, sizePt: number, form: Form): Wording | null {
  const exact = line.wordings.find((one) => one.form === form);
  return exact ?? fitting(line, width, sizePt, form);
}

/** Where each pen column begins; the first one begins behind the words of the dose. */
function edgesOf(from: number, leastMm: readonly number[], times: number): readonly number[] {
  const edges = [from];
  for (const mm of leastMm.slice(0, -1)) edges.push((edges.at(-1) ?? from) + mm * times);
  return edges;
}

interface HeadParts {
  readonly heads: readonly { readonly text: string; readonly widthAtOnePt: number }[];
  readonly edges: readonly number[];
  readonly span: Span;
  readonly headPt: number;
  readonly measure: Measure;
}

function headOf({ heads, edges, span, headPt }: HeadParts): Block {
  const heightMm = rowHeight(headPt, 1.15);
  const draw = (topMm: number, onto: Mark[]): void => {
    for (const [at, wording] of heads.entries()) {
      const xMm = at === 0 ? span.left : (edges[at - 1] ?? span.left) + PAD_MM;
      onto.push(textMark({ wording, cut: 'regular', xMm }, headPt, topMm + heightMm * 0.78));
    }
    onto.push({
      ...{ kind: 'rule', xMm: span.left, yMm: topMm + heightMm },
      ...{ widthMm: span.right - span.left, heightMm: HEAVY_MM },
    });
  };
  return { heightMm: heightMm + HEAVY_MM, gapMm: 0, stretch: 0, form: 'long', draw };
}

interface RowParts {
  readonly edges: readonly number[];
  readonly span: Span;
  readonly setting: SheetSetting;
  readonly measure: Measure;
}

function rowOf(line: Worded<LabelLine>, wording: Wording, { edges, span, setting, measure }: RowParts): Block {
  const { signMm, signPt } = setting;
  const draw = (topMm: number, onto: Mark[]): void => {
    // The words stand low in the row, as handwriting does on its line.
    const baseline = topMm + signMm - HAIRLINE_MM - rowHeight(signPt, 1) * (0.2 + measure.descent / 4);
    onto.push(textMark(cellOf(line, wording, span.left), signPt, baseline));
    for (const xMm of edges)
      onto.push({ kind: 'rule', faint: true, xMm, yMm: topMm, widthMm: HAIRLINE_MM, heightMm: signMm });
    onto.push({
      ...{ kind: 'rule', xMm: span.left, yMm: topMm + signMm - HAIRLINE_MM },
      ...{ widthMm: span.right - span.left, heightMm: HAIRLINE_MM },
    });
  };
  return { heightMm: signMm, gapMm: 0, stretch: 0, form: wording.form, draw };
}
