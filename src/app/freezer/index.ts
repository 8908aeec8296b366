export { FreezerScreen } from './FreezerScreen.tsx';
export { LotScreen } from './LotScreen.tsx';
export { OrderScreen } from './OrderScreen.tsx';
