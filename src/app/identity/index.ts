export { HandlingPart } from './HandlingPart.tsx';
export { LengthPart } from './LengthPart.tsx';
export { OriginPart } from './OriginPart.tsx';
