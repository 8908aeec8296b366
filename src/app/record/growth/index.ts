export { GrowthPart } from './GrowthPart.tsx';
