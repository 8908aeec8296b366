import type { QrSymbol } from '../../print/index.ts';

/**
 * Reads the codewords of a version 1 symbol with mask 2 back out of its modules, by the placement rules of
 * ISO/IEC 18004, 7.7.3 and 7.8: column pairs from the right, up and down in turn, past the timing column.
 */
export function codewordsOf({ size, modules }: QrSymbol): readonly number[] {
  const bits: number[] = [];
  let upwards = true;
  for (let right = size - 1; right > 0; right -= 2) {
    if (right === 6) right--;
    for (let step = 0; step < size; step++)
      for (const x of [right, right - 1]) {
        const y = upwards ? size - 1 - step : step;
        if (isFunction(x, y, size)) continue;
        bits.push((modules[y * size + x] ?? 0) ^ (x % 3 === 0 ? 1 : 0));
      }
    upwards = !upwards;
  }
  return Array.from({ length: Math.floor(bits.length / 8) }, (_none, at) =>
    bits.slice(at * 8, at * 8 + 8).reduce((byte, bit) => byte * 2 + bit, 0),
  );
}

/** Finders with their separators and format areas, and the timing lines. */
function isFunction(x: number, y: number, size: number): boolean {
  const corner = (x < 9 && y < 9) || (x >= size - 8 && y < 9) || (x < 9 && y >= size - 8);
  return corner || x === 6 || y === 6;
}
