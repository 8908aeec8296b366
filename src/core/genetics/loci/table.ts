import { ok, type Result, refuse } from '../../problems.ts';
import type { SexSystem } from '../model.ts';
import { BOA_ROWS } from './boaImperator.ts';
import { checkLoci } from './check.ts';
import { COMBOS } from './combos.ts';
import { HOGNOSE_ROWS } from './heterodonNasicus.ts';
import { CORN_ROWS } from './pantherophisGuttatus.ts';
import { PYTHON_KNOWN } from './pythonKnown.ts';
import { PYTHON_RECESSIVE } from './pythonRecessive.ts';
import { PYTHON_VISIBLE } from './pythonVisible.ts';
import { type Allele, type Combo, groupOf, type LocusRow } from './row.ts';

/** What a trait code of one species is read with: its loci in canonical order, its sex system, its combo names. */
export interface LocusTable {
  readonly species: string;
  /** Null where nobody has said it. */
  readonly sexSystem: SexSystem | null;
  readonly sexSystemSource: string | null;
  readonly rows: readonly LocusRow[];
  readonly combos: readonly Combo[];
}

interface Known {
  readonly names: readonly string[];
  readonly sexSystem: SexSystem;
  readonly sexSystemSource: string;
  readonly rows: readonly LocusRow[];
}

const CAENOPHIDIAN = 'caenophidian snakes are ZZ/ZW (genome study PMC11721783, abstract seen)';

const KNOWN: readonly Known[] = [
  {
    names: ['Python regius'],
    sexSystem: 'XY',
    sexSystemSource: 'Gamble et al. 2017 for P. bivittatus; Mallery & Carrillo 2016 for P. regius (abstracts seen)',
    rows: [...PYTHON_KNOWN, ...PYTHON_VISIBLE, ...PYTHON_RECESSIVE],
  },
  { names: ['Pantherophis guttatus'], sexSystem: 'ZW', sexSystemSource: CAENOPHIDIAN, rows: CORN_ROWS },
  {
    names: ['Boa imperator', 'Boa constrictor'],
    sexSystem: 'XY',
    sexSystemSource: 'Gamble et al. 2017 for B. imperator (abstract seen)',
    rows: BOA_ROWS,
  },
  { names: ['Heterodon nasicus'], sexSystem: 'ZW', sexSystemSource: CAENOPHIDIAN, rows: HOGNOSE_ROWS },
];

/** The species that the tool brings loci for. */
export const GENETIC_SPECIES: readonly string[] = KNOWN.flatMap((one) => one.names);

/**
 * The loci of a species. A site's row replaces the one of the same locus, or comes after the rest; a species that is
 * not known has the site's rows alone. Linked rows are brought together. Errors: those of {@link checkLoci}, and a
 * row of another sex system.
 */
export function lociOf(species: string, siteRows: readonly LocusRow[] = []): Result<LocusTable> {
  const known = KNOWN.find((one) => one.names.includes(species));
  const own = siteRows.filter((row) => row.species === species);
  const same = (a: LocusRow, b: LocusRow): boolean => a.locus.toLowerCase() === b.locus.toLowerCase();
  const given = (known?.rows ?? []).map((row) => ({ ...row, species }));
  const amended = given.map((row) => own.find((site) => same(site, row)) ?? row);
  const rows = [...amended, ...own.filter((site) => !given.some((row) => same(site, row)))];
  const checked = checkLoci([...rows, ...own.filter((site, at) => own.findIndex((other) => same(other, site)) !== at)]);
  if (!checked.ok) return checked;
  const odd = rows.find((row) => known !== undefined && row.sexLink !== null && row.sexLink.system !== known.sexSystem);
  if (odd !== undefined)
    return refuse('locus-malformed', { locus: odd.locus, species, why: 'the species has another sex system' });
  const linkSystem = rows.find((row) => row.sexLink !== null)?.sexLink?.system ?? null;
  return ok({
    species,
    sexSystem: known?.sexSystem ?? linkSystem,
    sexSystemSource: known?.sexSystemSource ?? (linkSystem === null ? null : 'the site’s own row'),
    rows: together(rows),
    combos: COMBOS.filter((combo) => combo.species === species && comboFits(combo, rows)),
  });
}

/** Rows of one chromosome side by side at the place of the first, so that a code in phase keeps the table's order. */
function together(rows: readonly LocusRow[]): readonly LocusRow[] {
  return rows.flatMap((row, at) => {
    const group = groupOf(row);
    if (group === null) return [row];
    const first = rows.findIndex((other) => groupOf(other) === group);
    return first === at ? rows.filter((other) => groupOf(other) === group) : [];
  });
}

function comboFits(combo: Combo, rows: readonly LocusRow[]): boolean {
  const known = new Set(rows.flatMap((row) => row.alleles.map((one) => one.symbol)));
  return combo.means.every((carrying) => carrying.every((symbol) => known.has(symbol)));
}

/** Where an allele stands in a table. */
export interface AllelePlace {
  readonly row: LocusRow;
  readonly allele: Allele;
}

/** The allele of a sign, ignoring case. */
export function alleleOf(table: LocusTable, symbol: string): AllelePlace | null {
  const wanted = symbol.toLowerCase();
  for (const row of table.rows) {
    const allele = row.alleles.find((one) => one.symbol.toLowerCase() === wanted);
    if (allele !== undefined) return { row, allele };
  }
  return null;
}

/** The row of a locus name. */
export function rowOf(table: LocusTable, locus: string): LocusRow | null {
  return table.rows.find((row) => row.locus === locus) ?? null;
}
