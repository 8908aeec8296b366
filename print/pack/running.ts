import { textMark } from '../layout/blocks.ts';
import type { Mark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import { printable } from './wrap.ts';

const RUNNING_PT = 7.5;

/** Two texts on one line, one at each edge; the first gives way where both do not fit, since it stands on every page. */
export function runningMarks(
  [start, end]: readonly [string, string],
  [left, right]: readonly [number, number],
  yMm: number,
  measure: Measure,
): readonly Mark[] {
  const last = sizeable(end, right - left, measure);
  const xMm = right - last.wording.widthAtOnePt * last.sizePt;
  const first = sizeable(start, xMm - left - 5, measure);
  const marks = [textMark({ ...last, cut: 'regular', xMm }, last.sizePt, yMm)];
  return first.sizePt < LEAST_PT
    ? marks
    : [textMark({ ...first, cut: 'regular', xMm: left }, first.sizePt, yMm), ...marks];
}

const LEAST_PT = 4;

/** A running line is set smaller where it is long, since its words stand whole in the body. */
function sizeable(text: string, widthMm: number, measure: Measure) {
  const wording = measure.read(printable(text, 'regular', measure), 'regular');
  const fits = wording.widthAtOnePt === 0 ? RUNNING_PT : Math.floor((widthMm / wording.widthAtOnePt) * 10) / 10;
  return { wording, sizePt: Math.min(RUNNING_PT, fits) };
}
