export { PedigreeScreen } from './PedigreeScreen.tsx';
export { Proving } from './Proving.tsx';
