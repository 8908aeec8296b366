export { ArriveScreen } from './ArriveScreen.tsx';
export { QuarantinePart } from './QuarantinePart.tsx';
export { QuarantineScreen } from './QuarantineScreen.tsx';
