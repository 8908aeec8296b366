export { PrescriptionScreen } from './PrescriptionScreen.tsx';
