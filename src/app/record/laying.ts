import {
  type AnimalRecord,
  type CandidateSire,
  candidateSires,
  type Day,
  type Facility,
  type FemaleAct,
  type Id,
  ok,
  parseWeight,
  type Result,
} from '../../core/index.ts';
import { readCount } from '../clutch/typed.ts';

/** A laying or a birth as it is typed. */
export interface LayingText {
  /** Eggs, or living young. */
  readonly good: string;
  readonly stillborn: string;
  readonly slugs: string;
  readonly clutchWeight: string;
  readonly damWeight: string;
  readonly sire: Id | null;
}

/** An act that waits for the id of its clutch. */
export type ActFor = (clutch: Id) => FemaleAct;

/** The males to choose from, and the one that is chosen beforehand: nobody, unless a single one comes into question. */
export function siresFor(
  facility: Facility,
  female: AnimalRecord,
  on: Day,
): {
  readonly candidates: readonly CandidateSire[];
  readonly others: readonly AnimalRecord[];
  readonly first: Id | null;
} {
  const candidates = candidateSires(facility, female, on);
  const isOther = (one: AnimalRecord): boolean =>
    one.species === female.species && one.sex === 'male' && !candidates.some(({ id }) => id === one.id);
  const [only] = candidates;
  return {
    candidates,
    others: [...facility.animals.values()].filter(isOther),
    first: candidates.length === 1 && only !== undefined ? only.id : null,
  };
}

/** Reads what was typed. Errors: `count-whole`, and those of a weight. */
export function readLaying(what: 'laid' | 'born', text: LayingText): Result<ActFor> {
  const [good, stillborn, slugs] = [readCount(text.good), readCount(text.stillborn), readCount(text.slugs)];
  if (!good.ok) return good;
  if (!stillborn.ok) return stillborn;
  if (!slugs.ok) return slugs;
  const [clutchG, damG] = [weightIn(text.clutchWeight), weightIn(text.damWeight)];
  if (!clutchG.ok) return clutchG;
  if (!damG.ok) return damG;
  const same = { slugs: slugs.value, sire: text.sire, ...(damG.value !== null && { damG: damG.value }) };
  if (what === 'born')
    return ok((clutch) => ({ ...same, do: 'born', clutch, young: good.value, stillborn: stillborn.value }));
  const weighed = clutchG.value === null ? {} : { clutchG: clutchG.value };
  return ok((clutch) => ({ ...same, ...weighed, do: 'laid', clutch, eggs: good.value }));
}

function weightIn(text: string): Result<number | null> {
  return text.trim() === '' ? ok(null) : parseWeight(text);
}
