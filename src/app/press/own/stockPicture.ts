import type { BoxMm } from '../../../../print/stocks/stock.ts';
import type { ReadStock } from './stockDraft.ts';

/** A stock as far as its lines can be read, to be drawn to scale in mm. */
export interface StockPicture {
  readonly pageMm: readonly [width: number, height: number];
  /** What the printer cannot reach at each edge. */
  readonly insetMm: number;
  /** Labels that stay on the page, and those that leave it. */
  readonly on: readonly BoxMm[];
  readonly off: readonly BoxMm[];
  /** Where labels lie on each other. */
  readonly overlaps: readonly BoxMm[];
  /** What is drawn: the page, and what leaves it as far as half a page around. */
  readonly viewMm: BoxMm;
}

/** Rounding of inches to mm in label data must not count, as in print. */
const SLACK_MM = 0.02;

/** Null while there is no page to draw. */
export function stockPicture({ lengths }: ReadStock): StockPicture | null {
  const { pageWidthMm: pageWidth, pageHeightMm: pageHeight } = lengths;
  if (pageWidth === undefined || pageHeight === undefined) return null;
  const labels = labelsIn(lengths);
  const isOn = ([x, y, width, height]: BoxMm): boolean =>
    x >= 0 && y >= 0 && x + width <= pageWidth + SLACK_MM && y + height <= pageHeight + SLACK_MM;
  const off = labels.filter((box) => !isOn(box));
  return {
    pageMm: [pageWidth, pageHeight],
    insetMm: lengths.printerInsetMm ?? 0,
    on: labels.filter(isOn),
    off,
    overlaps: overlapsIn(lengths, labels),
    viewMm: viewOf(pageWidth, pageHeight, off),
  };
}

function labelsIn(lengths: ReadStock['lengths']): readonly BoxMm[] {
  const { labelWidthMm: width, labelHeightMm: height, columns, rows, firstXMm, firstYMm } = lengths;
  const [stepX, stepY] = [lengths.pitchXMm ?? width, lengths.pitchYMm ?? height];
  if (width === undefined || height === undefined || stepX === undefined || stepY === undefined) return [];
  const [left, top] = [firstXMm ?? 0, firstYMm ?? 0];
  return Array.from({ length: rows ?? 1 }, (_none, row) =>
    Array.from(
      { length: columns ?? 1 },
      (_same, column): BoxMm => [left + column * stepX, top + row * stepY, width, height],
    ),
  ).flat();
}

/** Of labels in a grid each lies on its neighbours, or none does. */
function overlapsIn(lengths: ReadStock['lengths'], labels: readonly BoxMm[]): readonly BoxMm[] {
  const { columns = 1, rows = 1 } = lengths;
  return labels.flatMap(([x, y, width, height], at): BoxMm[] => {
    const [stepX, stepY] = [lengths.pitchXMm ?? width, lengths.pitchYMm ?? height];
    const [wide, high] = [Math.min(width, width - stepX), Math.min(height, height - stepY)];
    const [column, row] = [at % columns, Math.floor(at / columns)];
    return [
      ...(wide > SLACK_MM && column < columns - 1 ? [[x + width - wide, y, wide, height] as const] : []),
      ...(high > SLACK_MM && row < rows - 1 ? [[x, y + height - high, width, high] as const] : []),
    ];
  });
}

function viewOf(width: number, height: number, off: readonly BoxMm[]): BoxMm {
  const rim = Math.max(width, height) * 0.02;
  const side = (at: number, least: number, most: number): number => Math.min(most, Math.max(least, at));
  const left = side(Math.min(0, ...off.map(([x]) => x)), -width / 2, 0) - rim;
  const top = side(Math.min(0, ...off.map(([, y]) => y)), -height / 2, 0) - rim;
  const right = side(Math.max(width, ...off.map(([x, , wide]) => x + wide)), width, width * 1.5) + rim;
  const bottom = side(Math.max(height, ...off.map(([, y, , high]) => y + high)), height, height * 1.5) + rim;
  return [left, top, right - left, bottom - top];
}
