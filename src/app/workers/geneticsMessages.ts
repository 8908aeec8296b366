import type {
  ClutchChances,
  Completeness,
  Cross,
  Fraction,
  LocusRow,
  Parentage,
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

/** What the page asks of the genetics worker; everything in it can be copied to another thread. */
export type GeneticAsk = YoungAsk | ClutchAsk | ClutchesAsk | LineageAsk;

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

/** What each ask is answered with. */
export interface GeneticAnswers {
  readonly young: YoungAnswer;
  readonly clutch: ClutchChances;
  readonly clutches: readonly ClutchChances[];
  readonly lineage: LineageAnswer;
}

/** How far a long ask has come, in animals of a pedigree or in looks. */
export interface GeneticProgress {
  readonly done: number;
  readonly of: number;
}

/** What the worker says: how far it is, any number of times, and once its answer. */
export type GeneticWord<A extends GeneticAsk = GeneticAsk> =
  | { readonly kind: 'progress'; readonly progress: GeneticProgress }
  | { readonly kind: 'answer'; readonly answer: Result<GeneticAnswers[A['ask']]> };
