import type { FromDecoder, ToDecoder } from '../messages.ts';

/** How the page gets its decoding worker: the bundler makes it, and serves the reader's WebAssembly. */
export interface DecoderParts {
  readonly makeWorker: () => Worker;
  readonly wasmUrl: string;
}

/** What the worker found in one picture. */
export type Read = Extract<FromDecoder, { kind: 'read' }>;

/** The page's end of the decoding worker. Its promises reject with an Error that says why. */
export interface DecoderClient {
  still(source: CanvasImageSource & Sized, most: number): Promise<Read>;
  frame(source: HTMLVideoElement, most: number): Promise<Read>;
  close(): void;
}

/** A picture with a size in pixels. */
export interface Sized {
  readonly width: number;
  readonly height: number;
}

type Picture = ImageBitmap | ImageData;
interface Waiting {
  readonly resolve: (read: Read) => void;
  readonly reject: (error: Error) => void;
}

/** Starts the worker and waits until it can read; rejects with the reason if it cannot. */
export async function openDecoderClient({ makeWorker, wasmUrl }: DecoderParts): Promise<DecoderClient> {
  const worker = makeWorker();
  const waiting = new Map<number, Waiting>();
  let count = 0;
  const tell = (message: ToDecoder<Picture>, carried: Transferable[] = []) => worker.postMessage(message, carried);

  try {
    await opened(worker, () => tell({ kind: 'open', wasmUrl: new URL(wasmUrl, document.baseURI).href }));
  } catch (error) {
    worker.terminate();
    throw error;
  }
  worker.onmessage = ({ data }: MessageEvent<FromDecoder>) => settle(waiting, data);
  worker.onerror = (event) => failAll(waiting, event.message || 'the worker stopped');

  const ask = (kind: 'frame' | 'still', picture: Picture, most: number) =>
    new Promise<Read>((resolve, reject) => {
      count += 1;
      waiting.set(count, { resolve, reject });
      tell({ kind, number: count, picture, most }, picture instanceof ImageData ? [picture.data.buffer] : [picture]);
    });
  return {
    still: async (source, most) => ask('still', await grab(source, source), most),
    frame: async (video, most) =>
      ask('frame', await grab(video, { width: video.videoWidth, height: video.videoHeight }), most),
    close: () => {
      worker.terminate();
      failAll(waiting, 'the reader was closed');
    },
  };
}

function opened(worker: Worker, begin: () => void): Promise<void> {
  return new Promise((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<FromDecoder>) => {
      if (data.kind === 'open') resolve();
      else if (data.kind === 'not-open') reject(new Error(data.why));
    };
    worker.onerror = (event) => reject(new Error(event.message || 'the worker’s file could not be loaded'));
    begin();
  });
}

function settle(waiting: Map<number, Waiting>, message: FromDecoder): void {
  if (message.kind !== 'read' && message.kind !== 'failed') return;
  const asked = waiting.get(message.number);
  waiting.delete(message.number);
  if (message.kind === 'read') asked?.resolve(message);
  else asked?.reject(new Error(message.why));
}

function failAll(waiting: Map<number, Waiting>, why: string): void {
  for (const { reject } of waiting.values()) reject(new Error(why));
  waiting.clear();
}

/** A bitmap where the worker can draw one, else the pixels themselves (browsers without OffscreenCanvas). */
async function grab(source: CanvasImageSource, { width, height }: Sized): Promise<Picture> {
  if (typeof OffscreenCanvas !== 'undefined') return createImageBitmap(source);
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('the browser gave no canvas');
  context.drawImage(source, 0, 0);
  return context.getImageData(0, 0, width, height);
}

/** One worker for all who read codes on a page: started at the first use, and started anew after it failed. */
export interface Decoding {
  get(): Promise<DecoderClient>;
  /** Ends the worker; the next use starts another. */
  drop(): void;
}

/** Makes the page's shared decoder; nothing is loaded before its first use. */
export function makeDecoding(parts: DecoderParts): Decoding {
  let client: Promise<DecoderClient> | null = null;
  const drop = () => {
    void client?.then((open) => open.close()).catch(() => undefined);
    client = null;
  };
  return {
    get() {
      client ??= openDecoderClient(parts).catch((error: unknown) => {
        client = null;
        throw error;
      });
      return client;
    },
    drop,
  };
}

/** The reason that an error gives, to stand inside a sentence. */
export function sayError(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).replace(/[.\s]+$/, '');
}
