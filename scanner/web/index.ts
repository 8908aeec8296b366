export {
  type Camera,
  type CameraOptions,
  type CameraState,
  makeCamera,
  type OnProblem,
  type OnRead,
} from './camera.ts';
export { type CameraChoice, type CameraMemory, localMemory } from './cameraList.ts';
export { type DecoderClient, type DecoderParts, type Decoding, makeDecoding, type Read, type Sized } from './client.ts';
export { readPhoto } from './photo.ts';
export type { Frame } from './readLoop.ts';
export { listenForTypedScans, type TypedOptions } from './typed.ts';
export { CAMERA_CLASS } from './view.ts';
export { cameraHindrance, whyNoCamera } from './whyNoCamera.ts';
