/** What a species is listed in, as this version knows it; the lists change, so every note says to check the current one. */
export interface Listing {
  readonly list: 'CITES' | 'Lacey Act';
  readonly words: string;
  readonly source: string;
}

/** Genera of the families Pythonidae and Boidae (from memory); a genus that is not here gets no note. */
const CITES_GENERA: ReadonlySet<string> = new Set([
  ...['python', 'malayopython', 'morelia', 'antaresia', 'aspidites', 'apodora', 'bothrochilus', 'leiopython', 'liasis'],
  ...['simalia', 'boa', 'epicrates', 'chilabothrus', 'corallus', 'eunectes', 'acrantophis', 'sanzinia'],
]);

/** The constrictors of 50 CFR 16.15(a), as amended with effect from 9 April 2015; the reticulated python by both its names. */
const LACEY_SPECIES: ReadonlySet<string> = new Set([
  ...['python molurus', 'python bivittatus', 'python sebae', 'python natalensis', 'python reticulatus'],
  ...[
    'malayopython reticulatus',
    'eunectes notaeus',
    'eunectes deschauenseei',
    'eunectes murinus',
    'eunectes beniensis',
  ],
]);

/** Rule CARE-LISTED: what is said where a species of these lists changes hands; nothing for a species that is in none. */
export function listingOf(species: string): readonly Listing[] {
  const [genus = '', name = ''] = species.trim().toLowerCase().split(/\s+/);
  const found: Listing[] = [];
  if (CITES_GENERA.has(genus))
    found.push({
      list: 'CITES',
      words: `${species} belongs to a family that is in CITES Appendix II in general: check the current list and which papers have to go with it, before it crosses a border.`,
      source: 'CITES Appendices (Boidae spp., Pythonidae spp.)',
    });
  if (LACEY_SPECIES.has(`${genus} ${name}`))
    found.push({
      list: 'Lacey Act',
      words: `In the USA ${species} is listed as injurious (Lacey Act, 50 CFR 16.15), which restricts import and transport: check the current list and the law of your state first.`,
      source: '50 CFR 16.15(a), as amended by 80 FR 12702 of 10 March 2015',
    });
  return found;
}
