import { ok, type Result, refuse } from '../../problems.ts';
import { POUND_G, weightInRange } from '../../units.ts';
import { exact } from '../exact.ts';

/** A body mass, in exactly one of these units. */
export interface Mass {
  readonly massKg?: number | undefined;
  readonly massG?: number | undefined;
  readonly massLb?: number | undefined;
}

/** The dose as the vet wrote it. */
export interface Dose {
  readonly mgPerKg: number;
}

/** The strength as it stands on the bottle, in exactly one of these units; 1 % w/v is 10 mg/mL. */
export interface Strength {
  readonly mgPerMl?: number | undefined;
  readonly percentWv?: number | undefined;
}

const GRAMS_PER: Readonly<Record<keyof Mass, number>> = { massKg: 1000, massG: 1, massLb: POUND_G };
const MG_PER_ML: Readonly<Record<keyof Strength, number>> = { mgPerMl: 1, percentWv: 10 };
/** 100 % w/v: a gram in each mL. */
const MOST_MG_PER_ML = 1000;

/**
 * The mass in grams, not rounded. Errors: `unit-missing`, `one-unit-only`, `not-finite`, `not-positive`, `weight-impossible`,
 * at the field.
 */
export function massInG(mass: Mass): Result<number> {
  const unit = onlyUnit(mass, GRAMS_PER, { what: 'mass', example: 'massG 850, massKg 0.85 or massLb 1.9' });
  if (!unit.ok) return unit;
  const [name, given] = unit.value;
  const weightG = exact(given * GRAMS_PER[name]);
  const possible = weightInRange(weightG);
  return possible.ok ? ok(weightG) : { ok: false, problem: { ...possible.problem, path: name } };
}

/** The dose in mg/kg. Errors: `unit-missing`, `not-finite`, `not-positive`. */
export function mgPerKgOf(dose: Dose): Result<number> {
  const unit = onlyUnit(dose, { mgPerKg: 1 }, { what: 'dose', example: 'mgPerKg 5' });
  return unit.ok ? positive(unit.value[1], 'dose', 'dose.mgPerKg') : unit;
}

/** The strength in mg/mL. Errors: `unit-missing`, `one-unit-only`, `not-finite`, `not-positive`, `strength-impossible`. */
export function mgPerMlOf(strength: Strength): Result<number> {
  const unit = onlyUnit(strength, MG_PER_ML, { what: 'strength', example: 'mgPerMl 10 or percentWv 1' });
  if (!unit.ok) return unit;
  const [name, given] = unit.value;
  const sound = positive(exact(given * MG_PER_ML[name]), 'strength', `strength.${name}`);
  if (!sound.ok || sound.value <= MOST_MG_PER_ML) return sound;
  return refuse('strength-impossible', { strength: sound.value }, `strength.${name}`);
}

/** A number that must be finite and above 0. Errors: `not-finite`, `not-positive`, at the path. */
export function positive(value: number, what: string, path: string): Result<number> {
  if (!Number.isFinite(value)) return refuse('not-finite', { what }, path);
  return value > 0 ? ok(value) : refuse('not-positive', { what }, path);
}

/** The one unit that a figure is given in: two could differ, and nobody may choose between them but who wrote them. */
function onlyUnit<K extends string>(
  given: { readonly [key in K]?: number | undefined },
  units: Readonly<Record<K, number>>,
  { what, example }: { readonly what: string; readonly example: string },
): Result<readonly [K, number]> {
  const names = Object.keys(units) as K[];
  const found = names.flatMap((name) => {
    const value = given[name];
    return value === undefined ? [] : [[name, value] as const];
  });
  const [first, second] = found;
  if (first === undefined) return refuse('unit-missing', { text: what, example }, what);
  return second === undefined
    ? ok(first)
    : refuse('one-unit-only', { what, units: found.map(([name]) => name).join(', ') }, what);
}
