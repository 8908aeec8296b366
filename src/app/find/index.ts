export { FindScreen } from './FindScreen.tsx';
