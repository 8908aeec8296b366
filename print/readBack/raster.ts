/** A page as ink on pixels: one byte each, 0 is ink and 255 is paper. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly dotsPerMm: number;
  readonly grey: Uint8ClampedArray;
}

/** A point in pixels. */
export type Dot = readonly [x: number, y: number];

/** Something to put ink or paper on. */
export interface Canvas extends Raster {
  /** A rectangle with soft edges, from one corner to the other. */
  box(from: Dot, to: Dot, tone: number): void;
  /** The field within closed runs of lines, by the nonzero rule where they do not cross themselves. */
  field(points: readonly Dot[], tone: number): void;
}

const PAPER = 255;
/** Lines of a pixel that are looked at when a field is filled; across, its edges are exact. */
const FINE = 4;

/** Blank paper; a buffer that is large enough is used again. */
export function blankCanvas(width: number, height: number, dotsPerMm: number, buffer?: Uint8ClampedArray): Canvas {
  const size = width * height;
  const grey = buffer !== undefined && buffer.length >= size ? buffer.subarray(0, size) : new Uint8ClampedArray(size);
  grey.fill(PAPER);
  const put = (at: number, tone: number, share: number) => {
    const was = grey[at] ?? PAPER;
    grey[at] = was + (tone - was) * share;
  };
  /** A stretch of one row, its ends cut where they are. */
  const run = (y: number, from: number, to: number, tone: number, share: number) => {
    const [left, right] = [Math.max(0, from), Math.min(width, to)];
    if (y < 0 || y >= height || right <= left) return;
    const [first, last] = [Math.floor(left), Math.ceil(right) - 1];
    const row = y * width;
    if (first === last) return put(row + first, tone, (right - left) * share);
    put(row + first, tone, (first + 1 - left) * share);
    if (share === 1) grey.fill(tone, row + first + 1, row + last);
    else for (let x = first + 1; x < last; x++) put(row + x, tone, share);
    put(row + last, tone, (right - last) * share);
  };
  return {
    width,
    height,
    dotsPerMm,
    grey,
    box([x1, y1], [x2, y2], tone) {
      const [left, right] = [sharp(Math.min(x1, x2)), sharp(Math.max(x1, x2))];
      const [top, bottom] = [sharp(Math.min(y1, y2)), sharp(Math.max(y1, y2))];
      for (let y = Math.floor(top); y < Math.ceil(bottom); y++)
        run(y, left, right, tone, Math.min(y + 1, bottom) - Math.max(y, top));
    },
    field(points, tone) {
      const ys = points.map(([, y]) => y);
      const [top, bottom] = [Math.floor(Math.min(...ys) * FINE), Math.ceil(Math.max(...ys) * FINE)];
      const xs = points.map(([x]) => x);
      const [left, right] = [Math.max(0, Math.floor(Math.min(...xs))), Math.min(width, Math.ceil(Math.max(...xs)))];
      if (right <= left) return;
      const inked = new Float32Array(right - left);
      for (let line = top; line < bottom; line++) {
        const cuts = crossings(points, (line + 0.5) / FINE);
        for (let at = 0; at + 1 < cuts.length; at += 2)
          cover(inked, (cuts[at] ?? 0) - left, (cuts[at + 1] ?? 0) - left);
        if ((line + 1) % FINE !== 0 && line + 1 < bottom) continue;
        const y = Math.floor(line / FINE);
        // The lines of one pixel are added up first: laid over each other they would never be quite dark.
        if (y >= 0 && y < height)
          for (let x = 0; x < inked.length; x++) if (inked[x]) put(y * width + left + x, tone, inked[x] ?? 0);
        inked.fill(0);
      }
    },
  };
}

/** For a look at a page's words only: nothing is drawn on it. */
export function noCanvas(width: number, height: number, dotsPerMm: number): Canvas {
  const nothing = () => undefined;
  return { width, height, dotsPerMm, grey: new Uint8ClampedArray(0), box: nothing, field: nothing };
}

/** Adds one fine line's stretch to the shares of a row. */
function cover(inked: Float32Array, from: number, to: number): void {
  const [left, right] = [Math.max(0, from), Math.min(inked.length, to)];
  for (let x = Math.floor(left); x < right; x++)
    inked[x] = (inked[x] ?? 0) + (Math.min(x + 1, right) - Math.max(x, left)) / FINE;
}

/** A thousandth of a pixel is the file's own rounding, and would only leave grey seams. */
function sharp(at: number): number {
  const whole = Math.round(at);
  return Math.abs(at - whole) < 2e-3 ? whole : at;
}

function crossings(points: readonly Dot[], y: number): readonly number[] {
  const cuts: number[] = [];
  for (const [at, [x1, y1]] of points.entries()) {
    const [x2, y2] = points[(at + 1) % points.length] ?? [x1, y1];
    if (y1 <= y !== y2 <= y) cuts.push(x1 + ((y - y1) / (y2 - y1)) * (x2 - x1));
  }
  return cuts.sort((a, b) => a - b);
}

/** A part of a picture, as far as it lies on it. */
export function cropped({ grey, width, height, dotsPerMm }: Raster, boxMm: readonly number[]): Raster {
  const [x = 0, y = 0, wide = 0, high = 0] = boxMm.map((mm) => mm * dotsPerMm);
  const [left, top] = [Math.max(0, Math.floor(x)), Math.max(0, Math.floor(y))];
  const [w, h] = [Math.min(width, Math.ceil(x + wide)) - left, Math.min(height, Math.ceil(y + high)) - top];
  const part = new Uint8ClampedArray(Math.max(0, w) * Math.max(0, h));
  for (let row = 0; row < h; row++) {
    const from = (top + row) * width + left;
    part.set(grey.subarray(from, from + w), row * w);
  }
  return { grey: part, width: Math.max(0, w), height: Math.max(0, h), dotsPerMm };
}
