import { EAN_MODULES } from '../../print/ean/ean13.ts';
import type { ManifestPiece } from '../../print/index.ts';
import type { Raster } from './paper.ts';

/** Left, top, right and bottom in mm from the page's top left corner. */
export type InkBox = readonly [left: number, top: number, right: number, bottom: number];

const WHITE = 255;
/** The outer ring of a finder mark is seven modules long and one thick. */
const RING = 7;

/**
 * The edges of a code's dark square as they are drawn, from how grey the pixels across each edge are: every edge has a
 * finder mark at one end whose outer ring lies on it, so this asks no reader and takes no corner for granted.
 */
export function boxOfInk(raster: Raster, { symbolMm, modules }: Pick<ManifestPiece, 'symbolMm' | 'modules'>): InkBox {
  const [x, y, width, height] = symbolMm;
  const module = width / modules;
  // Along the ring, but for a module at its ends; across it from a module outside to the middle of the ring.
  const along = (start: number) => [start + module, start + (RING - 1) * module] as const;
  return [
    x - module + inkAcross(raster, [x - module, x + module / 2], along(y), 'x', 'end'),
    y - module + inkAcross(raster, [y - module, y + module / 2], along(x), 'y', 'end'),
    x + width - module / 2 + inkAcross(raster, [x + width - module / 2, x + width + module], along(y), 'x', 'start'),
    y + height - module / 2 + inkAcross(raster, [y + height - module / 2, y + height + module], along(x), 'y', 'start'),
  ];
}

/**
 * The edges of a bar code as it is drawn: from its first and last bar, which are one module wide with as much blank inside them.
 * How much ink there is and where its middle lies gives their sides, and how far it goes on as deep gives their ends.
 */
export function boxOfBars(raster: Raster, [x, y, width, height]: ManifestPiece['boxMm']): InkBox {
  const module = width / EAN_MODULES;
  const [right, bottom] = [x + width, y + height];
  const middle = [y + height / 4, y + height / 2] as const;
  const [left] = sidesOf(inkIn(raster, [x - module, x + module * 1.5], middle, 'x'));
  const [, end] = sidesOf(inkIn(raster, [right - module * 1.5, right + module], middle, 'x'));
  const bar = [x, x + module] as const;
  const depth = inkMm(inkIn(raster, middle, bar, 'y')) / (middle[1] - middle[0]);
  const within = (from: number, to: number) => inkMm(inkIn(raster, [from, to], bar, 'y')) / depth;
  const [top, foot] = [within(y - module, y + module), within(bottom - module, bottom + module)];
  return [left, y + module - top, end, bottom - module + foot];
}

type Stretch = readonly [from: number, to: number];

/** Where in a stretch, from its start in mm, the ink begins (`end` of the stretch is inked) or ends (`start` is). */
function inkAcross(raster: Raster, across: Stretch, along: Stretch, axis: 'x' | 'y', inked: 'start' | 'end'): number {
  const ink = inkMm(inkIn(raster, across, along, axis));
  return inked === 'start' ? ink : across[1] - across[0] - ink;
}

/** One line of dots across a stretch: from where to where it lies, in mm, and how dark it is on the whole, 0 to 1. */
interface InkLine {
  readonly from: number;
  readonly to: number;
  readonly dark: number;
}

const lengthOf = ({ from, to, dark }: InkLine): number => (to - from) * dark;

function inkMm(lines: readonly InkLine[]): number {
  return lines.reduce((sum, line) => sum + lengthOf(line), 0);
}

/** Both sides of the only bar in a stretch. */
function sidesOf(lines: readonly InkLine[]): Stretch {
  const wide = inkMm(lines);
  const middle = lines.reduce((sum, line) => sum + (lengthOf(line) * (line.from + line.to)) / 2, 0) / wide;
  return [middle - wide / 2, middle + wide / 2];
}

/** How dark the dots of a stretch are, each line of them on the whole of `along`. */
function inkIn(raster: Raster, across: Stretch, along: Stretch, axis: 'x' | 'y'): readonly InkLine[] {
  const { dotsPerMm, width, grey } = raster;
  const [from, to] = [across[0] * dotsPerMm, across[1] * dotsPerMm];
  const [first, last] = [Math.round(along[0] * dotsPerMm), Math.round(along[1] * dotsPerMm)];
  const lines: InkLine[] = [];
  for (let dot = Math.floor(from); dot < Math.ceil(to); dot++) {
    let dark = 0;
    for (let at = first; at < last; at++) {
      const [px, py] = axis === 'x' ? [dot, at] : [at, dot];
      dark += 1 - (grey[py * width + px] ?? WHITE) / WHITE;
    }
    const clipped = { from: Math.max(dot, from) / dotsPerMm, to: Math.min(dot + 1, to) / dotsPerMm };
    lines.push({ ...clipped, dark: dark / Math.max(1, last - first) });
  }
  return lines;
}
