import type {
  ClutchChances,
  ClutchFindings,
  ClutchRecord,
  Completeness,
  Cross,
  Facility,
  Fraction,
  Id,
  LocusRow,
  PairingWarning,
  Parent,
  Parentage,
  Problem,
  ProjectCase,
  ProjectSheet,
  Result,
  Sex,
  YoungLook,
} from '../../core/index.ts';

/** The looks of the young of a cross, the likeliest first, at most `limit` of them. */
export interface YoungAsk {
  readonly ask: 'young';
  readonly cross: Cross;
  readonly species: string;
  /** The site's own rows: the worker makes the table of loci anew, as the page made it. */
  readonly siteRows: readonly LocusRow[];
  readonly limit: number;
}

/** What a clutch can hold of one look. */
export interface ClutchAsk {
  readonly ask: 'clutch';
  readonly cross: Cross;
  readonly wanted: ReadonlyMap<string, string>;
  readonly sex: Sex | null;
  readonly size: number;
  readonly of: 'eggs' | 'young';
}

/** The same for several looks, both sexes together, answered in their order. */
export interface ClutchesAsk {
  readonly ask: 'clutches';
  readonly cross: Cross;
  readonly looks: readonly ReadonlyMap<string, string>[];
  readonly size: number;
  readonly of: 'eggs' | 'young';
}

/** Kinship and inbreeding; `animals` holds `of` with all their known ancestors, and nobody else needs to be in it. */
export interface LineageAsk {
  readonly ask: 'lineage';
  readonly animals: readonly Parentage[];
  readonly of: readonly string[];
}

/** A parent of a season's plan, with the code of its traits, by which like crosses are worked out once. */
export interface PlannedParent {
  readonly id: Id;
  readonly code: string;
  readonly parent: Parent;
}

/** The chance of each goal and the kinship for every pair of these; `goals` hold the wanted looks by locus. */
export interface PlanPairsAsk {
  readonly ask: 'plan-pairs';
  readonly species: string;
  readonly siteRows: readonly LocusRow[];
  readonly sires: readonly PlannedParent[];
  readonly dams: readonly PlannedParent[];
  readonly goals: readonly ReadonlyMap<string, string>[];
  /** All of them with their known ancestors. */
  readonly animals: readonly Parentage[];
}

/** What is to be warned of for some pairs. */
export interface PairWarningsAsk {
  readonly ask: 'pair-warnings';
  readonly species: string;
  readonly siteRows: readonly LocusRow[];
  readonly pairs: readonly { readonly sire: PlannedParent; readonly dam: PlannedParent }[];
}

/** What the young of a season's clutches say; `facility` needs to hold these clutches with their parents and young alone. */
export interface SeasonClutchesAsk {
  readonly ask: 'season-clutches';
  readonly facility: Facility;
  readonly clutches: readonly Id[];
}

/** What a clutch's young say of their parents; the facility needs to hold these animals only. */
export interface FindingsAsk {
  readonly ask: 'findings';
  readonly facility: Facility;
  readonly clutch: ClutchRecord;
}

/** Ways to a wanted animal over several seasons; the worker makes the table of loci anew. */
export interface ProjectAsk {
  readonly ask: 'project';
  readonly species: string;
  readonly siteRows: readonly LocusRow[];
  readonly project: Omit<ProjectCase, 'loci'>;
}

/** What the page asks of the genetics worker; everything in it can be copied to another thread. */
export type GeneticAsk =
  | YoungAsk
  | ClutchAsk
  | ClutchesAsk
  | LineageAsk
  | PlanPairsAsk
  | PairWarningsAsk
  | SeasonClutchesAsk
  | ProjectAsk
  | FindingsAsk;

export interface YoungAnswer {
  readonly looks: readonly YoungLook[];
  /** The share of all young that these looks are. */
  readonly shown: Fraction;
  /** How many looks there are, listed or not. */
  readonly count: bigint;
  /** The share of eggs that live. */
  readonly viable: Fraction;
}

/** Exact, or the nearest double where the pedigree is too large for fractions. */
export type Share = Fraction | number;

/** How far back it is said what is known of ancestors. */
export const GENERATIONS_SAID = 5;

export interface LineageAnswer {
  /** False where every {@link Share} is a double. */
  readonly exact: boolean;
  /** How many animals the pedigree holds. */
  readonly animals: number;
  readonly inbreeding: ReadonlyMap<string, Share>;
  readonly kinship: readonly { readonly pair: readonly [string, string]; readonly share: Share }[];
  /** How much is known of the ancestors of each, to {@link GENERATIONS_SAID} generations. */
  readonly completeness: ReadonlyMap<string, Completeness>;
  /** What young of two would be, the first as sire and the second as dam; null where not two were asked about. */
  readonly young: { readonly inbreeding: Share; readonly completeness: Completeness } | null;
}

/** A pair of the lists that were asked about, by their places in them. */
export interface PlannedPair {
  readonly sire: number;
  readonly dam: number;
  readonly kinship: number;
  /** By goal: the chance that an egg lives and shows it. */
  readonly chances: readonly Fraction[];
}

export interface PlanPairsAnswer {
  readonly pairs: readonly PlannedPair[];
  /** Pairs whose cross cannot be worked out, once for each reason. */
  readonly faults: readonly { readonly sire: number; readonly dam: number; readonly problem: Problem }[];
}

/** What the young of one clutch say. */
export interface JudgedClutch {
  readonly id: Id;
  /** The exact p of the clutch; null where it was not tested, and `why` says it. */
  readonly p: Fraction | null;
  readonly why: string | null;
  /** That no known male can have given all young; null where one can or nobody can say. */
  readonly noSire: 'more than one' | 'none of these' | null;
  /** What speaks for young without a father; empty where nothing does. */
  readonly withoutFather: readonly string[];
}

/** What each ask is answered with. */
export interface GeneticAnswers {
  readonly 'plan-pairs': PlanPairsAnswer;
  /** By pair, in the order asked. */
  readonly 'pair-warnings': readonly (readonly PairingWarning[])[];
  readonly 'season-clutches': readonly JudgedClutch[];
  readonly project: ProjectSheet;
  readonly young: YoungAnswer;
  readonly clutch: ClutchChances;
  readonly clutches: readonly ClutchChances[];
  readonly lineage: LineageAnswer;
  readonly findings: ClutchFindings;
}

/** How far a long ask has come, in animals of a pedigree, in looks, in pairs or in clutches. */
export interface GeneticProgress {
  readonly done: number;
  readonly of: number;
}

/** What the worker says: how far it is, any number of times, and once its answer. */
export type GeneticWord<A extends GeneticAsk = GeneticAsk> =
  | { readonly kind: 'progress'; readonly progress: GeneticProgress }
  | { readonly kind: 'answer'; readonly answer: Result<GeneticAnswers[A['ask']]> };
