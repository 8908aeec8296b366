/** A picture to read: one byte a pixel (gray) or four (RGBA), rows from the top; which of the two, its length says. */
export interface Picture {
  readonly data: Uint8ClampedArray | Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** A picture of one byte a pixel. */
export interface Gray extends Picture {
  readonly data: Uint8ClampedArray;
}

/** Top left, top right, bottom right and bottom left of a symbol as it lies, in pixels of the given picture. */
export type Corners = readonly [Point, Point, Point, Point];
/** x and y in pixels. */
export type Point = readonly [number, number];

/** How a code was found: as the picture is, or after which change to it. */
export type Rung = 'plain' | 'half-size' | 'global-threshold' | 'half-contrast' | 'local-contrast' | 'enlarged';

/**
 * A whole code: its text, its place in the picture, and the rung of the ladder that read it. `library` means that
 * html5-qrcode read it because the worker did not start; its place is then the whole picture, for it tells none.
 */
export interface FoundCode {
  readonly text: string;
  readonly corners: Corners;
  readonly rung: Rung | 'library';
}

/** The picture in gray (ITU-R BT.601 luma). Throws RangeError if the length is neither one nor four bytes a pixel. */
export function toGray({ data, width, height }: Picture): Gray {
  const pixels = width * height;
  if (data.length === pixels) return { data: new Uint8ClampedArray(data), width, height };
  if (data.length !== 4 * pixels) {
    throw new RangeError(`a picture of ${width} x ${height} has ${data.length} bytes, not ${pixels} or ${4 * pixels}`);
  }
  const gray = new Uint8ClampedArray(pixels);
  for (let i = 0, at = 0; i < pixels; i += 1, at += 4) {
    gray[i] = (77 * (data[at] ?? 0) + 150 * (data[at + 1] ?? 0) + 29 * (data[at + 2] ?? 0)) >> 8;
  }
  return { data: gray, width, height };
}

/** The picture in RGBA, as the decoder takes it. */
export function toRgba(picture: Picture): { data: Uint8ClampedArray; width: number; height: number } {
  const { data, width, height } = picture;
  if (data.length === 4 * width * height)
    return { data: new Uint8ClampedArray(data.buffer, data.byteOffset, data.length), width, height };
  const gray = toGray(picture).data;
  const words = new Uint32Array(gray.length);
  // Three equal bytes under an opaque one: the same word in either byte order but for the place of alpha, which is not read.
  for (let i = 0; i < words.length; i += 1) words[i] = (gray[i] ?? 0) * 0x01010101;
  return { data: new Uint8ClampedArray(words.buffer), width, height };
}
