export { Shell } from './Shell.tsx';
export { registerServiceWorker } from './serviceWorker.ts';
