export { RoundsScreen } from './RoundsScreen.tsx';
