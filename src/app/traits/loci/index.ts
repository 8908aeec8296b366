export { LociScreen } from './LociScreen.tsx';
