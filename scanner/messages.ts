import type { FoundCode } from './decode/picture.ts';

/**
 * What the page tells the decoding worker. `P` is what carries a picture there: an ImageBitmap or ImageData, which the
 * pure part does not know. A frame and a still are answered by one message with the same number.
 */
export type ToDecoder<P> =
  | { readonly kind: 'open'; readonly wasmUrl: string }
  | { readonly kind: 'frame'; readonly number: number; readonly picture: P; readonly most: number }
  | { readonly kind: 'still'; readonly number: number; readonly picture: P; readonly most: number };

/** What the decoding worker answers; `broken` says that a still shows a code that could not be read. */
export type FromDecoder =
  | { readonly kind: 'open' }
  | { readonly kind: 'not-open'; readonly why: string }
  | {
      readonly kind: 'read';
      readonly number: number;
      readonly codes: readonly FoundCode[];
      readonly broken: boolean;
      readonly tookMs: number;
    }
  | { readonly kind: 'failed'; readonly number: number; readonly why: string };
