export { PrintScreen } from './PrintScreen.tsx';
