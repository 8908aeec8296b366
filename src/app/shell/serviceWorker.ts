import { signal } from '@preact/signals';

/** True once a newer version of the app lies on this device; loading the page again shows it. */
export const isNewerHere = signal(false);

const LOOK_EVERY_MS = 3_600_000;

/** Keeps the app on this device for work without a network; browsers allow it on secure pages only. */
export function registerServiceWorker(): void {
  if (!window.isSecureContext || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.addEventListener('message', (event) => {
    if (event.data === 'newer-version') isNewerHere.value = true;
  });
  // A refusal (a full device, a private window) leaves an app that works as long as the hub can be reached.
  navigator.serviceWorker.register('/service-worker.js').catch(() => undefined);
  const look = () => void navigator.serviceWorker.ready.then(({ active }) => active?.postMessage('look-for-newer'));
  look();
  setInterval(look, LOOK_EVERY_MS);
}
