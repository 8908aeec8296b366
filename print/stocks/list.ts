import { ok, type Result, refuse } from '../../src/core/index.ts';
import type { Stock } from './stock.ts';

type Pair = readonly [number, number];

interface SheetRow {
  readonly id: string;
  readonly name: string;
  readonly page: Pair;
  readonly label: Pair;
  readonly grid: Pair;
  readonly first: Pair;
  readonly pitch: Pair;
}

const A4: Pair = [210, 297];
const LETTER: Pair = [215.9, 279.4];
/** Office printers leave about 4 to 5 mm at the edge blank (common practice, no source). */
const SHEET_INSET_MM = 5;
/** Card and label printers reach to within about 1.5 mm of the edge (common practice, no source). */
const CARD_INSET_MM = 1.5;

/** Common die-cut sheets; geometry from open label templates, see docs/sources.md. */
const SHEETS: readonly SheetRow[] = [
  sheet('a4-85x54', 'A4, 10 cards of 85 × 54 mm', A4, [85, 54], [2, 5], [15, 13.5], [95, 54]),
  sheet('a4-105x148', 'A4 cut in four, 4 cards of 105 × 148 mm (A6)', A4, [105, 148], [2, 2], [0, 0.5], [105, 148]),
  sheet('a4-70x52', 'A4, 10 cards of 70 × 52 mm', A4, [70, 52], [2, 5], [23.5, 18.5], [93, 52]),
  sheet(
    'letter-88.9x50.8',
    'Letter, 10 cards of 88.9 × 50.8 mm',
    LETTER,
    [88.9, 50.8],
    [2, 5],
    [19.05, 12.7],
    [88.9, 50.8],
  ),
  sheet(
    'letter-101.6x50.8',
    'Letter, 10 labels of 101.6 × 50.8 mm',
    LETTER,
    [101.6, 50.8],
    [2, 5],
    [4.13, 12.7],
    [106.36, 50.8],
  ),
  sheet('a4-70x50.8', 'A4, 15 labels of 70 × 50.8 mm', A4, [70, 50.8], [3, 5], [0, 21.5], [70, 50.8]),
  sheet(
    'letter-68.26x50.8',
    'Letter, 15 labels of 68.26 × 50.8 mm',
    LETTER,
    [68.26, 50.8],
    [3, 5],
    [3.17, 12.7],
    [70.64, 50.8],
  ),
  sheet('a4-99.1x38.1', 'A4, 14 labels of 99.1 × 38.1 mm', A4, [99.1, 38.1], [2, 7], [3.35, 15.17], [103.01, 38.1]),
  sheet('a4-63.5x38.1', 'A4, 21 labels of 63.5 × 38.1 mm', A4, [63.5, 38.1], [3, 7], [7.21, 15.15], [66.04, 38.1]),
  sheet(
    'letter-66.67x25.4',
    'Letter, 30 labels of 66.67 × 25.4 mm',
    LETTER,
    [66.67, 25.4],
    [3, 10],
    [3.97, 12.7],
    [70.64, 25.4],
  ),
  sheet(
    'a4-38.1x21.2',
    'A4, 65 small labels of 38.1 × 21.2 mm',
    A4,
    [38.1, 21.2],
    [5, 13],
    [4.67, 10.7],
    [40.64, 21.2],
  ),
];

/** Rolls, one label a page; sizes of common rolls, see docs/sources.md. */
const ROLLS: readonly Pair[] = [
  [100, 150],
  [100, 100],
  [90, 40],
  [75, 48],
  [70, 25],
  [57, 32],
  [50, 25],
  [40, 15],
];

/** Every stock that is known, sheets first. */
export const STOCKS: readonly Stock[] = [
  ...SHEETS.map(fromRow),
  single('card-85x54', 'Single cards of 85 × 54 mm', [85, 54]),
  single('card-70x52', 'Single cards of 70 × 52 mm', [70, 52]),
  ...ROLLS.map(([width, height]) =>
    single(`roll-${width}x${height}`, `Roll of ${width} × ${height} mm`, [width, height]),
  ),
];

/** The stock with that id. Error: `stock-unknown`. */
export function stockById(id: string): Result<Stock> {
  const found = STOCKS.find((stock) => stock.id === id);
  return found ? ok(found) : refuse('stock-unknown', { stock: id, known: STOCKS.map((stock) => stock.id).join(', ') });
}

function sheet(id: string, name: string, page: Pair, label: Pair, grid: Pair, first: Pair, pitch: Pair): SheetRow {
  return { id, name, page, label, grid, first, pitch };
}

function fromRow(row: SheetRow): Stock {
  return {
    id: row.id,
    name: row.name,
    pageWidthMm: row.page[0],
    pageHeightMm: row.page[1],
    labelWidthMm: row.label[0],
    labelHeightMm: row.label[1],
    columns: row.grid[0],
    rows: row.grid[1],
    firstXMm: row.first[0],
    firstYMm: row.first[1],
    pitchXMm: row.pitch[0],
    pitchYMm: row.pitch[1],
    printerInsetMm: SHEET_INSET_MM,
  };
}

function single(id: string, name: string, size: Pair): Stock {
  const row = { id, name, page: size, label: size, grid: [1, 1] as const, first: [0, 0] as const, pitch: size };
  return { ...fromRow(row), printerInsetMm: CARD_INSET_MM };
}
