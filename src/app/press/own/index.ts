export { CalibrationScreen } from './CalibrationScreen.tsx';
export { PrinterScreen } from './PrinterScreen.tsx';
export { StockScreen } from './StockScreen.tsx';
