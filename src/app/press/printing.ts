import regularUrl from '@expo-google-fonts/atkinson-hyperlegible/400Regular/AtkinsonHyperlegible_400Regular.ttf?url';
import boldUrl from '@expo-google-fonts/atkinson-hyperlegible/700Bold/AtkinsonHyperlegible_700Bold.ttf?url';
import type { FontBytes } from '../../../print/index.ts';
import { problem } from '../../core/index.ts';
import type { ListsAnswer, ListsAsk, PrintAnswer, PrintAsk, PrintOrder } from '../workers/printMessages.ts';

/** Something on its way to a PDF: its answer, and the way to stop it. */
export interface Printing<A = PrintAnswer> {
  readonly answer: Promise<A | Failed>;
  stop(): void;
}

/** Makes the PDF in a worker of its own, so that the screen stays alive and stopping really stops. */
export function startPrinting(asked: PrintAsk): Printing {
  return started<PrintAnswer>(asked);
}

/** The same for lists on whole pages. */
export function startListing(asked: ListsAsk): Printing<ListsAnswer> {
  return started<ListsAnswer>(asked);
}

type Failed = Extract<PrintAnswer, { kind: 'failed' }>;

function started<A>(asked: PrintOrder['ask']): Printing<A> {
  const worker = new Worker(new URL('../workers/printWorker.ts', import.meta.url), { type: 'module' });
  const answer = ask<A>(worker, asked).catch(failed);
  void answer.then(() => worker.terminate());
  return { answer, stop: () => worker.terminate() };
}

async function ask<A>(worker: Worker, asked: PrintOrder['ask']): Promise<A | Failed> {
  const fonts = await fontBytes();
  return new Promise((resolve) => {
    worker.onmessage = (event: MessageEvent<A>) => resolve(event.data);
    worker.onerror = (event) => resolve(failed(event.message || 'the worker did not start'));
    worker.postMessage({ ask: asked, fonts } satisfies PrintOrder);
  });
}

/** The two cuts of the type, as whatever is printed embeds them. */
export async function fontBytes(): Promise<FontBytes> {
  const [regular, bold] = await Promise.all([bytesOf(regularUrl), bytesOf(boldUrl)]);
  return { regular, bold };
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the type is not on this device (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}

function failed(error: unknown): Failed {
  const why = error instanceof Error ? error.message : String(error);
  return { kind: 'failed', problem: problem('print-failed', { why }) };
}
