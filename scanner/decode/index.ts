export { type Decoder, LADDER, openDecoder, type Still } from './ladder.ts';
export { type Corners, type FoundCode, type Gray, type Picture, type Point, type Rung, toGray } from './picture.ts';
export type { WasmSource } from './zxing.ts';
