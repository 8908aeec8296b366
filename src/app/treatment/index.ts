export { TreatmentPart } from './TreatmentPart.tsx';
