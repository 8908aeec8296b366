import {
  type Block,
  type Cross,
  type Fraction,
  fraction,
  type Locus,
  ONE,
  type Strands,
} from '../../src/core/index.ts';

/** How likely each parent is het at a locus; wild type otherwise. */
type HetChance = (locus: number) => Fraction;

const HET: Strands = ['+', 'a'];
const WILD: Strands = ['+', '+'];

/** Het × het at some unlinked loci with three looks each. */
export function hetCross(loci: number): Cross {
  return invented(loci, () => ONE, false);
}

/** The same with the sex of every egg. */
export function sexedHetCross(loci: number): Cross {
  return invented(loci, () => ONE, true);
}

/** Possible hets, at each locus of another likelihood: hardly any two looks of the whole animal are as likely. */
export function unevenCross(loci: number): Cross {
  return invented(loci, (locus) => fraction(BigInt(17 + locus), 61n), false);
}

function invented(count: number, chance: HetChance, isSexed: boolean): Cross {
  const names = Array.from({ length: count }, (_, at) => `L${at}`);
  const blocks = names.map((name, at) => blockOf(name, chance(at)));
  const none = { sire: [], dam: [] };
  const sex = isSexed ? [{ id: 'sex', sex: true, loci: ['SD'], r: none }] : [];
  return {
    system: 'XY',
    chromosomes: [...sex, ...names.map((name) => ({ id: name, sex: false, loci: [name], r: none }))],
    loci: new Map(names.map((name) => [name, locusOf(name)])),
    sire: blocks,
    dam: blocks,
    lethal: [],
    mask: [],
  };
}

function locusOf(name: string): Locus {
  const phen = new Map([
    ['+/+', 'none'],
    ['+/a', 'one'],
    ['a/a', 'two'],
  ]);
  return { name, alleles: ['+', 'a'], phen };
}

function blockOf(name: string, { top, bottom }: Fraction): Block {
  const het = { p: { top, bottom }, pairs: [HET] };
  const wild = { p: fraction(bottom - top, bottom), pairs: [WILD] };
  return { loci: [name], states: top === bottom ? [het] : [het, wild] };
}
