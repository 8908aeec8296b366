import { emptyFacility, type LocusRow, type LocusTable, lociFor } from '../../core/index.ts';

/** The table of a species as the page has it, rows of the site that clash set aside in the same way. */
export function tableOf(species: string, siteRows: readonly LocusRow[]): LocusTable {
  const facility = emptyFacility();
  return lociFor({ ...facility, site: { ...facility.site, loci: siteRows } }, species).loci;
}
