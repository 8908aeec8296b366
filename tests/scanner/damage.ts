import { at, paint, type Raster } from './raster.ts';

/** Even numbers from 0 to 1 from a seed (Park and Miller, 1988: multiplier 16807, modulus 2^31 - 1). */
export function chance(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

/** Out of focus: the mean over a disc of this radius in pixels. */
export function blurred(picture: Raster, radius: number): Raster {
  const around: [number, number][] = [];
  const reach = Math.ceil(radius);
  for (let y = -reach; y <= reach; y += 1)
    for (let x = -reach; x <= reach; x += 1) if (Math.hypot(x, y) <= radius) around.push([x, y]);
  return paint(picture.width, picture.height, (x, y) => {
    let sum = 0;
    for (const [dx, dy] of around) sum += at(picture, x + dx, y + dy);
    return sum / around.length;
  });
}

/** Moved while the picture was taken: the mean along a line of this length to the right. */
export function moved(picture: Raster, length: number): Raster {
  return paint(picture.width, picture.height, (x, y) => {
    let sum = 0;
    for (let i = 0; i < length; i += 1) sum += at(picture, x + i - (length >> 1), y);
    return sum / length;
  });
}

/** Grain of this deviation in gray levels. */
export function noisy(picture: Raster, deviation: number, seed: number): Raster {
  const draw = chance(seed);
  const grain = () => (draw() + draw() + draw() + draw() - 2) * Math.sqrt(3) * deviation;
  return paint(picture.width, picture.height, (x, y) => at(picture, x, y) + grain());
}

/** A shadow over the left: light falls to this share there. */
export function shaded(picture: Raster, share: number): Raster {
  return paint(
    picture.width,
    picture.height,
    (x, y) => at(picture, x, y) * (share + ((1 - share) * x) / picture.width),
  );
}

/** A reflection: a bright round spot, its place and radius as shares of the width. */
export function glaring(picture: Raster, left: number, top: number, radius: number): Raster {
  const { width, height } = picture;
  return paint(width, height, (x, y) => {
    const far = Math.hypot(x - left * width, y - top * height) / (radius * width);
    return at(picture, x, y) + 300 * Math.max(0, 1 - far);
  });
}

/** Covered by something of one gray level: a rectangle in shares of the picture. */
export function covered(
  picture: Raster,
  [left, top, right, bottom]: readonly [number, number, number, number],
  level: number,
): Raster {
  const { width, height } = picture;
  return paint(width, height, (x, y) => {
    const inside = x >= left * width && x < right * width && y >= top * height && y < bottom * height;
    return inside ? level : at(picture, x, y);
  });
}

/** Smudged: drops of dirt of this radius in pixels. */
export function smudged(picture: Raster, drops: number, radius: number, seed: number): Raster {
  const draw = chance(seed);
  const dirt = Array.from(
    { length: drops },
    () => [draw() * picture.width, draw() * picture.height, 60 + draw() * 120] as const,
  );
  return paint(picture.width, picture.height, (x, y) => {
    const drop = dirt.find(([dx, dy]) => Math.hypot(x - dx, y - dy) < radius);
    return drop ? drop[2] : at(picture, x, y);
  });
}
