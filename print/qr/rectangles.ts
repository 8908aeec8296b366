import type { QrSymbol } from './symbol.ts';

/** x, y, width and height in whole modules. */
export type ModuleRect = readonly [x: number, y: number, width: number, height: number];

/**
 * The dark modules as rectangles that do not overlap: runs along the rows, drawn down as long as the run below is as
 * wide. A third of the operators of single modules, and no seams between them.
 */
export function darkRectangles(symbol: Pick<QrSymbol, 'size' | 'modules'>): readonly ModuleRect[] {
  const { size, modules } = symbol;
  const done: ModuleRect[] = [];
  // By column: how wide the open rectangle that starts there is, and in which row it began.
  const widths = new Uint8Array(size);
  const tops = new Uint8Array(size);
  for (let y = 0; y <= size; y++) {
    for (let x = 0; x < size; x++) {
      const run = y < size ? runAt(modules, y * size, x, size) : 0;
      const width = widths[x] ?? 0;
      if (run === width) continue;
      const top = tops[x] ?? 0;
      if (width > 0) done.push([x, top, width, y - top]);
      widths[x] = run;
      tops[x] = y;
    }
  }
  return done;
}

/** The length of the dark run that starts at column `x` of a row; 0 where none starts. */
function runAt(modules: Uint8Array, row: number, x: number, size: number): number {
  if (modules[row + x] !== 1 || (x > 0 && modules[row + x - 1] === 1)) return 0;
  let end = x + 1;
  while (end < size && modules[row + end] === 1) end++;
  return end - x;
}
