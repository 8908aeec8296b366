export type { CarriedChance, KeyChances } from './carried.ts';
export { type Carrier, type CarrierChances, carrierChances, genotypeKeys, MOST_CELLS } from './carriers.ts';
export { DEFAULT_SEX_LINK_R } from './chromosomes.ts';
export { type ClutchTest, clutchTest, MOST_OUTCOMES, pearson } from './clutch.ts';
export { type ClutchChances, clutchChances, MOST_EGGS } from './clutchChances.ts';
export {
  type Completeness,
  completenessOf,
  type FounderShare,
  type GenerationKnown,
  MOST_GENERATIONS,
  type UnknownFounder,
} from './completeness.ts';
export { crossOf, type PlannedCross } from './cross.ts';
export {
  type Dependence,
  MOST_TESTS,
  type SeasonFlag,
  type SeasonFlags,
  type SeasonTest,
  seasonFlags,
} from './discoveries.ts';
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
export { inbreedingByAncestors, inbreedingBySires, inbreedingOf } from './inbreeding.ts';
export { exactKinship, type FounderFacts, type Kinship, type Parentage, pedigreeOrder } from './kinship.ts';
export { kinshipOfMany } from './kinshipOfMany.ts';
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
export { FEW_LIVE, type ParthenogenesisFlag, parthenogenesisFlag } from './parthenogenesis.ts';
export { type OnProgress, ownShares, type PedigreeArrays, pedigreeArrays } from './pedigreeArrays.ts';
export { homozygoteName, lookOf, NORMAL_LOOK } from './phenotype.ts';
export { MOST_PHENOTYPES, type PhenotypeTable, phenotypeTable } from './phenotypeTable.ts';
export {
  allGenotypes,
  chanceInPart,
  chanceOf,
  countsOf,
  type Genotype,
  type Phenotype,
  topPhenotypes,
} from './product.ts';
export type { Proof, ProofWay } from './proofCase.ts';
export { provingOf } from './proving.ts';
export { relationshipsWith } from './relationships.ts';
export { sayInbreeding } from './sayInbreeding.ts';
export {
  crossesOf,
  MOST_SIRES,
  type PossibleSire,
  type SireCross,
  type SireEvidence,
  type SiresEvidence,
  siresEvidence,
} from './sires.ts';
export { MOST_STATE_PAIRS } from './strandPairs.ts';
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
export { type YoungLook, type YoungLooks, youngLooks } from './young.ts';
export { traitsOfYoung, type YoungTraits } from './youngTraits.ts';
