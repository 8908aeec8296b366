import { type LocusRow, type NamedPair, showsInOneDose } from './loci/index.ts';

/** The look of wild type at a locus. */
export const NORMAL_LOOK = 'normal';
/** What stands for wild type and for the missing copy of a Z locus in genotype keys. */
export const WILD = '+';
export const ABSENT = 'W';

/** What a genotype key (`a/b`, `X|Y`, `Z|W`) looks like at a locus; a copy that only shows in pairs is not seen. */
export function lookOf(row: LocusRow, key: string): string {
  const [a = WILD, b = WILD] = key.split(/[/|]/);
  const pair = namedPair(row, a, b);
  if (pair !== null) return pair.looks ?? pair.name;
  if (a === b) return a === WILD ? NORMAL_LOOK : homozygoteName(row, a);
  if (b === ABSENT) return a === WILD ? NORMAL_LOOK : nameOf(row, a);
  const seen = inTableOrder(row, [a, b]).filter((one) => one !== WILD);
  const shown = seen.filter(showsInOneDose);
  if (shown.length > 0) return shown.map((one) => nameOf(row, one)).join(' ');
  return seen.length === 2 ? seen.map((one) => nameOf(row, one)).join('/') : NORMAL_LOOK;
}

/** The printed trade name of an allele. */
export function nameOf(row: LocusRow, symbol: string): string {
  return row.alleles.find((one) => one.symbol === symbol)?.names[0] ?? symbol;
}

/** The trade name of two copies: its own, or `Super` and the name for one that shows differently in one dose. */
export function homozygoteName(row: LocusRow, symbol: string): string {
  const own = namedPair(row, symbol, symbol);
  if (own !== null) return own.name;
  const different = showsInOneDose(symbol) && row.inheritance !== 'dominant';
  return different ? `Super ${nameOf(row, symbol)}` : nameOf(row, symbol);
}

/** The trade name of its own that a pair has, if any. */
export function namedPair(row: LocusRow, a: string, b: string): NamedPair | null {
  return row.named.find(({ pair }) => (pair[0] === a && pair[1] === b) || (pair[0] === b && pair[1] === a)) ?? null;
}

/** Every genotype key of some alleles with its look; on a sex chromosome also those of the sex with two kinds of it. */
export function looksOf(row: LocusRow, alleles: readonly string[]): ReadonlyMap<string, string> {
  const like = alleles.flatMap((a, at) => alleles.slice(at).map((b) => `${a}/${b}`));
  const unlike = row.sexLink === null ? [] : alleles.flatMap((a) => alleles.map((b) => `${a}|${b}`));
  return new Map([...like, ...unlike].map((key) => [key, lookOf(row, key)] as const));
}

function inTableOrder(row: LocusRow, symbols: readonly string[]): readonly string[] {
  const place = (symbol: string): number => row.alleles.findIndex((one) => one.symbol === symbol);
  return [...symbols].sort((a, b) => place(a) - place(b));
}
