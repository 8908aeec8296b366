export { PlanScreen } from './PlanScreen.tsx';
export { ProjectScreen } from './ProjectScreen.tsx';
export { SeasonScreen } from './SeasonScreen.tsx';
