import { type Lens, openView, type View } from './view.ts';
import { isMissing } from './whyNoCamera.ts';

/** A camera that the keeper can choose. */
export interface CameraChoice {
  readonly id: string;
  readonly label: string;
}

/** Where the choice of camera is kept between visits. */
export interface CameraMemory {
  read(): string | null;
  write(id: string): void;
}

const PLACE = 'tubwright.camera';

/** Keeps the choice in this browser; without storage it is forgotten when the page closes. */
export function localMemory(): CameraMemory {
  let held: string | null = null;
  return {
    read() {
      try {
        return localStorage.getItem(PLACE) ?? held;
      } catch {
        return held;
      }
    },
    write(id) {
      held = id;
      try {
        localStorage.setItem(PLACE, id);
      } catch {
        // A browser that keeps nothing still has it in hand until the page closes.
      }
    },
  };
}

/**
 * The cameras of this device. While one runs the browser names them; before that html5-qrcode opens one for a moment,
 * for which the browser may ask the keeper. Rejects with the browser's reason.
 */
export async function listCameras(now: 'running' | 'not-running'): Promise<readonly CameraChoice[]> {
  if (now === 'running') {
    const devices = await navigator.mediaDevices.enumerateDevices();
    return named(
      devices.filter(({ kind }) => kind === 'videoinput').map(({ deviceId, label }) => ({ id: deviceId, label })),
    );
  }
  const { Html5Qrcode } = await import('html5-qrcode');
  return named(await Html5Qrcode.getCameras());
}

function named(cameras: readonly CameraChoice[]): readonly CameraChoice[] {
  return cameras.map(({ id, label }, i) => ({ id, label: label || `Camera ${i + 1}` }));
}

/** Opens the remembered camera, or the one that looks away from the keeper if that one is not there any more. */
export async function openRemembered(into: HTMLElement, memory: CameraMemory): Promise<View> {
  const deviceId = memory.read();
  const lens: Lens = deviceId === null ? 'away' : { deviceId };
  try {
    return await openView(into, lens);
  } catch (error) {
    if (lens === 'away' || !isMissing(error)) throw error;
    return openView(into, 'away');
  }
}
