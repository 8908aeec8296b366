import type { Sex, SexSystem } from '../model.ts';

/** How a locus shows; `mixed` is a series of recessive and visible alleles. More than one allele makes a series. */
export type Inheritance = 'recessive' | 'incomplete-dominant' | 'dominant' | 'mixed';

/** How well the weakest fact of a row is known. */
export type Confidence = 'published' | 'common practice' | 'memory';

/** An allele: its sign in the trait code and its trade names, the printed one first. A capital sign shows in one dose. */
export interface Allele {
  readonly symbol: string;
  readonly names: readonly string[];
}

/** A pair of alleles with a trade name of its own. */
export interface NamedPair {
  readonly pair: readonly [string, string];
  readonly name: string;
  /** Other trade names of it. */
  readonly also: readonly string[];
  /** The look where it is that of something else; null: the name is the look. */
  readonly looks: string | null;
  readonly note: string | null;
}

/** Alleles that an animal carries at least; the same twice means two copies, alleles of several loci mean all of them. */
export type Carrying = readonly string[];

/** Eggs carrying this are taken to die, on this basis. */
export interface LethalNote {
  readonly carrying: Carrying;
  readonly says: string;
  readonly basis: string;
}

/** Animals carrying this hide what other loci would show, on this basis. */
export interface MaskNote {
  readonly carrying: Carrying;
  readonly hides: readonly string[];
  readonly basis: string;
}

/** What is told of the welfare of animals carrying any of these; `sex` where only one sex is meant. */
export interface WelfareNote {
  readonly anyOf: readonly Carrying[];
  readonly sex: Sex | null;
  readonly says: string;
  readonly source: string;
}

/**
 * A place on the sex chromosome. `partial` (XY only): both X and Y carry a copy and it crosses over at `r` (a fraction
 * as text, null where nobody has measured it). `full`: no crossing over; in ZW species the W has no copy.
 */
export interface SexLink {
  readonly system: SexSystem;
  readonly kind: 'partial' | 'full';
  readonly r: string | null;
}

/** Linked loci share a group; `r` is the recombination fraction to the row before in the group, null in the first. */
export interface Linkage {
  readonly group: string;
  readonly r: string | null;
}

/** One locus of one species with everything the table knows of it. */
export interface LocusRow {
  readonly species: string;
  readonly locus: string;
  readonly gene: string | null;
  readonly inheritance: Inheritance;
  readonly alleles: readonly Allele[];
  readonly named: readonly NamedPair[];
  readonly sexLink: SexLink | null;
  readonly linkage: Linkage | null;
  readonly lethal: readonly LethalNote[];
  readonly masks: readonly MaskNote[];
  readonly welfare: readonly WelfareNote[];
  /** Keys of {@link GENETIC_SOURCES}, or the site's own words. */
  readonly sources: readonly string[];
  readonly confidence: Confidence;
  readonly note: string | null;
}

/** A trade name of several genes at once; an alias, never a locus. */
export interface Combo {
  readonly name: string;
  /** One item a gene: an allele in the dose its trade name means, or two copies. */
  readonly means: readonly Carrying[];
  readonly basis: string;
}

/** What a row says when nothing else is said. */
export const PLAIN_ROW = {
  gene: null,
  named: [],
  sexLink: null,
  linkage: null,
  lethal: [],
  masks: [],
  welfare: [],
  note: null,
} as const satisfies Partial<LocusRow>;

/** Whether one copy of an allele shows: its sign begins with a capital. */
export function showsInOneDose(symbol: string): boolean {
  const first = symbol.slice(0, 1);
  return first !== first.toLowerCase();
}

/** A named pair in short. */
export function named(a: string, b: string, name: string, more: Partial<NamedPair> = {}): NamedPair {
  return { pair: [a, b], name, also: [], looks: null, note: null, ...more };
}

/** The chromosome that a row shares with others: `sex`, a linkage group, or null for a chromosome of its own. */
export function groupOf(row: LocusRow): string | null {
  if (row.sexLink !== null) return 'sex';
  return row.linkage === null ? null : `group ${row.linkage.group}`;
}
