import type { LabelLine } from '../../src/core/index.ts';
import type { Measure } from './measure.ts';
import { type Form, fitting, LEVELS, type Worded, type Wording } from './words.ts';

const MOST_ROWS = 8;

/** A line in one row in the longest form that fits, else the shortest form of these in rows. Null where that takes too many. */
export function brokenLine(
  line: Worded<LabelLine>,
  widthMm: number,
  sizePt: number,
  measure: Measure,
  limit: Form,
): readonly Worded<LabelLine>[] | null {
  if (fitting(line, widthMm, sizePt, limit) !== null) return [line];
  const wording = line.wordings[Math.min(LEVELS[limit], line.wordings.length - 1)];
  const rows = wording === undefined ? [] : wrapped(wording, line.cut, widthMm / sizePt, measure);
  const fits = rows.length <= MOST_ROWS && rows.every((row) => row.widthAtOnePt * sizePt <= widthMm);
  if (!fits || rows.length === 0) return null;
  return rows.map((row, at) => ({ ...line, wordings: [row], follows: at > 0 }));
}

/** A figure and its unit are never on two rows. */
const BLANK = / (?!(?:%|mL|mg|g|kg|cm|per)(?:[\s,;.)]|$))/;

/** The words of a wording that stay together, each with its width at 1 pt; they are asked for in every size. */
const parted = new WeakMap<Wording, readonly { readonly text: string; readonly width: number }[]>();

function partsOf(wording: Wording, cut: Worded<unknown>['cut'], measure: Measure) {
  const known = parted.get(wording);
  if (known !== undefined) return known;
  const parts = wording.text.split(BLANK).map((text) => ({ text, width: measure.read(text, cut).widthAtOnePt }));
  parted.set(wording, parts);
  return parts;
}

/** A wording in as few rows as hold it, each as full as it can be. */
function wrapped(wording: Wording, cut: Worded<unknown>['cut'], most: number, measure: Measure): readonly Wording[] {
  const blank = measure.read('n n', cut).widthAtOnePt - measure.read('nn', cut).widthAtOnePt;
  const rows: Wording[] = [];
  for (const { text, width } of partsOf(wording, cut, measure)) {
    const last = rows.at(-1);
    const joined = last ? last.widthAtOnePt + blank + width : width;
    if (last && joined <= most)
      rows[rows.length - 1] = { form: wording.form, text: `${last.text} ${text}`, widthAtOnePt: joined };
    else rows.push({ form: wording.form, text, widthAtOnePt: width });
  }
  return rows;
}
