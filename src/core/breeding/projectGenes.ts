import { type LocusRow, type LocusTable, lookOf, type Sex, type Traits } from '../genetics/index.ts';
import { type Problem, problem } from '../problems.ts';

/** An allele that the wanted animal carries, in at least so many copies. */
export interface WantedGene {
  readonly symbol: string;
  readonly copies: 1 | 2;
}

/** An animal to begin with; without a sex, animals like it are at hand in both. */
export interface ProjectAnimal {
  readonly name: string;
  readonly traits: Traits;
  readonly sex: Sex | null;
}

/** A wanted allele at its locus, with what 0, 1 and 2 copies look like. */
export interface Gene {
  readonly symbol: string;
  readonly copies: 1 | 2;
  readonly row: LocusRow;
  readonly looks: readonly [string, string, string];
}

/** Copies of each wanted allele, in the order of the genes. */
export type Doses = readonly number[];

/** More genes make more ways than can be compared, and more years than anybody plans. */
export const MOST_PROJECT_GENES = 4;

/** The genes of a project in the table's order, or why they cannot be planned for. */
export function genesOf(loci: LocusTable, wanted: readonly WantedGene[]): readonly Gene[] | Problem {
  if (wanted.length === 0 || wanted.length > MOST_PROJECT_GENES)
    return wrong(`${wanted.length} wanted genes, and 1 to ${MOST_PROJECT_GENES} can be compared`, 'wanted');
  const genes: Gene[] = [];
  for (const [at, { symbol, copies }] of wanted.entries()) {
    const row = loci.rows.find(({ alleles }) => alleles.some((one) => one.symbol === symbol));
    if (row === undefined) return wrong(`no allele of ${loci.species} has the sign ${symbol}`, `wanted.${at}`);
    if (row.sexLink !== null)
      return wrong(`${symbol} lies on a sex chromosome, which this sheet cannot follow`, `wanted.${at}`);
    const near = genes.find((one) => isTogether(one.row, row));
    if (near !== undefined)
      return wrong(`${near.symbol} and ${symbol} lie together, and this sheet takes genes apart`, `wanted.${at}`);
    const lookAt = (dose: number): string => lookOf(row, keyOf(symbol, dose));
    genes.push({ symbol, copies, row, looks: [lookAt(0), lookAt(1), lookAt(2)] });
  }
  genes.sort((a, b) => loci.rows.indexOf(a.row) - loci.rows.indexOf(b.row));
  const death = deathOf(
    genes,
    genes.map(({ copies }) => copies),
  );
  return death === null ? genes : wrong(`the wanted animal is not known alive (${death})`, 'wanted');
}

function isTogether(a: LocusRow, b: LocusRow): boolean {
  return a === b || (a.linkage !== null && b.linkage !== null && a.linkage.group === b.linkage.group);
}

function keyOf(symbol: string, dose: number): string {
  return dose === 0 ? '+/+' : dose === 1 ? `${symbol}/+` : `${symbol}/${symbol}`;
}

/** What is told of eggs with these copies where they are taken to die; null where nothing is. */
export function deathOf(genes: readonly Gene[], doses: Doses): string | null {
  const carried = genes.flatMap(({ symbol }, at) => Array.from({ length: doses[at] ?? 0 }, () => symbol));
  const fits = (carrying: readonly string[]): boolean =>
    carrying.every((one) => count(carried, one) >= count(carrying, one));
  const notes = genes.flatMap(({ row }) => row.lethal);
  return notes.find(({ carrying }) => fits(carrying))?.says ?? null;
}

function count(all: readonly string[], one: string): number {
  return all.filter((other) => other === one).length;
}

/** The certain copies of each gene; null for an animal with another allele in a wanted one's place. */
export function dosesOf(genes: readonly Gene[], { pieces }: Traits): Doses | null {
  const doses = genes.map(({ symbol, row }) => {
    const slots = pieces.flatMap((piece) => {
      const at = piece.loci.indexOf(row.locus);
      return at < 0 ? [] : piece.copies.flatMap((copy) => copy[at] ?? []);
    });
    const isOther = slots.some((slot) => (slot.kind === 'allele' || slot.kind === 'maybe') && slot.symbol !== symbol);
    return isOther ? Number.NaN : slots.filter((slot) => slot.kind === 'allele').length;
  });
  return doses.some(Number.isNaN) ? null : doses;
}

/** Whether an animal’s traits leave open what it carries at a wanted locus. */
export function isOpen(genes: readonly Gene[], { pieces }: Traits): boolean {
  const loci = new Set(genes.map(({ row }) => row.locus));
  return pieces.some((piece) =>
    piece.copies.some((copy) =>
      copy.some((slot, at) => loci.has(piece.loci[at] ?? '') && (slot.kind === 'maybe' || slot.kind === 'unknown')),
    ),
  );
}

/** The trait code of some copies. */
export function codeOf(genes: readonly Gene[], doses: Doses): string {
  const pieces = genes.flatMap(({ symbol }, at) => (doses[at] ? [keyOf(symbol, doses[at] ?? 0)] : []));
  return pieces.length === 0 ? 'wt' : pieces.join('; ');
}

export function wrong(why: string, path: string): Problem {
  return problem('project-case', { why }, path);
}
