export { PairingScreen } from './PairingScreen.tsx';
