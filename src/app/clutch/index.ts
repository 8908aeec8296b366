export { ClutchScreen } from './ClutchScreen.tsx';
export { HatchScreen } from './HatchScreen.tsx';
export { sayClutch, sayCount } from './sayClutch.ts';
