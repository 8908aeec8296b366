import {
  type AnimalRecord,
  type Facility,
  geneticSex,
  type LocusTable,
  type PairingWarning,
  type ProofWay,
  parseTraits,
  planPairing,
  type Traits,
  traitsOf,
} from '../../core/index.ts';

/** An animal of the site that could be such a mate. */
export interface SiteMate {
  readonly animal: AnimalRecord;
  readonly sire: AnimalRecord;
  readonly dam: AnimalRecord;
}

/**
 * The living animals of the other sex and the same species whose written traits are those of a mate at this locus. What
 * nobody has written is not known, so an animal without traits is no normal mate. None for an unsexed animal.
 */
export function siteMates(
  facility: Facility,
  animal: AnimalRecord,
  locus: string,
  way: ProofWay,
  loci: LocusTable,
): readonly SiteMate[] {
  const sex = { male: 'female', female: 'male', unsexed: null }[animal.sex];
  if (sex === null) return [];
  const code = parseTraits(way.mateCode, loci, geneticSex(sex === 'male' ? 'male' : 'female'));
  if (!code.ok) return [];
  const wanted = atLocus(code.value, locus);
  return [...facility.animals.values()]
    .filter((one) => one.sex === sex && one.species === animal.species && one.left === null && one.id !== animal.id)
    .filter((one) => {
      const said = traitsOf(facility, one);
      return said.ok && said.value !== null && atLocus(said.value.traits, locus) === wanted;
    })
    .map((one) =>
      sex === 'female' ? { animal: one, sire: animal, dam: one } : { animal: one, sire: one, dam: animal },
    );
}

/** Both copies at a locus in words that compare; `+` twice where it is not named. */
function atLocus({ pieces }: Traits, locus: string): string {
  const piece = pieces.find(({ loci }) => loci.includes(locus));
  if (piece === undefined) return 'wild,wild';
  const at = piece.loci.indexOf(locus);
  const copies = piece.copies.map((copy) => {
    const slot = copy[at];
    return slot === undefined || slot.kind === 'wild' ? 'wild' : JSON.stringify(slot);
  });
  // On unlike chromosomes it matters which copy lies where.
  return piece.second === 'same' ? copies.sort().join() : `${piece.second}:${copies.join()}`;
}

/** What is to be told of the young of such a pair; lethal first, each thing once. */
export function youngWarnings(facility: Facility, { sire, dam }: SiteMate): readonly PairingWarning[] {
  const planned = planPairing(facility, sire.id, dam.id);
  if (!planned.ok) return [];
  const young = planned.value.warnings.filter(({ who }) => who === 'young');
  const once = young.filter((one, at) => young.findIndex(({ says }) => says === one.says) === at);
  return [...once.filter(({ kind }) => kind === 'lethal'), ...once.filter(({ kind }) => kind === 'welfare')];
}

/** Whether anything is left open in the traits of an animal. */
export function hasOpen({ pieces }: Traits): boolean {
  return pieces.some(
    ({ copies, second }) =>
      second === 'Y?' || copies.some((copy) => copy.some(({ kind }) => kind === 'maybe' || kind === 'unknown')),
  );
}
