import type { Problem } from '../core/index.ts';

/** A hub that cannot start or go on, in words. */
export class HubFailure extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(`${problem.message} ${problem.remedy}`);
    this.name = 'HubFailure';
    this.problem = problem;
  }
}
