import type { Chance } from './chance.ts';

/** How many copies an animal carries, and with what chance people think so. */
export interface Gene {
  /** Its sign in our notation; a capital shows in one dose. */
  readonly symbol: string;
  readonly copies: number;
  /** The chance of one copy as a fraction; `[1, 1]` where it is known. */
  readonly known: Fraction;
}

type Fraction = readonly [over: number, under: number];

const SURE: Fraction = [1, 1];
/** A chance of a copy in finer parts than this is not written on a card. */
const FINEST = 16;

/** Signs of the tables of loci, where their trade names stand. */
const TRAITS: Readonly<Record<string, readonly string[]>> = {
  'Python regius': ['alb', 'pie', 'cln', 'gho', 'ax1', 'dgh', 'Pas', 'Enc', 'Moj', 'Cin', 'Yel', 'Fir', 'Leo', 'Odr'],
  'Pantherophis guttatus': ['amel', 'ane', 'mot', 'lav', 'hyp', 'dif'],
  'Boa imperator': ['al1', 'an1', 'Hyp', 'Jun'],
  'Heterodon nasicus': ['Con', 'Arc', 'alb', 'axa', 'tfb'],
};

/** Genes of an animal that was bought: a few that show, a few that are carried. */
export function foundersGenes(species: string, chance: Chance): readonly Gene[] {
  const symbols = chance.shuffled(TRAITS[species] ?? []);
  const count = Math.min(symbols.length, chance.pick([0, 0, 1, 1, 1, 2, 2, 3]));
  return symbols.slice(0, count).map((symbol) => founderGene(symbol, chance));
}

function founderGene(symbol: string, chance: Chance): Gene {
  if (isVisible(symbol)) return { symbol, copies: chance.happens(0.12) ? 2 : 1, known: SURE };
  if (chance.happens(0.3)) return { symbol, copies: 2, known: SURE };
  if (chance.happens(0.6)) return { symbol, copies: 1, known: SURE };
  const known: Fraction = chance.happens(0.5) ? [2, 3] : [1, 2];
  return { symbol, copies: chance.happens(known[0] / known[1]) ? 1 : 0, known };
}

/** One young of two parents: each allele by chance, and what people can know of it from its looks and its parents. */
export function crossed(sire: readonly Gene[], dam: readonly Gene[], chance: Chance): readonly Gene[] {
  const traits = new Map([...sire, ...dam].map((gene) => [gene.symbol, gene]));
  return [...traits.values()].flatMap((trait) => {
    const [father, mother] = [sire, dam].map((genes) => genes.find((gene) => gene.symbol === trait.symbol));
    const copies = [father, mother].filter((gene) => chance.happens((gene?.copies ?? 0) / 2)).length;
    const known = isVisible(trait.symbol) || copies === 2 ? SURE : chanceOfOne(passes(father), passes(mother));
    const said = isVisible(trait.symbol) ? copies > 0 : known[0] > 0 && known[1] <= FINEST;
    return said ? [{ symbol: trait.symbol, copies, known }] : [];
  });
}

/** The genes in our notation; the core puts them in its order and says them in trade words. */
export function traitCode(genes: readonly Gene[]): string {
  return genes.length === 0 ? 'wt' : genes.map(codeOf).join('; ');
}

function codeOf(gene: Gene): string {
  if (!isSure(gene)) return `[${gene.symbol} ${gene.known[0]}:${gene.known[1]}]/+`;
  return gene.copies === 2 ? `${gene.symbol}/${gene.symbol}` : `${gene.symbol}/+`;
}

function isVisible(symbol: string): boolean {
  return symbol.charAt(0) !== symbol.charAt(0).toLowerCase();
}

function isSure(gene: Gene): boolean {
  return gene.copies === 2 || gene.known[0] === gene.known[1];
}

/** The chance that a parent gives the allele, as far as people know. */
function passes(gene: Gene | undefined): Fraction {
  if (gene === undefined) return [0, 1];
  return gene.copies === 2 ? [1, 1] : [gene.known[0], gene.known[1] * 2];
}

/** The chance that a young which does not show the trait carries one copy. */
function chanceOfOne([a, under]: Fraction, [b, below]: Fraction): Fraction {
  const one = a * (below - b) + b * (under - a);
  const notTwo = under * below - a * b;
  const shared = divisor(one, notTwo);
  return [one / shared, notTwo / shared];
}

function divisor(a: number, b: number): number {
  return b === 0 ? Math.max(a, 1) : divisor(b, a % b);
}
