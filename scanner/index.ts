export type { Corners, FoundCode, Picture, Rung } from './decode/picture.ts';
export type { FromDecoder, ToDecoder } from './messages.ts';
export { LAYOUT_TEST, type PayloadOptions, readPayload, type ScannedCode, STAMP_PREFIX } from './payload.ts';
export { GONE_AFTER_ANOTHER_MS, GONE_MS, look, NOTHING_SEEN, type Rearm } from './rearm.ts';
export {
  BREAK_MS,
  IDLE_MS,
  type KeyStroke,
  NO_STROKES,
  type TypedState,
  type TypedStep,
  typedIdle,
  typedScan,
} from './typed/machine.ts';
export { type Reading, SCANNER_GAP_MS, sayCode, type TypedReadOptions, type TypedScan } from './typed/readings.ts';
export { readScaleLine, type ScaleReading } from './typed/scaleReading.ts';
