import type { Result } from '../../problems.ts';
import { ok } from '../../problems.ts';
import { exact } from '../exact.ts';
import { massInG } from './amount.ts';

/** Fluids in mL per kg and day: a range to compare with, never an order (S: LafeberVet, a veterinary web page). */
export const FLUIDS_ML_PER_KG: readonly [number, number] = [10, 30];

/** Stands beside the range of fluids. */
export const FLUIDS_CAUTION = 'A range to compare with, not an order: the vet says whether, what and how much.';

/** The range of fluids of a day in mL, with its mark; for display only, and nothing is worked out from it. */
export interface Fluids {
  readonly ml: readonly [number, number];
  readonly mark: 'S';
  readonly caution: string;
}

/** The range of fluids for a mass in mL a day, for display only. Errors: those of a weight. */
export function fluidsPerDay(massG: number): Result<Fluids> {
  const mass = massInG({ massG });
  if (!mass.ok) return mass;
  const [low, high] = FLUIDS_ML_PER_KG;
  return ok({
    ml: [exact((massG * low) / 1000), exact((massG * high) / 1000)],
    mark: 'S',
    caution: FLUIDS_CAUTION,
  });
}
