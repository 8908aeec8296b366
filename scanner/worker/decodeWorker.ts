import { type Decoder, openDecoder, type Picture } from '../decode/index.ts';
import type { FromDecoder, ToDecoder } from '../messages.ts';

declare const self: DedicatedWorkerGlobalScope;

type Message = ToDecoder<ImageBitmap | ImageData>;
type Work = Exclude<Message, { kind: 'open' }>;

let decoder: Promise<Decoder> | null = null;
let canvas: OffscreenCanvas | null = null;

self.onmessage = ({ data }: MessageEvent<Message>) => {
  if (data.kind === 'open') void open(data.wasmUrl).then(answer);
  else void work(data).then(answer);
};

function answer(message: FromDecoder): void {
  self.postMessage(message);
}

async function open(url: string): Promise<FromDecoder> {
  try {
    decoder = openDecoder({ url });
    await decoder;
    return { kind: 'open' };
  } catch (error) {
    return { kind: 'not-open', why: sayError(error) };
  }
}

async function work(message: Work): Promise<FromDecoder> {
  const { kind, number, most } = message;
  const startedMs = performance.now();
  try {
    if (decoder === null) throw new Error('it was not opened');
    const picture = pixelsOf(message.picture);
    const reader = await decoder;
    const found =
      kind === 'still'
        ? await reader.still(picture, most)
        : { codes: await reader.frame(picture, number, most), broken: false };
    return { kind: 'read', number, ...found, tookMs: performance.now() - startedMs };
  } catch (error) {
    return { kind: 'failed', number, why: sayError(error) };
  }
}

/** The pixels of a bitmap, which is closed here, since each frame brings a new one. */
function pixelsOf(source: ImageBitmap | ImageData): Picture {
  if (source instanceof ImageData) return { data: bytesOf(source), width: source.width, height: source.height };
  const { width, height } = source;
  canvas ??= new OffscreenCanvas(width, height);
  if (canvas.width !== width || canvas.height !== height) Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('the browser gave no canvas');
  context.drawImage(source, 0, 0);
  source.close();
  return { data: bytesOf(context.getImageData(0, 0, width, height)), width, height };
}

function bytesOf({ data }: ImageData): Uint8ClampedArray {
  return new Uint8ClampedArray(data.buffer, data.byteOffset, data.byteLength);
}

function sayError(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
