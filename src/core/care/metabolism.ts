import { ok, type Result, refuse } from '../problems.ts';
import { weightInRange } from '../units.ts';
import { exact } from './exact.ts';

/** Standard metabolism of an animal at rest, fasting. */
export interface Metabolism {
  /** Oxygen in mL an hour. */
  readonly vo2MlPerH: number;
  readonly kjPerDay: number;
}

/** Stands beside every figure of metabolism. */
export const METABOLISM_CAUTION =
  'For display only: what a resting, fasting animal of that size burns by a published mean. It sizes no meal and says nothing of a sick animal; ask a reptile vet.';

/** Andrews & Pough 1985, equation 2 (standard metabolic rate of squamates), and the energy of a mL of oxygen in J. */
const EQUATION = { factor: 0.013, massPower: 0.8, perDegree: 0.038, joulePerMl: 20.1 } as const;
/** Body temperatures that a live snake can have, in degrees Celsius (common practice, no source). */
const TEMPERATURES_C = { least: 0, most: 45 } as const;

/**
 * Rule CARE-METABOLISM: VO2 in mL/h = 0.013 M^0.80 10^(0.038 T), M in g and T in degrees Celsius, 20.1 J/mL. Source: Andrews & Pough
 * 1985, equation 2, as quoted. Errors: `not-finite`, `not-positive`, `weight-impossible`, `temperature-impossible`.
 */
export function standardMetabolism(massG: number, tempC: number): Result<Metabolism> {
  const mass = weightInRange(massG);
  if (!mass.ok) return { ok: false, problem: { ...mass.problem, path: 'massG' } };
  if (!Number.isFinite(tempC)) return refuse('not-finite', { what: 'temperature' }, 'tempC');
  if (tempC < TEMPERATURES_C.least || tempC > TEMPERATURES_C.most)
    return refuse('temperature-impossible', { tempC }, 'tempC');
  const vo2MlPerH = EQUATION.factor * massG ** EQUATION.massPower * 10 ** (EQUATION.perDegree * tempC);
  return ok({ vo2MlPerH: exact(vo2MlPerH), kjPerDay: exact((vo2MlPerH * 24 * EQUATION.joulePerMl) / 1000) });
}
