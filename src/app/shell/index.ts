export { NotOpened } from './Opening.tsx';
export { Shell } from './Shell.tsx';
export { registerServiceWorker } from './serviceWorker.ts';
export { hearTypedScans } from './typedScans.ts';
