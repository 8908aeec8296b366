import type { Fraction } from './fraction.ts';
import type { LocusTable } from './loci/index.ts';
import type { Sex, SexSystem } from './model.ts';
import type { Traits } from './notation/index.ts';

/** A parent of a cross: what it carries and its sex, null where the record does not say. */
export interface Parent {
  readonly traits: Traits;
  readonly sex: Sex | null;
}

/** What a cross is worked out with; all but the table may be left out. */
export interface CrossSetting {
  readonly loci: LocusTable;
  /** For species whose table does not say it. */
  readonly sexSystem?: SexSystem;
  /** The site's own recombination with the sex-determining point, or with the row before in the linkage group, by locus. */
  readonly r?: ReadonlyMap<string, Fraction>;
  /** The site's own chance that an unknown copy (`-`) is the named allele again, by locus. */
  readonly secondDose?: ReadonlyMap<string, Fraction>;
  /** Animals whose loci and alleles are kept in the cross as well, so that the crosses of several sires have the same. */
  readonly beside?: readonly Traits[];
}
