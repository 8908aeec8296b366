import type { Chance } from './chance.ts';

/** A trait of a species: its symbol in our notation and its trade word; a capital shows in one dose. */
interface Trait {
  readonly symbol: string;
  readonly word: string;
  /** The word for two copies, where the trade has one. */
  readonly twice?: string;
}

/** How many copies an animal carries, and with what chance people think so. */
export interface Gene extends Trait {
  readonly copies: number;
  /** The chance of one copy as a fraction; `[1, 1]` where it is known. */
  readonly known: Fraction;
}

type Fraction = readonly [over: number, under: number];

const SURE: Fraction = [1, 1];
/** A chance of a copy in finer parts than this is not written on a card. */
const FINEST = 16;

/** Trade words from memory; symbols as in the facts of this repository's notation. */
const TRAITS: Readonly<Record<string, readonly Trait[]>> = {
  'Python regius': [
    { symbol: 'alb', word: 'Albino' },
    { symbol: 'pie', word: 'Piebald' },
    { symbol: 'cln', word: 'Clown' },
    { symbol: 'gho', word: 'Ghost' },
    { symbol: 'ax1', word: 'Axanthic (first line)' },
    { symbol: 'dgh', word: 'Desert Ghost' },
    { symbol: 'Pas', word: 'Pastel', twice: 'Super Pastel' },
    { symbol: 'Enc', word: 'Enchi', twice: 'Super Enchi' },
    { symbol: 'Moj', word: 'Mojave', twice: 'Super Mojave' },
    { symbol: 'Cin', word: 'Cinnamon', twice: 'Super Cinnamon' },
    { symbol: 'Yel', word: 'Yellow Belly', twice: 'Ivory' },
    { symbol: 'Fir', word: 'Fire', twice: 'Super Fire' },
    { symbol: 'Leo', word: 'Leopard', twice: 'Super Leopard' },
    { symbol: 'Odr', word: 'Orange Dream', twice: 'Super Orange Dream' },
  ],
  'Pantherophis guttatus': [
    { symbol: 'amel', word: 'Amelanistic' },
    { symbol: 'ane', word: 'Anerythristic' },
    { symbol: 'mot', word: 'Motley' },
    { symbol: 'lav', word: 'Lavender' },
    { symbol: 'hyp', word: 'Hypo' },
    { symbol: 'dif', word: 'Diffused' },
  ],
  'Boa imperator': [
    { symbol: 'al1', word: 'Albino (first line)' },
    { symbol: 'an1', word: 'Anery I' },
    { symbol: 'Hyp', word: 'Hypo', twice: 'Super Hypo' },
    { symbol: 'Jun', word: 'Jungle', twice: 'Super Jungle' },
  ],
  'Heterodon nasicus': [
    { symbol: 'Con', word: 'Anaconda', twice: 'Superconda' },
    { symbol: 'Arc', word: 'Arctic', twice: 'Super Arctic' },
    { symbol: 'alb', word: 'Albino' },
    { symbol: 'axa', word: 'Axanthic' },
    { symbol: 'tfb', word: 'Toffee Belly' },
  ],
};

/** Genes of an animal that was bought: a few that show, a few that are carried. */
export function foundersGenes(species: string, chance: Chance): readonly Gene[] {
  const traits = chance.shuffled(TRAITS[species] ?? []);
  const count = Math.min(traits.length, chance.pick([0, 0, 1, 1, 1, 2, 2, 3]));
  return traits.slice(0, count).map((trait) => founderGene(trait, chance));
}

function founderGene(trait: Trait, chance: Chance): Gene {
  if (isVisible(trait)) return { ...trait, copies: chance.happens(0.12) ? 2 : 1, known: SURE };
  if (chance.happens(0.3)) return { ...trait, copies: 2, known: SURE };
  if (chance.happens(0.6)) return { ...trait, copies: 1, known: SURE };
  const known: Fraction = chance.happens(0.5) ? [2, 3] : [1, 2];
  return { ...trait, copies: chance.happens(known[0] / known[1]) ? 1 : 0, known };
}

/** One young of two parents: each allele by chance, and what people can know of it from its looks and its parents. */
export function crossed(sire: readonly Gene[], dam: readonly Gene[], chance: Chance): readonly Gene[] {
  const traits = new Map([...sire, ...dam].map((gene) => [gene.symbol, gene]));
  return [...traits.values()].flatMap((trait) => {
    const [father, mother] = [sire, dam].map((genes) => genes.find((gene) => gene.symbol === trait.symbol));
    const copies = [father, mother].filter((gene) => chance.happens((gene?.copies ?? 0) / 2)).length;
    const known = isVisible(trait) || copies === 2 ? SURE : chanceOfOne(passes(father), passes(mother));
    const said = isVisible(trait) ? copies > 0 : known[0] > 0 && known[1] <= FINEST;
    return said ? [{ symbol: trait.symbol, word: trait.word, ...twiceOf(trait), copies, known }] : [];
  });
}

/** The code on the card: what is sure by symbol, then what is possible. */
export function traitCode(genes: readonly Gene[]): string {
  const sorted = [...genes].sort((a, b) => rank(a) - rank(b) || (a.symbol < b.symbol ? -1 : 1));
  return sorted.length === 0 ? 'wt' : sorted.map(codeOf).join('; ');
}

/** The same in trade words: what shows, then what is carried. */
export function traitWords(genes: readonly Gene[]): string {
  const shows = genes.filter((gene) => isVisible(gene) || gene.copies === 2);
  const carries = genes.filter((gene) => !shows.includes(gene));
  const words = [...shows.map(wordOf), ...carries.sort((a, b) => rank(a) - rank(b)).map(wordOf)];
  return words.length === 0 || shows.length === 0 ? ['Normal', ...words].join(', ') : words.join(', ');
}

function codeOf(gene: Gene): string {
  if (!isSure(gene)) return `[${gene.symbol} ${gene.known[0]}:${gene.known[1]}]/+`;
  return gene.copies === 2 ? `${gene.symbol}/${gene.symbol}` : `${gene.symbol}/+`;
}

function wordOf(gene: Gene): string {
  if (gene.copies === 2) return gene.twice ?? gene.word;
  if (isVisible(gene)) return gene.word;
  return isSure(gene) ? `het ${gene.word}` : `${Math.floor((100 * gene.known[0]) / gene.known[1])} % het ${gene.word}`;
}

function isVisible(trait: Trait): boolean {
  return trait.symbol.charAt(0) !== trait.symbol.charAt(0).toLowerCase();
}

function isSure(gene: Gene): boolean {
  return gene.copies === 2 || gene.known[0] === gene.known[1];
}

function rank(gene: Gene): number {
  return isSure(gene) ? 0 : 1;
}

function twiceOf(trait: Trait): { twice?: string } {
  return trait.twice === undefined ? {} : { twice: trait.twice };
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
