import { ok, type Result, refuse } from '../../src/core/index.ts';
import type { Corners, FoundCode } from '../decode/picture.ts';
import { type Decoding, type Read, sayError } from './client.ts';

/** Phones take 12 megapixels and more; a card's code two pixels a module then still shows from 90 cm away, and memory is short. */
const LONGEST_SIDE = 2400;
const NONE = 'no code was found, or only a part of one';
let made = 0;

/**
 * Reads the codes in a photo or picture file, up to `most`, by the whole ladder; if the worker cannot start, html5-qrcode
 * reads it, one code. Errors: `picture-unreadable`, `no-code-in-picture` (with the reason), `decoder-failed`.
 */
export async function readPhoto(file: File, decoding: Decoding, most = 1): Promise<Result<readonly FoundCode[]>> {
  const picture = await openPicture(file);
  if (picture === null) return refuse('picture-unreadable', { name: file.name });
  try {
    const read = await decoding.get().then((client) => client.still(picture, most));
    return read.codes.length > 0 ? ok(read.codes) : refuse('no-code-in-picture', { why: why(read) });
  } catch (error) {
    return readByLibrary(file, sayError(error));
  } finally {
    picture.close();
  }
}

function why({ broken }: Read): string {
  return broken ? 'a code is there, but it is cut off, smudged or blurred' : NONE;
}

/** The picture upright as the camera held it, at most {@link LONGEST_SIDE} pixels long; null if it is none. */
async function openPicture(file: File): Promise<ImageBitmap | null> {
  try {
    const whole = await createImageBitmap(file);
    const scale = LONGEST_SIDE / Math.max(whole.width, whole.height);
    if (scale >= 1) return whole;
    const resizeWidth = Math.round(whole.width * scale);
    const small = await createImageBitmap(whole, { resizeWidth, resizeQuality: 'high' });
    whole.close();
    return small;
  } catch {
    return null;
  }
}

/** The fallback without our worker; its canvas stands in the page out of sight while it reads. */
async function readByLibrary(file: File, whyNot: string): Promise<Result<readonly FoundCode[]>> {
  const library = await import('html5-qrcode').catch(() => null);
  if (library === null) return refuse('decoder-failed', { why: whyNot });
  const box = document.createElement('div');
  made += 1;
  box.id = `photo-reader-${made}`;
  box.hidden = true;
  document.body.append(box);
  try {
    const formatsToSupport = [library.Html5QrcodeSupportedFormats.QR_CODE];
    const reader = new library.Html5Qrcode(box.id, { formatsToSupport, verbose: false });
    const text = await reader.scanFile(file, false);
    return ok([{ text, corners: await outline(file), rung: 'library' }]);
  } catch {
    return refuse('no-code-in-picture', { why: NONE });
  } finally {
    box.remove();
  }
}

async function outline(file: File): Promise<Corners> {
  const picture = await createImageBitmap(file);
  const { width, height } = picture;
  picture.close();
  return [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
}
