import type { Facility } from '../facility/index.ts';
import { type LocusRow, type LocusTable, lociOf } from '../genetics/index.ts';
import type { Problem, Result } from '../problems.ts';

/** The table of a species as this site has it, and what was wrong with rows of the site that had to be set aside. */
export interface SpeciesLoci {
  readonly loci: LocusTable;
  readonly setAside: readonly Problem[];
}

/** Tables by the site's rows: the rows are one value until somebody sets another, so a table is made once for them. */
const KNOWN = new WeakMap<readonly LocusRow[], Map<string, SpeciesLoci>>();

/**
 * The loci of a species with the site's own rows in them. Never fails: two devices may have written rows that do not go
 * together, and no card may be lost for it, so a row that breaks the table is set aside and told in `setAside`.
 */
export function lociFor({ site }: Facility, species: string): SpeciesLoci {
  const tables = KNOWN.get(site.loci) ?? new Map<string, SpeciesLoci>();
  KNOWN.set(site.loci, tables);
  const known = tables.get(species) ?? made(species, site.loci);
  tables.set(species, known);
  return known;
}

/** The table with a row that somebody wants to set, in place of the site's row of that locus. Errors of {@link lociOf}. */
export function withRow({ site }: Facility, row: LocusRow): Result<LocusTable> {
  const same = (one: LocusRow): boolean =>
    one.species === row.species && one.locus.toLowerCase() === row.locus.toLowerCase();
  return lociOf(row.species, [...site.loci.filter((one) => !same(one)), row]);
}

function made(species: string, siteRows: readonly LocusRow[]): SpeciesLoci {
  const own = siteRows.filter((row) => row.species === species);
  const all = lociOf(species, own);
  if (all.ok) return { loci: all.value, setAside: [] };
  const kept: LocusRow[] = [];
  const setAside: Problem[] = [];
  for (const row of own) {
    const read = lociOf(species, [...kept, row]);
    if (read.ok) kept.push(row);
    else setAside.push(read.problem);
  }
  const fallback = lociOf(species, kept);
  return { loci: fallback.ok ? fallback.value : bare(species), setAside };
}

function bare(species: string): LocusTable {
  const plain = lociOf(species);
  return plain.ok ? plain.value : { species, sexSystem: null, sexSystemSource: null, rows: [], combos: [] };
}
