export { HandOverScreen } from './handOver/HandOverScreen.tsx';
export { LeavingPart } from './LeavingPart.tsx';
