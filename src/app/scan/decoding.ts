import wasmUrl from 'zxing-wasm/reader/zxing_reader.wasm?url';
import { makeDecoding } from '../../../scanner/web/index.ts';

/** The page's one reader of codes: its worker and its WebAssembly come from our own host, and only when first used. */
export const decoding = makeDecoding({
  makeWorker: () => new Worker(new URL('../../../scanner/worker/decodeWorker.ts', import.meta.url), { type: 'module' }),
  wasmUrl,
});
