export { TreatmentsScreen } from './TreatmentsScreen.tsx';
