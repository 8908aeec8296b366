import type { QrSymbol } from '../../print/index.ts';

/** A module's column and row. */
export type Cell = readonly [column: number, row: number];

/** Reads the codewords of a version 1 or 2 symbol with mask 2 back out of its modules. */
export function codewordsOf({ size, modules }: Pick<QrSymbol, 'size' | 'modules'>): readonly number[] {
  const bit = ([x, y]: Cell) => (modules[y * size + x] ?? 0) ^ (x % 3 === 0 ? 1 : 0);
  return placementOf(size).map((cells) => cells.reduce((byte, cell) => byte * 2 + bit(cell), 0));
}

/**
 * The modules of each codeword of a version 1 or 2 symbol, by the placement rules of ISO/IEC 18004, 7.7.3: column pairs
 * from the right, up and down in turn, past the timing column.
 */
export function placementOf(size: number): readonly (readonly Cell[])[] {
  const cells: Cell[] = [];
  let upwards = true;
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right--;
    for (let step = 0; step < size; step++)
      for (const x of [right, right - 1]) {
        const y = upwards ? size - 1 - step : step;
        if (!isFunction(x, y, size)) cells.push([x, y]);
      }
    upwards = !upwards;
  }
  return Array.from({ length: Math.floor(cells.length / 8) }, (_none, at) => cells.slice(at * 8, at * 8 + 8));
}

/** Finders with their separators and format areas, the timing lines, and the alignment mark of version 2. */
function isFunction(x: number, y: number, size: number): boolean {
  const corner = (x < 9 && y < 9) || (x >= size - 8 && y < 9) || (x < 9 && y >= size - 8);
  const aligned = size > 21 && Math.abs(x - (size - 7)) <= 2 && Math.abs(y - (size - 7)) <= 2;
  return corner || aligned || x === 6 || y === 6;
}
