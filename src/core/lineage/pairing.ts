import type { AnimalRecord } from '../animal/index.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import {
  crossOf,
  type LocusTable,
  type PairingWarning,
  type Parent,
  type PlannedCross,
  pairingWelfare,
  type Traits,
} from '../genetics/index.ts';
import type { Id } from '../ids.ts';
import { ok, problem, type Result, refuse } from '../problems.ts';
import { lociFor } from './loci.ts';
import { geneticSex, traitsOf } from './traits.ts';

/** Two animals thought of together: what is crossed, what was assumed, what is to be warned of. */
export interface PlannedPairing extends PlannedCross {
  readonly sire: AnimalRecord;
  readonly dam: AnimalRecord;
  readonly loci: LocusTable;
  readonly parents: { readonly sire: Parent; readonly dam: Parent };
  readonly warnings: readonly PairingWarning[];
}

/**
 * Plans a pairing of two animals by their records; traits that nobody has written count as wild type, which is said in
 * `assumed`. Errors: `unknown-id`, `pairing-self`, and those of {@link crossOf} and the trait code.
 */
export function planPairing(facility: Facility, sireId: Id, damId: Id): Result<PlannedPairing> {
  if (sireId === damId) return refuse('pairing-self', { animal: nameOf(facility, sireId) });
  const [sire, dam] = [facility.animals.get(sireId), facility.animals.get(damId)];
  if (sire === undefined || dam === undefined)
    return refuse('unknown-id', { id: nameOf(facility, sire === undefined ? sireId : damId) });
  const { loci } = lociFor(facility, sire.species);
  if (sire.species !== dam.species) {
    return { ok: false, problem: problem('pairing-species', { sire: sire.species, dam: dam.species }) };
  }
  const [first, second] = [parentOf(facility, sire), parentOf(facility, dam)];
  if (!first.ok) return first;
  if (!second.ok) return second;
  const planned = crossOf(first.value, second.value, { loci });
  if (!planned.ok) return planned;
  const unwritten = [sire, dam].filter((one) => one.traits === null).map((one) => nameOf(facility, one.id));
  const assumed = unwritten.map((name) => `No traits are written of ${name}: it is taken as wild type.`);
  return ok({
    ...planned.value,
    assumed: [...assumed, ...planned.value.assumed],
    sire,
    dam,
    loci,
    parents: { sire: first.value, dam: second.value },
    warnings: pairingWelfare(first.value, second.value, { loci }),
  });
}

/** An animal as a parent of a cross. Errors of the trait code. */
export function parentOf(facility: Facility, animal: AnimalRecord): Result<Parent> {
  const said = traitsOf(facility, animal);
  if (!said.ok) return said;
  const wild: Traits = { species: animal.species, pieces: [] };
  return ok({ traits: said.value?.traits ?? wild, sex: geneticSex(animal.sex) });
}
