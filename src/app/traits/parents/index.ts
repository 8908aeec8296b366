export { parentsPage } from './choice.ts';
export { animalTyped, candidates, sayListed } from './found.ts';
export { ParentsScreen } from './ParentsScreen.tsx';
