import type { FoundCode } from '../decode/picture.ts';
import { look, NOTHING_SEEN } from '../rearm.ts';
import { type DecoderClient, sayError } from './client.ts';

/** One frame that was looked at, for those who draw on the picture or count cards. */
export interface Frame {
  readonly codes: readonly FoundCode[];
  readonly width: number;
  readonly height: number;
  readonly tookMs: number;
}

/** What the loop needs: how many codes to look for in a frame, whom to tell, and whether it is still wanted. */
export interface LoopOptions {
  readonly most: number;
  readonly isWanted: () => boolean;
  readonly onRead: (codes: readonly FoundCode[]) => void;
  readonly onFrame: ((frame: Frame) => void) | undefined;
}

/** A frame now and then cannot be grabbed (a lens changes, a page wakes up); so many in a row mean a broken reader. */
const PATIENCE = 10;
const BREATH_MS = 50;

/**
 * Reads frame after frame, one at a time, so that a slow device skips frames instead of queueing them. Ends when no
 * longer wanted; rejects with the reason if reading fails again and again.
 */
export async function readFrames(video: HTMLVideoElement, decoder: DecoderClient, options: LoopOptions): Promise<void> {
  let seen = NOTHING_SEEN;
  let failures = 0;
  while (options.isWanted()) {
    await nextFrame(video);
    const frame = await readOne(video, decoder, options);
    if (!options.isWanted()) return;
    if (typeof frame === 'string') {
      failures += 1;
      if (failures >= PATIENCE) throw new Error(frame);
      await breath();
      continue;
    }
    failures = 0;
    const texts = frame.codes.map((code) => code.text);
    const { state, fresh } = look(seen, texts, performance.now());
    seen = state;
    options.onFrame?.(frame);
    const news = fresh.flatMap((text) => frame.codes.find((code) => code.text === text) ?? []);
    if (news.length > 0) options.onRead(news);
  }
}

/** A frame, or why it could not be read. */
async function readOne(
  video: HTMLVideoElement,
  decoder: DecoderClient,
  { most }: LoopOptions,
): Promise<Frame | string> {
  try {
    const { codes, tookMs } = await decoder.frame(video, most);
    return { codes, tookMs, width: video.videoWidth, height: video.videoHeight };
  } catch (error) {
    return sayError(error);
  }
}

function nextFrame(video: HTMLVideoElement): Promise<void> {
  if (!('requestVideoFrameCallback' in video)) return breath();
  return new Promise((resolve) => {
    video.requestVideoFrameCallback(() => resolve());
  });
}

function breath(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, BREATH_MS));
}
