import type { Gray } from './picture.ts';

/** Half the size, each pixel the mean of four: heals noise and dot gain. */
export function halfSize({ data, width, height }: Gray): Gray {
  const w = width >> 1;
  const h = height >> 1;
  const half = new Uint8ClampedArray(w * h);
  for (let y = 0; y < h; y += 1) {
    for (let x = 0, at = 2 * y * width; x < w; x += 1, at += 2) {
      const sum = (data[at] ?? 0) + (data[at + 1] ?? 0) + (data[at + width] ?? 0) + (data[at + width + 1] ?? 0);
      half[y * w + x] = (sum + 2) >> 2;
    }
  }
  return { data: half, width: w, height: h };
}

/** Twice the size by linear interpolation: brings modules of two pixels within the decoder's reach. */
export function enlarged({ data, width, height }: Gray): Gray {
  const w = width * 2;
  const h = height * 2;
  const twice = new Uint8ClampedArray(w * h);
  for (let y = 0; y < h; y += 1) {
    const near = (y >> 1) * width;
    const far = Math.min(Math.max((y >> 1) + (y & 1 ? 1 : -1), 0), height - 1) * width;
    for (let x = 0; x < w; x += 1) {
      const nearX = x >> 1;
      const farX = Math.min(Math.max(nearX + (x & 1 ? 1 : -1), 0), width - 1);
      const sides = (data[near + farX] ?? 0) + (data[far + nearX] ?? 0);
      twice[y * w + x] = (9 * (data[near + nearX] ?? 0) + 3 * sides + (data[far + farX] ?? 0) + 8) >> 4;
    }
  }
  return { data: twice, width: w, height: h };
}

/** Each pixel by how far it lies from the mean around it, in deviations: takes away shadow, glare and faded print. */
export function localContrast(picture: Gray): Gray {
  const { data, width, height } = picture;
  const radius = Math.max(8, Math.round(Math.min(width, height) / 24));
  const { sums, squares } = integrals(picture);
  const result = new Uint8ClampedArray(data.length);
  for (let y = 0; y < height; y += 1) {
    const top = Math.max(0, y - radius) * (width + 1);
    const bottom = Math.min(height, y + radius + 1) * (width + 1);
    for (let x = 0; x < width; x += 1) {
      const left = Math.max(0, x - radius);
      const right = Math.min(width, x + radius + 1);
      const count = ((bottom - top) / (width + 1)) * (right - left);
      const mean = boxSum(sums, top, bottom, left, right) / count;
      const variance = boxSum(squares, top, bottom, left, right) / count - mean * mean;
      // The floor of 6 gray levels keeps empty paper from turning into noise.
      const deviation = Math.max(6, Math.sqrt(Math.max(0, variance)));
      result[y * width + x] = 128 + (64 * ((data[y * width + x] ?? 0) - mean)) / deviation;
    }
  }
  return { data: result, width, height };
}

function integrals({ data, width, height }: Gray): { sums: Float64Array; squares: Float64Array } {
  const stride = width + 1;
  const sums = new Float64Array(stride * (height + 1));
  const squares = new Float64Array(stride * (height + 1));
  for (let y = 0; y < height; y += 1) {
    let sum = 0;
    let square = 0;
    for (let x = 0; x < width; x += 1) {
      const value = data[y * width + x] ?? 0;
      sum += value;
      square += value * value;
      const at = (y + 1) * stride + x + 1;
      sums[at] = (sums[at - stride] ?? 0) + sum;
      squares[at] = (squares[at - stride] ?? 0) + square;
    }
  }
  return { sums, squares };
}

function boxSum(table: Float64Array, top: number, bottom: number, left: number, right: number): number {
  return (
    (table[bottom + right] ?? 0) - (table[top + right] ?? 0) - (table[bottom + left] ?? 0) + (table[top + left] ?? 0)
  );
}

/** The middle half of each side, and where it starts. */
export function middle({ data, width, height }: Gray): {
  readonly picture: Gray;
  readonly x: number;
  readonly y: number;
} {
  const w = width >> 1;
  const h = height >> 1;
  const x = width >> 2;
  const y = height >> 2;
  const part = new Uint8ClampedArray(w * h);
  for (let row = 0; row < h; row += 1) {
    const from = (y + row) * width + x;
    part.set(data.subarray(from, from + w), row * w);
  }
  return { picture: { data: part, width: w, height: h }, x, y };
}
