import { ok, PAPER_LETTERS, type Picture, problem, type Result } from '../../core/index.ts';

/** How a photo is made small enough for the log: the longer side in dots, the best first, and how hard it is pressed. */
const SIDES = [2000, 1700, 1400, 1200, 1000] as const;
const QUALITIES = [0.8, 0.66, 0.52, 0.4] as const;
/** Below these a page has two dots a millimetre, which is less than its small print takes to be read. */
const LEAST = { long: 600, short: 300 } as const;
/** Larger files are no photos of a paper, and opening one can take all the memory of a phone. */
const MOST_FILE_BYTES = 64_000_000;

/** What a photo is kept as. */
export interface Shrinking {
  /** Grey takes fewer letters, so more of the paper stays sharp. */
  readonly inColour: boolean;
}

/**
 * Makes a photo small enough for the log: turned as it was taken, smaller, and pressed as WebP or, where the browser writes
 * none, as JPEG. Nothing leaves the device. Errors: `paper-unreadable`, `paper-too-small`, `paper-too-large`.
 */
export async function shrinkPicture(file: File, { inColour }: Shrinking): Promise<Result<Picture>> {
  const unreadable = { ok: false, problem: problem('paper-unreadable', { name: file.name || 'the photo' }) } as const;
  if (file.size === 0 || file.size > MOST_FILE_BYTES) return unreadable;
  const bitmap = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (bitmap === null) return unreadable;
  try {
    const { width, height } = bitmap;
    if (Math.max(width, height) < LEAST.long || Math.min(width, height) < LEAST.short)
      return { ok: false, problem: problem('paper-too-small', { width, height }) };
    return await pressed(bitmap, inColour);
  } finally {
    bitmap.close();
  }
}

async function pressed(bitmap: ImageBitmap, inColour: boolean): Promise<Result<Picture>> {
  let letters = 0;
  for (const side of SIDES) {
    const canvas = drawn(bitmap, side, inColour);
    for (const quality of QUALITIES) {
      const picture = await written(canvas, quality);
      if (picture === null) break;
      letters = picture.base64.length;
      if (letters <= PAPER_LETTERS) return ok(picture);
    }
  }
  return { ok: false, problem: problem('paper-too-large', { letters, most: PAPER_LETTERS }) };
}

function drawn(bitmap: ImageBitmap, side: number, inColour: boolean): HTMLCanvasElement {
  const share = Math.min(1, side / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(bitmap.width * share));
  canvas.height = Math.max(1, Math.round(bitmap.height * share));
  const context = canvas.getContext('2d', { willReadFrequently: !inColour });
  if (context === null) return canvas;
  // What is clear in a PNG is paper, not black.
  context.fillStyle = '#fff';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  if (!inColour) makeGrey(context, canvas.width, canvas.height);
  return canvas;
}

/** Grey by the weights of ITU-R BT.601 (from memory); the filter of a canvas would do it too, but not in every browser. */
function makeGrey(context: CanvasRenderingContext2D, width: number, height: number): void {
  const image = context.getImageData(0, 0, width, height);
  const { data } = image;
  for (let at = 0; at < data.length; at += 4) {
    const grey = 0.299 * (data[at] ?? 0) + 0.587 * (data[at + 1] ?? 0) + 0.114 * (data[at + 2] ?? 0);
    data[at] = data[at + 1] = data[at + 2] = grey;
  }
  context.putImageData(image, 0, 0);
}

/** The canvas as WebP; a browser that cannot write it gives PNG instead, and then it is JPEG. */
async function written(canvas: HTMLCanvasElement, quality: number): Promise<Picture | null> {
  for (const mime of ['image/webp', 'image/jpeg'] as const) {
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, mime, quality));
    if (blob?.type === mime) return { mime, base64: await base64Of(blob) };
  }
  return null;
}

function base64Of(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result).split(',')[1] ?? '');
    reader.onerror = () => reject(reader.error);
    reader.readAsDataURL(blob);
  });
}
