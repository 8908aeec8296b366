export { checkLoci } from './check.ts';
export {
  type Allele,
  type Carrying,
  type Combo,
  type Confidence,
  groupOf,
  type Inheritance,
  type LethalNote,
  type Linkage,
  type LocusRow,
  type MaskNote,
  type NamedPair,
  named,
  PLAIN_ROW,
  type SexLink,
  showsInOneDose,
  type WelfareNote,
} from './row.ts';
export { BREEDERS, GENETIC_SOURCES } from './sources.ts';
export { type AllelePlace, alleleOf, GENETIC_SPECIES, type LocusTable, lociOf, rowOf } from './table.ts';
