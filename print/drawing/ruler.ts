import type { Placing } from '../calibration/calibration.ts';
import { textMark } from '../layout/blocks.ts';
import type { Mark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import type { SheetSide } from '../run/job.ts';
import { checkStock, labelBox, labelsPerPage, type Stock } from '../stocks/stock.ts';

const LENGTH_MM = 100;
const NEED_MM = 5.5;
const TEXT_PT = 7;
const THICK_MM = 0.2;

/**
 * A 100 mm ruler and the words about it in a sheet's margin, under the labels or above them: whoever prints at another
 * size can see it. Nothing on pages that are one card, and nothing where the margin is too narrow. With a
 * calibration it is drawn so that it comes out 100 mm long.
 */
export function rulerMarks(
  stock: Stock,
  { sheet, isBack }: Pick<SheetSide, 'sheet' | 'isBack'>,
  measure: Measure,
  place: Placing,
): readonly Mark[] {
  const room = rulerRoom(stock);
  if (!room) return [];
  const [leftMm, yMm] = place.at(room.xMm, room.yMm);
  const lengthMm = place.acrossMm(LENGTH_MM);
  const marks: Mark[] = [{ kind: 'rule', xMm: leftMm, yMm, widthMm: lengthMm, heightMm: THICK_MM }];
  for (let mm = 0; mm <= LENGTH_MM; mm += 10) {
    const back = mm === LENGTH_MM ? THICK_MM : mm === 0 ? 0 : THICK_MM / 2;
    const xMm = leftMm + (lengthMm * mm) / LENGTH_MM - back;
    marks.push({ kind: 'rule', xMm, yMm, widthMm: THICK_MM, heightMm: mm % 50 === 0 ? 1.8 : 1 });
  }
  const which = `${isBack ? 'back of ' : ''}sheet ${sheet} of`;
  const wording = measure.read(`print at 100 % · this line is 100 mm · ${stock.id} · ${which}`, 'regular');
  const words = textMark({ wording, cut: 'regular', xMm: leftMm }, TEXT_PT, yMm + 4.3);
  const blankMm = (measure.read('o f', 'regular').widthAtOnePt - measure.read('of', 'regular').widthAtOnePt) * TEXT_PT;
  return [...marks, words, { kind: 'total', xMm: leftMm + words.widthMm + blankMm, yMm: words.yMm, sizePt: TEXT_PT }];
}

/** Where the ruler starts; null where there is no room for it. */
export function rulerRoom(stock: Stock): { xMm: number; yMm: number } | null {
  if (!checkStock(stock).ok || labelsPerPage(stock) === 1 || stock.pageWidthMm < LENGTH_MM + 2 * stock.printerInsetMm)
    return null;
  const [, y, , height] = labelBox(stock, labelsPerPage(stock));
  const xMm = (stock.pageWidthMm - LENGTH_MM) / 2;
  const under = stock.pageHeightMm - y - height - stock.printerInsetMm;
  if (under >= NEED_MM) return { xMm, yMm: y + height + (under - NEED_MM) / 2 + 0.5 };
  const over = stock.firstYMm - stock.printerInsetMm;
  return over >= NEED_MM ? { xMm, yMm: stock.printerInsetMm + (over - NEED_MM) / 2 + 0.5 } : null;
}
