import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import decodeQR from 'qr/decode.js';

/** A grey page as `pdftoppm` drew it. */
interface GreyPage {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

const DPI = 150;
const MM = DPI / 25.4;
const GREY_DPI = 200;
const NEAR: Film = { widthPx: 860, noise: 6 };

/** How near the card is and how much the camera's picture trembles. */
interface Film {
  readonly widthPx: number;
  readonly noise: number;
}

/** Makes a video of one printed card as a phone's camera would see it, for Chromium's fake camera; gives its path. */
export function filmCard(pdf: string, boxMm: readonly number[], into: string, film: Film = NEAR): string {
  const [left = 0, top = 0, width = 0, height = 0] = boxMm.map((mm) => Math.round(mm * MM));
  execFileSync('pdftoppm', ['-r', `${DPI}`, '-png', '-singlefile', pdf, join(into, 'page')]);
  const video = join(into, 'camera.mjpeg');
  const look = [
    `crop=${width}:${height}:${left}:${top}`,
    `scale=${film.widthPx}:-2`,
    'rotate=0.06:fillcolor=0x6b6358:ow=rotw(0.06):oh=roth(0.06)',
    'pad=1280:720:(ow-iw)/2:(oh-ih)/2:color=0x6b6358',
    `noise=alls=${film.noise}:allf=t`,
    // Chromium's fake camera shows any other layout of the colours as plain green.
    'format=yuvj420p',
  ].join(',');
  const still = ['-loop', '1', '-i', join(into, 'page.png'), '-vf', look, '-t', '4', '-r', '15'];
  execFileSync('ffmpeg', ['-y', '-loglevel', 'error', ...still, '-c:v', 'mjpeg', '-q:v', '3', '-f', 'mjpeg', video]);
  return video;
}

/** What an independent decoder (the `qr` package, not the one in the app) reads off the first page of a PDF. */
export function readWithOtherDecoder(pdf: string): string {
  const { width, height, grey } = greyPage(pdf);
  const data = new Uint8Array(width * height * 4);
  for (const [at, value] of grey.entries()) data.set([value, value, value, 255], at * 4);
  return decodeQR({ width, height, data });
}

/** The same for each of several boxes of the first page (left, top, width, height in mm), such as the cards of a sheet. */
export function readEachWithOtherDecoder(pdf: string, boxesMm: readonly (readonly number[])[]): readonly string[] {
  const { width, grey } = greyPage(pdf);
  return boxesMm.map((boxMm) => {
    const [left = 0, top = 0, wide = 0, high = 0] = boxMm.map((mm) => Math.round((mm * GREY_DPI) / 25.4));
    const data = new Uint8Array(wide * high * 4);
    for (let y = 0; y < high; y++) {
      for (let x = 0; x < wide; x++) {
        const value = grey[(top + y) * width + left + x] ?? 255;
        data.set([value, value, value, 255], (y * wide + x) * 4);
      }
    }
    return decodeQR({ width: wide, height: high, data });
  });
}

/** All text on the first page. */
export function textOf(pdf: string): string {
  return execFileSync('pdftotext', ['-layout', '-f', '1', '-l', '1', pdf, '-'], { encoding: 'utf8' });
}

function greyPage(pdf: string): GreyPage {
  const raw = execFileSync('pdftoppm', ['-r', `${GREY_DPI}`, '-gray', '-f', '1', '-l', '1', pdf], {
    maxBuffer: 2 ** 28,
  });
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(raw.subarray(0, 60).toString('latin1'));
  if (head === null) throw new RangeError('pdftoppm gave no grey picture');
  return { width: Number(head[1]), height: Number(head[2]), grey: raw.subarray(head[0].length) };
}

/** The NDJSON lines of a file. */
export function linesOf<T>(path: string): readonly T[] {
  return readFileSync(path, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as T);
}
