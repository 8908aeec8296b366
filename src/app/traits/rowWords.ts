import type { Confidence, Inheritance, LocusRow, LocusTable, Sex } from '../../core/index.ts';

/** How a locus is inherited, said to somebody who looks at animals. */
export function sayInheritance({ inheritance, sexLink }: Pick<LocusRow, 'inheritance' | 'sexLink'>): string {
  return sexLink === null ? INHERITED[inheritance] : `${INHERITED[inheritance]}, sex-linked`;
}

const INHERITED: Readonly<Record<Inheritance, string>> = {
  recessive: 'recessive',
  'incomplete-dominant': 'shows in one copy, two look different',
  dominant: 'shows in one copy, two look the same',
  mixed: 'a series: some recessive, some show in one copy',
};

/** How well a row is known, in a word or two. */
export function sayConfidence(confidence: Confidence): string {
  return CONFIDENCE[confidence];
}

const CONFIDENCE: Readonly<Record<Confidence, string>> = {
  published: 'published',
  'common practice': 'common practice',
  memory: 'from memory',
};

/** The trade names of a locus; of a series the printed ones. */
export function sayNames({ alleles }: LocusRow): string {
  const [only, ...more] = alleles;
  return more.length === 0 ? (only?.names ?? []).join(', ') : alleles.map(({ names }) => names[0]).join(' · ');
}

/** Everything that a row can be searched by, in small letters. */
export function searchWords(row: LocusRow): string {
  const alleles = row.alleles.flatMap(({ symbol, names }) => [symbol, ...names]);
  const pairs = row.named.flatMap(({ name, also }) => [name, ...also]);
  return [row.locus, row.gene ?? '', ...alleles, ...pairs].join(' ').toLowerCase();
}

/** Where a note is of one sex alone. */
export function sayOnlySex(sex: Sex | null): string {
  return sex === null ? '' : sex === 'M' ? 'in males' : 'in females';
}

/** The printed trade name of an allele of a species. */
export function alleleName({ rows }: LocusTable, symbol: string): string {
  return rows.flatMap((row) => row.alleles).find((one) => one.symbol === symbol)?.names[0] ?? symbol;
}
