export { PlaceScreen } from './PlaceScreen.tsx';
export { RacksScreen } from './RacksScreen.tsx';
