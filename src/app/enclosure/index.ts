export { EnclosureScreen } from './EnclosureScreen.tsx';
