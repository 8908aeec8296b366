import { textMark } from '../layout/blocks.ts';
import type { Mark } from '../layout/marks.ts';
import type { Measure } from '../layout/measure.ts';
import { labelBox, labelsPerPage, type Stock } from '../stocks/stock.ts';

const LENGTH_MM = 100;
const NEED_MM = 5.5;
const TEXT_PT = 7;

/**
 * A 100 mm ruler and the words about it in a sheet's margin, under the labels or above them: whoever prints at another
 * size can see it. Nothing on pages that are one card, and nothing where the margin is too narrow.
 */
export function rulerMarks(stock: Stock, page: number, pages: number, measure: Measure): readonly Mark[] {
  const place = rulerPlace(stock);
  if (!place) return [];
  const words = `print at 100 % · this line is 100 mm · ${stock.id} · sheet ${page} of ${pages}`;
  const marks: Mark[] = [{ kind: 'rule', xMm: place.xMm, yMm: place.yMm, widthMm: LENGTH_MM, heightMm: 0.2 }];
  for (let mm = 0; mm <= LENGTH_MM; mm += 10) {
    const height = mm % 50 === 0 ? 1.8 : 1;
    marks.push({
      kind: 'rule',
      xMm: place.xMm + mm - (mm === LENGTH_MM ? 0.2 : mm === 0 ? 0 : 0.1),
      yMm: place.yMm,
      widthMm: 0.2,
      heightMm: height,
    });
  }
  const wording = measure.read(words, 'regular');
  return [...marks, textMark({ wording, cut: 'regular', xMm: place.xMm }, TEXT_PT, place.yMm + 4.3)];
}

function rulerPlace(stock: Stock): { xMm: number; yMm: number } | null {
  if (labelsPerPage(stock) === 1 || stock.pageWidthMm < LENGTH_MM + 2 * stock.printerInsetMm) return null;
  const [, y, , height] = labelBox(stock, labelsPerPage(stock));
  const xMm = (stock.pageWidthMm - LENGTH_MM) / 2;
  const under = stock.pageHeightMm - y - height - stock.printerInsetMm;
  if (under >= NEED_MM) return { xMm, yMm: y + height + (under - NEED_MM) / 2 + 0.5 };
  const over = stock.firstYMm - stock.printerInsetMm;
  return over >= NEED_MM ? { xMm, yMm: stock.printerInsetMm + (over - NEED_MM) / 2 + 0.5 } : null;
}
