import { ok, type Problem, problem, type Result } from '../../problems.ts';
import { compare, HALF, parseFraction, ZERO } from '../fraction.ts';
import { SEX_POINT } from '../model.ts';
import { type LocusRow, showsInOneDose } from './row.ts';

/** An allele's sign: a letter, then letters and digits, so that it never looks like a mark of the trait code. */
const SYMBOL = /^[A-Za-z][A-Za-z0-9]{1,9}$/;
const RESERVED: ReadonlySet<string> = new Set([
  'wt',
  'het',
  'hets',
  'ph',
  'dh',
  'th',
  'hom',
  'poss',
  'super',
  'visual',
  'normal',
]);

/**
 * Checks rows together: signs unique in a species ignoring case, loci once, capitals as they show, pairs and notes of
 * known alleles, recombination from 0 to 1/2. Errors: `loci-clash` and `locus-malformed`, naming the row.
 */
export function checkLoci(rows: readonly LocusRow[]): Result<readonly LocusRow[]> {
  const signs = new Map<string, string>();
  const loci = new Set<string>();
  for (const row of rows) {
    const found = clashOf(row, signs, loci) ?? faultOf(row, rows);
    if (found !== null) return { ok: false, problem: found };
  }
  return ok(rows);
}

function clashOf(row: LocusRow, signs: Map<string, string>, loci: Set<string>): Problem | null {
  const { species } = row;
  const name = `${species} ${row.locus.toLowerCase()}`;
  if (loci.has(name)) return problem('loci-clash', { species, why: `the locus ${row.locus} stands there twice` });
  loci.add(name);
  for (const { symbol } of row.alleles) {
    const key = `${species} ${symbol.toLowerCase()}`;
    const other = signs.get(key);
    if (other !== undefined) {
      return problem('loci-clash', { species, why: `the sign ${symbol} of ${row.locus} is taken by ${other}` });
    }
    signs.set(key, `${row.locus} (${symbol})`);
  }
  return null;
}

function faultOf(row: LocusRow, rows: readonly LocusRow[]): Problem | null {
  const why = alleleFault(row) ?? strangerIn(row, rows) ?? linkFault(row);
  return why === null
    ? null
    : problem('locus-malformed', { locus: row.locus || '(no name)', species: row.species, why });
}

function alleleFault(row: LocusRow): string | null {
  if (row.locus.trim() === '') return 'it has no name';
  if (row.locus === SEX_POINT) return `${SEX_POINT} is the name of the sex-determining point`;
  if (row.alleles.length === 0) return 'it has no allele';
  for (const { symbol, names } of row.alleles) {
    if (!SYMBOL.test(symbol)) return `the sign “${symbol}” is not a letter with 1 to 9 letters and digits after it`;
    if (RESERVED.has(symbol.toLowerCase())) return `the sign “${symbol}” has a meaning of its own`;
    if (names.every((name) => name.trim() === '')) return `${symbol} has no trade name`;
    const recessive = row.inheritance === 'recessive';
    if (recessive && showsInOneDose(symbol)) return `${symbol} begins with a capital, but the locus is recessive`;
    const visible = row.inheritance === 'dominant' || row.inheritance === 'incomplete-dominant';
    if (visible && !showsInOneDose(symbol)) return `${symbol} shows in one dose, so it begins with a capital`;
  }
  return null;
}

function strangerIn(row: LocusRow, rows: readonly LocusRow[]): string | null {
  const own = new Set(row.alleles.map((one) => one.symbol));
  const strangePair = row.named.flatMap((one) => one.pair).find((symbol) => !own.has(symbol));
  if (strangePair !== undefined) return `a named pair holds ${strangePair}, which is no allele of it`;
  const known = new Set(
    rows.filter((one) => one.species === row.species).flatMap((one) => one.alleles.map(({ symbol }) => symbol)),
  );
  const noted = [
    ...row.lethal.map((one) => one.carrying),
    ...row.masks.map((one) => one.carrying),
    ...row.welfare.flatMap((one) => one.anyOf),
  ];
  if (noted.some((carrying) => carrying.length === 0)) return 'a note names no allele';
  const strange = noted.flat().find((symbol) => !known.has(symbol));
  return strange === undefined ? null : `a note holds ${strange}, which is no allele of this species`;
}

function linkFault(row: LocusRow): string | null {
  const { sexLink, linkage } = row;
  if (sexLink !== null && linkage !== null) return 'it has a sex link and a linkage group; give the sex link alone';
  if (sexLink?.system === 'ZW' && sexLink.kind === 'partial') return 'a locus on Z is fully linked: the W has no copy';
  const r = sexLink?.r ?? linkage?.r ?? null;
  if (r === null) return null;
  const read = parseFraction(r);
  if (!read.ok) return `“${r}” is not a fraction`;
  return compare(read.value, ZERO) < 0 || compare(read.value, HALF) > 0
    ? `recombination ${r} does not lie from 0 to 1/2`
    : null;
}
