import { ok, type Result, refuse } from '../../src/core/index.ts';

/** A sheet of labels, or a page that is one card. All lengths in mm from the page's top left corner. */
export interface Stock {
  readonly id: string;
  readonly name: string;
  readonly pageWidthMm: number;
  readonly pageHeightMm: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly firstXMm: number;
  readonly firstYMm: number;
  readonly pitchXMm: number;
  readonly pitchYMm: number;
  /** What the printer cannot reach at the page's edge; content keeps that far away from it. */
  readonly printerInsetMm: number;
}

/** x, y, width and height in mm. */
export type BoxMm = readonly [x: number, y: number, width: number, height: number];

/** What stays free inside each edge of a label, in mm. */
export interface Inset {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Content keeps this far from a cut edge: sheets creep by up to a millimetre, and sleeves cover the rim. */
const PADDING_MM = 3;
/** Rounding of inches to mm in label data must not count as an overlap. */
const SLACK_MM = 0.02;

/** The number of labels on one sheet. */
export function labelsPerPage(stock: Stock): number {
  return stock.columns * stock.rows;
}

/** The box of a label; `label` counts from 1, along the rows. */
export function labelBox(stock: Stock, label: number): BoxMm {
  const column = (label - 1) % stock.columns;
  const row = Math.floor((label - 1) / stock.columns);
  return [
    round(stock.firstXMm + column * stock.pitchXMm),
    round(stock.firstYMm + row * stock.pitchYMm),
    stock.labelWidthMm,
    stock.labelHeightMm,
  ];
}

/** The same inset for every label of a stock, wide enough for the ones at the page's edge. */
export function contentInset(stock: Stock, paddingMm: number = PADDING_MM): Inset {
  const last = labelBox(stock, labelsPerPage(stock));
  const keep = (room: number) => round(Math.max(paddingMm, stock.printerInsetMm - Math.max(0, room)));
  return {
    left: keep(stock.firstXMm),
    top: keep(stock.firstYMm),
    right: keep(stock.pageWidthMm - last[0] - last[2]),
    bottom: keep(stock.pageHeightMm - last[1] - last[3]),
  };
}

/** The room inside the rim of the smallest label that a whole card was laid out for. */
const CARD_ROOM_MM = { width: 64, height: 44.8 } as const;

/** Rule PRINT-ROOM: whether a label has the room that a tub card with all its lines needs. */
export function takesCards(stock: Stock): boolean {
  const { left, top, right, bottom } = contentInset(stock);
  const width = round(stock.labelWidthMm - left - right);
  const height = round(stock.labelHeightMm - top - bottom);
  return width >= CARD_ROOM_MM.width && height >= CARD_ROOM_MM.height;
}

/**
 * A stock whose labels neither overlap nor leave the page; `say` writes a length in mm as the keeper typed it. Errors, each
 * at the length that is wrong: `stock-overlaps`, `stock-off-page`.
 */
export function checkStock(stock: Stock, say: (mm: number) => string = sayMm): Result<Stock> {
  const why = sizesWrong(stock);
  if (why) return refuse('stock-off-page', { stock: stock.id, why });
  if (stock.columns > 1 && stock.pitchXMm < stock.labelWidthMm - SLACK_MM)
    return refuse(
      'stock-overlaps',
      { stock: stock.id, why: `${say(stock.labelWidthMm)} wide, pitch ${say(stock.pitchXMm)}` },
      'pitchXMm',
    );
  if (stock.rows > 1 && stock.pitchYMm < stock.labelHeightMm - SLACK_MM)
    return refuse(
      'stock-overlaps',
      { stock: stock.id, why: `${say(stock.labelHeightMm)} high, pitch ${say(stock.pitchYMm)}` },
      'pitchYMm',
    );
  const [x, y, width, height] = labelBox(stock, labelsPerPage(stock));
  if (stock.firstXMm < 0 || x + width > stock.pageWidthMm + SLACK_MM)
    return refuse(
      'stock-off-page',
      {
        stock: stock.id,
        why: `from ${say(stock.firstXMm)} to ${say(round(x + width))} across, page ${say(stock.pageWidthMm)}`,
      },
      'firstXMm',
    );
  if (stock.firstYMm < 0 || y + height > stock.pageHeightMm + SLACK_MM)
    return refuse(
      'stock-off-page',
      {
        stock: stock.id,
        why: `from ${say(stock.firstYMm)} to ${say(round(y + height))} down, page ${say(stock.pageHeightMm)}`,
      },
      'firstYMm',
    );
  return ok(stock);
}

function sizesWrong(stock: Stock): string | null {
  const { columns, rows } = stock;
  if (!(Number.isInteger(columns) && Number.isInteger(rows) && columns > 0 && rows > 0))
    return `${columns} columns and ${rows} rows`;
  const lengths = [stock.pageWidthMm, stock.pageHeightMm, stock.labelWidthMm, stock.labelHeightMm];
  if (!lengths.every((length) => Number.isFinite(length) && length > 0)) return 'a length is not more than 0 mm';
  const places = [stock.firstXMm, stock.firstYMm, stock.pitchXMm, stock.pitchYMm, stock.printerInsetMm];
  return places.every(Number.isFinite) ? null : 'a place is not a number of mm';
}

function sayMm(mm: number): string {
  return `${mm} mm`;
}

function round(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}
