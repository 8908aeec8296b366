export { lociFor, type SpeciesLoci, withRow } from './loci.ts';
export { type PlannedPairing, parentOf, planPairing } from './pairing.ts';
export { type Parents, parentsDraft, parentsFault, pedigreeAround } from './parents.ts';
export { cardTraits, geneticSex, readTraits, sayTraits, type TraitSaying, traitsDraft, traitsOf } from './traits.ts';
