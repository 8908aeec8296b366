export { ScanScreen } from './ScanScreen.tsx';
export { StampInHand } from './StampInHand.tsx';
export { Strip } from './Strip.tsx';
