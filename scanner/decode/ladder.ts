import { enlarged, halfSize, localContrast, middle } from './changes.ts';
import { type Corners, type FoundCode, type Gray, type Picture, type Point, type Rung, toGray } from './picture.ts';
import { loadZxing, pass, type Seen, seesBroken, type WasmSource } from './zxing.ts';

/** What a still picture holds: whole codes, or whether one was seen that could not be read. */
export interface Still {
  readonly codes: readonly FoundCode[];
  readonly broken: boolean;
}

/** Reads codes in pictures; every method throws RangeError for a picture whose length does not fit its size. */
export interface Decoder {
  /** Climbs the whole ladder until a code is found; with `most` above 1 also looks for small ones that the first rung misses. */
  still(picture: Picture, most?: number): Promise<Still>;
  /** One look at a frame of live video, with another rung each time. */
  frame(picture: Picture, frameNumber: number, most?: number): Promise<readonly FoundCode[]>;
}

/**
 * Cheapest first: as measured 1, 0.3, 1, 1, 2.5 and 5 times the cost of a plain look. What the rungs read together does
 * not depend on their order.
 */
export const LADDER: readonly Rung[] = [
  'plain',
  'half-size',
  'global-threshold',
  'half-contrast',
  'local-contrast',
  'enlarged',
];

/** Every other frame is read plainly, so that a good card is never late; contrast at full size is too dear for video. */
const LIVE: readonly Rung[] = LADDER.filter((rung) => rung !== 'plain' && rung !== 'local-contrast').flatMap(
  (rung): Rung[] => ['plain', rung],
);

/** Above this many pixels a symbol is large enough, and enlarging would cost seconds and memory. */
const ENLARGE_UP_TO = 1_500_000;

/** A decoder on zxing-wasm; rejects with the reason if the WebAssembly cannot be had. */
export async function openDecoder(source: WasmSource): Promise<Decoder> {
  await loadZxing(source);
  return { still: readStill, frame: readFrame };
}

async function readStill(picture: Picture, most = 1): Promise<Still> {
  const gray = toGray(picture);
  const codes: FoundCode[] = [];
  for (const rung of LADDER) {
    if (codes.length > 0 && (most === 1 || rung !== 'enlarged')) continue;
    for (const code of await climb(gray, rung, most)) {
      if (!codes.some((known) => isSame(known, code))) codes.push(code);
    }
  }
  return { codes: codes.slice(0, most), broken: codes.length === 0 && (await seesBroken(gray)) };
}

async function readFrame(picture: Picture, frameNumber: number, most = 1): Promise<readonly FoundCode[]> {
  return climb(toGray(picture), LIVE[frameNumber % LIVE.length] ?? 'plain', most);
}

async function climb(gray: Gray, rung: Rung, most: number): Promise<readonly FoundCode[]> {
  switch (rung) {
    case 'plain':
      return placed(await pass(gray, { most, threshold: 'local' }), rung, 1);
    case 'half-size':
      return placed(await pass(halfSize(gray), { most, threshold: 'local' }), rung, 2);
    case 'global-threshold':
      return placed(await pass(gray, { most, threshold: 'global' }), rung, 1);
    case 'half-contrast':
      return placed(await pass(localContrast(halfSize(gray)), { most, threshold: 'local' }), rung, 2);
    case 'local-contrast':
      return placed(await pass(localContrast(gray), { most, threshold: 'local' }), rung, 1);
    case 'enlarged': {
      const part = gray.data.length > ENLARGE_UP_TO ? middle(gray) : { picture: gray, x: 0, y: 0 };
      return placed(await pass(enlarged(part.picture), { most, threshold: 'local' }), rung, 0.5, part);
    }
    default:
      return rung satisfies never;
  }
}

function placed(seen: readonly Seen[], rung: Rung, scale: number, origin = { x: 0, y: 0 }): readonly FoundCode[] {
  const place = ([x, y]: Point): Point => [x * scale + origin.x, y * scale + origin.y];
  return seen.map(({ text, corners: [a, b, c, d] }) => {
    return { text, corners: [place(a), place(b), place(c), place(d)], rung };
  });
}

/** The same text at the same place: two cards may carry the same code. */
function isSame(a: FoundCode, b: FoundCode): boolean {
  const [ax, ay] = centre(a.corners);
  const [bx, by] = centre(b.corners);
  return a.text === b.text && Math.hypot(ax - bx, ay - by) < Math.hypot(a.corners[0][0] - ax, a.corners[0][1] - ay);
}

function centre(corners: Corners): Point {
  const mean = (axis: 0 | 1) => corners.reduce((sum, corner) => sum + corner[axis], 0) / corners.length;
  return [mean(0), mean(1)];
}
