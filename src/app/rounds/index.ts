export { RoundsScreen } from './RoundsScreen.tsx';
export { RunScreen } from './RunScreen.tsx';
