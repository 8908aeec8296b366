export type { PlanAnswer, PlanOptions, PlanProgress, PlanStatus } from './answer.ts';
export { solvePlan } from './solvePlan.ts';
