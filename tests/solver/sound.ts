import { expect } from 'vitest';
import type { SeasonPlanCase } from '../../src/core/index.ts';
import { solvePlan } from '../../src/solver/index.ts';
import { faultsOf } from './faults.ts';

/** The share of a value by which two solvers may differ. */
export const SHARE = 1e-6;

/** Solves, and holds the plan against the case by a checker that has nothing of core's; null where nothing is possible. */
export async function soundValue(season: SeasonPlanCase): Promise<number | null> {
  const answer = await solvePlan(season);
  if (!answer.ok) throw new Error(answer.problem.message);
  const { status, plan, gap } = answer.value;
  if (plan === null) {
    expect(status).toBe('infeasible');
    return null;
  }
  expect([status, gap]).toEqual(['optimal', 0]);
  expect(faultsOf(season, plan.pairs, plan.value)).toEqual([]);
  return plan.value;
}
