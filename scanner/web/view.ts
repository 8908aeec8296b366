import type { Html5Qrcode } from 'html5-qrcode';

/** The class of the box that holds the camera's picture, for the app's style sheet. */
export const CAMERA_CLASS = 'camera-view';

/** Which camera to open: one that was chosen, or the one that looks away from the keeper. */
export type Lens = { readonly deviceId: string } | 'away';

/** A running camera in the page. */
export interface View {
  readonly video: HTMLVideoElement;
  /** Ends the camera and removes its picture; resolves in any case. */
  close(): Promise<void>;
}

const PATIENCE_MS = 10_000;
const LOOK_AGAIN_MS = 20;
let made = 0;

/**
 * Opens a camera by html5-qrcode and shows its picture in `into`; the library's own reading is paused at once, for ours
 * reads full frames in a worker. Rejects with the browser's reason.
 */
export async function openView(into: HTMLElement, lens: Lens): Promise<View> {
  const { Html5Qrcode: Manager, Html5QrcodeSupportedFormats: formats } = await import('html5-qrcode');
  const box = document.createElement('div');
  made += 1;
  box.id = `camera-view-${made}`;
  box.className = CAMERA_CLASS;
  into.append(box);
  const manager = new Manager(box.id, {
    formatsToSupport: [formats.QR_CODE],
    useBarCodeDetectorIfSupported: false,
    verbose: false,
  });
  try {
    await manager.start(
      { facingMode: 'environment' },
      configFor(lens),
      () => undefined,
      () => undefined,
    );
    const video = await videoOf(box);
    // The library keeps drawing after a pause, once a second at this setting, but reads nothing any more.
    manager.pause(false);
    dress(box, video);
    return { video, close: () => closeView(manager, box) };
  } catch (error) {
    await closeView(manager, box);
    throw error;
  }
}

function configFor(lens: Lens) {
  const which = lens === 'away' ? { facingMode: 'environment' } : { deviceId: { exact: lens.deviceId } };
  const videoConstraints = { ...which, width: { ideal: 1920 }, height: { ideal: 1080 } };
  return { fps: 1, disableFlip: true, videoConstraints };
}

/** The library says that it has started before there is a picture: wait for its canvas and for a frame's size. */
async function videoOf(box: HTMLElement): Promise<HTMLVideoElement> {
  const until = performance.now() + PATIENCE_MS;
  while (performance.now() < until) {
    const video = box.querySelector('video');
    if (video !== null && video.videoWidth > 0 && box.querySelector('#qr-canvas') !== null) return video;
    await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
  }
  throw new Error('it sent no picture for ten seconds');
}

/** Takes away the library's “paused” banner and its fixed width in pixels. */
function dress(box: HTMLElement, video: HTMLVideoElement): void {
  for (const banner of box.querySelectorAll(':scope > div')) banner.remove();
  video.style.width = '100%';
}

/** Stops the tracks ourselves too: the library leaves the camera on when it is closed before it has a picture. */
async function closeView(manager: Html5Qrcode, box: HTMLElement): Promise<void> {
  const streams = [...box.querySelectorAll('video')].map((video) => video.srcObject);
  try {
    if (manager.isScanning) await manager.stop();
  } catch {
    // It has no picture yet and nothing of its own to stop.
  }
  for (const stream of streams) if (stream instanceof MediaStream) for (const track of stream.getTracks()) track.stop();
  box.remove();
}
