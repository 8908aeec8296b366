import qrcode from 'qrcode';
import type { Picture } from '../../scanner/index.ts';

/** A gray picture that tests draw and damage; every operation gives a new one. */
export interface Raster extends Picture {
  readonly data: Uint8ClampedArray;
}

/** How one symbol is drawn: pixels a module, error correction, ink and paper in gray levels. */
export interface SymbolOptions {
  readonly module?: number;
  readonly level?: 'L' | 'M' | 'Q' | 'H';
  readonly ink?: number;
  readonly paper?: number;
}

/** A symbol with its quiet zone of four modules. */
export function symbol(text: string, options: SymbolOptions = {}): Raster {
  const { module = 6, level = 'Q', ink = 30, paper = 225 } = options;
  const { modules } = qrcode.create(text, { errorCorrectionLevel: level });
  const side = (modules.size + 8) * module;
  return paint(side, side, (x, y) => {
    const column = Math.floor(x / module) - 4;
    const row = Math.floor(y / module) - 4;
    const inside = column >= 0 && row >= 0 && column < modules.size && row < modules.size;
    return inside && modules.get(row, column) ? ink : paper;
  });
}

/** A picture from a rule for each pixel; values outside 0 to 255 are clipped. */
export function paint(width: number, height: number, level: (x: number, y: number) => number): Raster {
  const data = new Uint8ClampedArray(width * height);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) data[y * width + x] = level(x, y);
  return { data, width, height };
}

/** The gray level at a pixel; the edge goes on outside. */
export function at({ data, width, height }: Raster, x: number, y: number): number {
  const column = Math.min(Math.max(x, 0), width - 1);
  const row = Math.min(Math.max(y, 0), height - 1);
  return data[row * width + column] ?? 0;
}

/** Pictures laid on one ground, each with its top left corner. */
export function onGround(
  width: number,
  height: number,
  pieces: readonly (readonly [Raster, number, number])[],
  ground = 110,
): Raster {
  return paint(width, height, (x, y) => {
    for (const [piece, left, top] of pieces) {
      if (x >= left && y >= top && x < left + piece.width && y < top + piece.height)
        return at(piece, x - left, y - top);
    }
    return ground;
  });
}

/** The picture turned by some degrees about its middle, on a larger ground. */
export function turned(picture: Raster, degrees: number, ground = 110): Raster {
  const side = Math.ceil(Math.hypot(picture.width, picture.height)) + 20;
  const angle = (degrees * Math.PI) / 180;
  return paint(side, side, (x, y) => {
    const dx = x - side / 2;
    const dy = y - side / 2;
    const fromX = dx * Math.cos(angle) + dy * Math.sin(angle) + picture.width / 2;
    const fromY = dy * Math.cos(angle) - dx * Math.sin(angle) + picture.height / 2;
    return between(picture, fromX, fromY, ground);
  });
}

/** The picture seen aslant: its far (upper) edge is this share of its near edge. */
export function aslant(picture: Raster, farShare: number, ground = 110): Raster {
  const { width, height } = picture;
  return paint(width, height, (x, y) => {
    const share = farShare + ((1 - farShare) * y) / height;
    const down = (1 / share - 1 / farShare) / (1 - 1 / farShare);
    return between(picture, (x - width / 2) / share + width / 2, down * height, ground);
  });
}

/** Smaller by any factor, each pixel the mean of what it covers. */
export function smaller(picture: Raster, factor: number): Raster {
  return paint(Math.floor(picture.width / factor), Math.floor(picture.height / factor), (x, y) => {
    let sum = 0;
    for (let j = 0; j < 4; j += 1) {
      for (let i = 0; i < 4; i += 1)
        sum += between(picture, (x + (i + 0.5) / 4) * factor - 0.5, (y + (j + 0.5) / 4) * factor - 0.5, 0);
    }
    return sum / 16;
  });
}

function between(picture: Raster, x: number, y: number, ground: number): number {
  if (x < -0.5 || y < -0.5 || x > picture.width - 0.5 || y > picture.height - 0.5) return ground;
  const left = Math.floor(x);
  const top = Math.floor(y);
  const across = x - left;
  const down = y - top;
  const upper = at(picture, left, top) * (1 - across) + at(picture, left + 1, top) * across;
  const lower = at(picture, left, top + 1) * (1 - across) + at(picture, left + 1, top + 1) * across;
  return upper * (1 - down) + lower * down;
}
