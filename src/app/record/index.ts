export { CardFace } from './CardFace.tsx';
export { RecordScreen } from './RecordScreen.tsx';
