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

type Stretch = readonly [from: number, to: number];

/** Where in a stretch, from its start in mm, the ink begins (`end` of the stretch is inked) or ends (`start` is). */
function inkAcross(raster: Raster, across: Stretch, along: Stretch, axis: 'x' | 'y', inked: 'start' | 'end'): number {
  const dots = ([from, to]: Stretch): Stretch => [from * raster.dotsPerMm, to * raster.dotsPerMm];
  const [from, to] = dots(across);
  const [first, last] = dots(along).map(Math.round) as [number, number];
  let dark = 0;
  let lines = 0;
  for (let line = first; line < last; line++) {
    lines++;
    for (let dot = Math.floor(from); dot < Math.ceil(to); dot++) {
      const share = Math.min(dot + 1, to) - Math.max(dot, from);
      const [px, py] = axis === 'x' ? [dot, line] : [line, dot];
      dark += share * (1 - (raster.grey[py * raster.width + px] ?? WHITE) / WHITE);
    }
  }
  const inkMm = dark / Math.max(1, lines) / raster.dotsPerMm;
  return inked === 'start' ? inkMm : (to - from) / raster.dotsPerMm - inkMm;
}
