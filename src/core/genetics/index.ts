export { type Carrier, type CarrierChances, carrierChances, genotypeKeys, MOST_CELLS } from './carriers.ts';
export { DEFAULT_SEX_LINK_R } from './chromosomes.ts';
export { type ClutchTest, clutchTest, MOST_OUTCOMES, pearson } from './clutch.ts';
export { crossOf, type PlannedCross } from './cross.ts';
export { type Evidence, evidenceOf, type Observed, type StateChance } from './evidence.ts';
export {
  add,
  compare,
  divide,
  type Fraction,
  fraction,
  HALF,
  isZero,
  multiply,
  ONE,
  parseFraction,
  power,
  sayFraction,
  subtract,
  toNumber,
  ZERO,
} from './fraction.ts';
export {
  DEEP_GENERATIONS,
  inbreedingByAncestors,
  inbreedingBySires,
  inbreedingOf,
  type OnProgress,
  ownShares,
  type PedigreeArrays,
  pedigreeArrays,
  relationshipsWith,
} from './inbreeding.ts';
export { exactKinship, type FounderFacts, type Kinship, type Parentage, pedigreeOrder } from './kinship.ts';
export {
  type Allele,
  type Carrying,
  type Combo,
  type Confidence,
  checkLoci,
  GENETIC_SOURCES,
  GENETIC_SPECIES,
  type Inheritance,
  type LethalNote,
  type Linkage,
  type LocusRow,
  type LocusTable,
  lociOf,
  type MaskNote,
  type NamedPair,
  named,
  PLAIN_ROW,
  type SexLink,
  showsInOneDose,
  type WelfareNote,
} from './loci/index.ts';
export {
  type Block,
  type Chromosome,
  type Cross,
  heterogametic,
  type LethalRule,
  type Locus,
  locusOrder,
  type MaskRule,
  type ParentRole,
  SEX_POINT,
  type Sex,
  type SexSystem,
  type Strands,
} from './model.ts';
export {
  makeTraits,
  parseTraits,
  printTraits,
  type Second,
  type Slot,
  type TraitPiece,
  type Traits,
  WILD_CODE,
} from './notation/index.ts';
export { HIDDEN, type Outcomes, outcomesOf, type Part, type PartPhenotype } from './outcomes.ts';
export { DEFAULT_SECOND_DOSE } from './parentStates.ts';
export type { CrossSetting, Parent } from './parents.ts';
export { homozygoteName, lookOf, NORMAL_LOOK } from './phenotype.ts';
export {
  allGenotypes,
  chanceInPart,
  chanceOf,
  countsOf,
  type Genotype,
  type Phenotype,
  topPhenotypes,
} from './product.ts';
export { type PairingWarning, pairingWelfare, type WelfareWord, welfareNotes } from './welfare.ts';
export {
  type ComboOffer,
  type LocusWords,
  locusWords,
  offerCombo,
  readTrade,
  sayChance,
  sayTrade,
  type TradeReading,
  type TradeWords,
} from './words/index.ts';
