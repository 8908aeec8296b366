import { type Problem, problem } from '../../src/core/index.ts';

/** What the page must have for a camera, before the browser is even asked; null if all is there. */
export function cameraHindrance(): Problem | null {
  if (!window.isSecureContext) return problem('camera-insecure');
  if (navigator.mediaDevices?.getUserMedia === undefined) return problem('camera-missing');
  return null;
}

/**
 * Why there is no camera, in words. The browser's reason comes as an error or, from html5-qrcode, as a text that holds
 * the error's name (names: W3C Media Capture and Streams, getUserMedia).
 */
export function whyNoCamera(error: unknown): Problem {
  const text = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  if (/NotAllowedError|SecurityError|PermissionDenied/.test(text)) return problem('camera-not-allowed');
  if (isMissing(text)) return problem('camera-missing');
  if (/NotReadableError|AbortError|TrackStartError/.test(text)) return problem('camera-busy');
  return problem('camera-failed', { why: error instanceof Error ? error.message : text });
}

/** True if the wanted camera is not there (any more), though another may be. */
export function isMissing(error: unknown): boolean {
  const text = error instanceof Error ? error.name : String(error);
  return /NotFoundError|DevicesNotFound|OverconstrainedError/.test(text);
}
