import {
  type AnimalRecord,
  type Facility,
  type Id,
  ok,
  type Parents,
  parentsFault,
  parseId,
  type Result,
} from '../../../core/index.ts';

/** Which parent. */
export type Role = 'sire' | 'dam';

export const ROLES = ['sire', 'dam'] as const satisfies readonly Role[];

/** The parents as the address has them: what it leaves out is as on the record, an empty one is unknown. */
export function parentsIn(query: Readonly<Record<string, string>>, animal: AnimalRecord): Parents {
  const parent = (role: Role): Id | null => {
    const written = query[role];
    if (written === undefined) return animal[role];
    const read = parseId(written);
    return read.ok ? read.value.id : null;
  };
  return { sire: parent('sire'), dam: parent('dam') };
}

/** The address of the page with these parents, so that they outlive a walk to the Scan screen. */
export function parentsPage(animal: AnimalRecord, { sire, dam }: Parents): string {
  return `/animal/${animal.id}/parents?sire=${sire ?? ''}&dam=${dam ?? ''}`;
}

/** The parents with one of them chosen anew. Errors: those of `parentsFault`. */
export function withParent(
  facility: Facility,
  animal: AnimalRecord,
  parents: Parents,
  role: Role,
  id: Id | null,
): Result<Parents> {
  const chosen: Parents = { ...parents, [role]: id };
  const fault = id === null ? null : parentsFault(facility, animal, { sire: null, dam: null, [role]: id });
  return fault === null ? ok(chosen) : { ok: false, problem: fault };
}

/** Which parent a scanned animal becomes where nobody said it: its sex tells, an unsexed one goes where none is yet. */
export function roleFor(facility: Facility, { sire, dam }: Parents, id: Id): Role {
  const sex = facility.animals.get(id)?.sex;
  if (sex === 'male') return 'sire';
  if (sex === 'female') return 'dam';
  return sire !== null && dam === null ? 'dam' : 'sire';
}
