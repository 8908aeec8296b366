import type { QrSymbol } from '../../print/index.ts';
import { type Cell, placementOf } from './codewords.ts';
import type { Raster } from './paper.ts';

/**
 * A grader of printed QR codes in outline, after ISO/IEC 15415: how a code would do, not what a verifier would certify.
 * Thresholds of symbol contrast, modulation, axial and grid non-uniformity and unused error correction: a verifier's
 * manual and a grader's source, through the project's notes (marked [S] there). The grades of fixed pattern damage, the
 * aperture of 0.8 module, and taking modulation and error correction together are from memory.
 */
export interface Grades {
  readonly contrast: number;
  readonly modulation: number;
  readonly axial: number;
  readonly grid: number;
  readonly unused: number;
  readonly fixed: number;
  /** The lowest of all. */
  readonly overall: number;
}

/** At least so much for 4, 3, 2 and 1. */
const CONTRAST = [0.7, 0.55, 0.4, 0.2] as const;
const MODULATION = [0.5, 0.4, 0.3, 0.2] as const;
const UNUSED = [0.62, 0.5, 0.37, 0.25] as const;
/** At most so much. */
const AXIAL = [0.06, 0.08, 0.1, 0.12] as const;
const GRID = [0.38, 0.5, 0.63, 0.75] as const;
/** Damaged modules of the finder, timing and alignment marks. */
const DAMAGED = [0, 1, 2, 3] as const;
const APERTURE = 0.8;

/** Codewords for error correction in the symbols that are graded here (ISO/IEC 18004, table 9): one block each. */
const CORRECTING: Readonly<Record<string, number>> = { '1 Q': 13, '1 M': 10, '2 M': 16, '2 Q': 22, '2 H': 28 };

/** Where a code lies on a raster, in its pixels: its left top corner and the length of a module across and down. */
export interface Grid {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly down: number;
}

/** Grades a code whose modules are known, on a raster of reflectance from 0 to 255. */
export function gradeOf(raster: Raster, near: Grid, symbol: QrSymbol): Grades {
  const grid = measuredGrid(raster, near, symbol.size);
  const cells = reflectances(raster, grid, symbol.size);
  const [dark, light] = [Math.min(...cells.values()), Math.max(...cells.values())];
  const [contrast, middle] = [(light - dark) / 255, (light + dark) / 2];
  const modulation = (cell: Cell) => (2 * Math.abs((cells.get(keyOf(cell)) ?? middle) - middle)) / (light - dark);
  const isWrong = ([column, row]: Cell) =>
    (cells.get(keyOf([column, row])) ?? 0) < middle !== (symbol.modules[row * symbol.size + column] === 1);
  const codewords = placementOf(symbol.size);
  const correcting = CORRECTING[`${symbol.version} ${symbol.level}`];
  if (correcting === undefined) throw new RangeError(`no table for ${symbol.version}-${symbol.level}`);
  const left = (bad: (cell: Cell) => boolean) =>
    1 - (2 * codewords.filter((word) => word.some(bad)).length) / correcting;
  const fixed = fixedCells(symbol.size);
  const grades = {
    contrast: atLeast(contrast, CONTRAST),
    // Weak modules count as lost, and what the correction has left over then says how much they matter.
    modulation: Math.max(
      0,
      ...MODULATION.map((least, at) =>
        Math.min(
          4 - at,
          atLeast(
            left((cell) => isWrong(cell) || modulation(cell) < least),
            UNUSED,
          ),
        ),
      ),
    ),
    axial: atMost(Math.abs(grid.across - grid.down) / ((grid.across + grid.down) / 2), AXIAL),
    grid: atMost(gridOff(raster, grid, symbol), GRID),
    unused: atLeast(left(isWrong), UNUSED),
    fixed: atMost(fixed.filter((cell) => isWrong(cell) || modulation(cell) < (MODULATION[3] ?? 0)).length, DAMAGED),
  };
  return { ...grades, overall: Math.min(...Object.values(grades)) };
}

function atLeast(value: number, thresholds: readonly number[]): number {
  const found = thresholds.findIndex((least) => value >= least);
  return found < 0 ? 0 : 4 - found;
}

function atMost(value: number, thresholds: readonly number[]): number {
  const found = thresholds.findIndex((most) => value <= most);
  return found < 0 ? 0 : 4 - found;
}

const keyOf = ([column, row]: Cell): string => `${column} ${row}`;

/** The mean reflectance of a round spot of 0.8 module about the middle of each module, one blank module around included. */
function reflectances(raster: Raster, grid: Grid, size: number): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (let row = -1; row <= size; row++)
    for (let column = -1; column <= size; column++) found.set(keyOf([column, row]), spot(raster, grid, [column, row]));
  return found;
}

function spot(raster: Raster, { x, y, across, down }: Grid, [column, row]: Cell): number {
  const [cx, cy] = [x + (column + 0.5) * across, y + (row + 0.5) * down];
  const radius = (APERTURE * (across + down)) / 4;
  let [sum, count] = [0, 0];
  for (let py = Math.floor(cy - radius); py <= cy + radius; py++)
    for (let px = Math.floor(cx - radius); px <= cx + radius; px++) {
      if (Math.hypot(px + 0.5 - cx, py + 0.5 - cy) > radius) continue;
      sum += raster.grey[py * raster.width + px] ?? 255;
      count++;
    }
  return count === 0 ? 255 : sum / count;
}

/** The grid from the middles of the three finder marks, as a reader has it: growth moves both edges of a mark alike. */
function measuredGrid(raster: Raster, near: Grid, size: number): Grid {
  const middle = (column: number, row: number): readonly [number, number] => {
    const at = { x: near.x + (column + 0.5) * near.across, y: near.y + (row + 0.5) * near.down };
    return [
      middleOfRun(raster, at.x, at.y, [1, 0], near.across * 3),
      middleOfRun(raster, at.x, at.y, [0, 1], near.down * 3),
    ];
  };
  const [left, top] = middle(3, 3);
  const right = middle(size - 4, 3)[0];
  const bottom = middle(3, size - 4)[1];
  const [across, down] = [(right - left) / (size - 7), (bottom - top) / (size - 7)];
  return { x: left - 3.5 * across, y: top - 3.5 * down, across, down };
}

/** The middle of the dark run about a point, along one axis. */
function middleOfRun(raster: Raster, x: number, y: number, [dx, dy]: readonly [0 | 1, 0 | 1], most: number): number {
  const isDark = (step: number) => {
    const [px, py] = [Math.floor(x + step * dx), Math.floor(y + step * dy)];
    return (raster.grey[py * raster.width + px] ?? 255) < 128;
  };
  let [from, to] = [0, 0];
  while (from > -most && isDark(from - 1)) from--;
  while (to < most && isDark(to + 1)) to++;
  return (dx === 1 ? Math.floor(x) : Math.floor(y)) + (from + to + 1) / 2;
}

/** How far the middles of single dark modules of the timing marks lie from the grid, in modules, at most. */
function gridOff(raster: Raster, { x, y, across, down }: Grid, { size }: QrSymbol): number {
  let most = 0;
  for (let at = 8; at < size - 8; at += 2) {
    const [cx, cy] = [x + (at + 0.5) * across, y + (at + 0.5) * down];
    const [row, column] = [y + 6.5 * down, x + 6.5 * across];
    const off = [
      (middleOfRun(raster, cx, row, [1, 0], across) - cx) / across,
      (middleOfRun(raster, column, cy, [0, 1], down) - cy) / down,
    ];
    most = Math.max(most, ...off.map(Math.abs));
  }
  return most;
}

/** The modules of the finder marks with their light rims, of the timing marks, and of the alignment mark of version 2. */
function fixedCells(size: number): readonly Cell[] {
  const cells: Cell[] = [];
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      const isFinder = (column < 8 || column >= size - 8) && row < 8;
      const isLower = column < 8 && row >= size - 8;
      const isAligned = size > 21 && Math.abs(column - (size - 7)) <= 2 && Math.abs(row - (size - 7)) <= 2;
      if (isFinder || isLower || isAligned || column === 6 || row === 6) cells.push([column, row]);
    }
  return cells;
}
