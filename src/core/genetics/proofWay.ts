import { evidenceOf, type Observed } from './evidence.ts';
import { add, commonBottom, compare, divide, type Fraction, fraction, gcd, isZero, ZERO } from './fraction.ts';
import type { LocusRow } from './loci/index.ts';
import { type Block, type Cross, heterogametic, type ParentRole, type Sex } from './model.ts';
import { outcomesOf } from './outcomes.ts';
import { NORMAL_LOOK, nameOf } from './phenotype.ts';
import { chanceOf, topPhenotypes } from './product.ts';
import { crossWith, type Doubt, type Mate, type ProofCase, type ProofWay } from './proofCase.ts';

/** How many young the chances are listed for. */
const LISTED = 12;
/** A way that needs more young than this tells nothing. */
const MOST_YOUNG = 1000;
/** The two looks that are left once all that matters is whether a young shows the sign. */
const [SIGN, OTHER] = ['sign', 'other'] as const;

/** How likely it is before any young; null where nobody can put a figure to it. */
export function priorOf({ doubt, row, animal, loci }: ProofCase): Fraction | null {
  const normal = { traits: { species: loci.species, pieces: [] }, sex: animal.sex === 'M' ? 'F' : 'M' } as const;
  const cross = crossWith(animal, normal, loci);
  return cross === null ? null : chanceOfAll(pairsAfter({ cross, role: roleOf(animal.sex), row, doubt }, []));
}

/** What young of this mate tell; null where they tell nothing. */
export function proofWay({ doubt, row, animal, loci }: ProofCase, mate: Mate): ProofWay | null {
  const cross = crossWith(animal, mate.parent, loci);
  if (cross === null) return null;
  const test: Test = { cross, role: roleOf(animal.sex), row, doubt };
  const signs = signsOf(test);
  if (signs.length === 0) return null;
  const told: Test = { ...test, cross: bySign(test, signs) };
  const lasting = doubtLasting(told);
  if (lasting === null) return null;
  const { parent: _, ...words } = mate;
  return {
    ...words,
    sign: signWords(signs, test),
    perYoung: chanceOf(outcomesOf(given(told, doubt.sign === 'for')), new Map([[row.locus, SIGN]])),
    ...lasting,
  };
}

/** Young without the sign one after another; null where even {@link MOST_YOUNG} of them leave it open. */
function doubtLasting(test: Test): Pick<ProofWay, 'after' | 'youngFor'> | null {
  const after: Fraction[] = [];
  const fewest = { in20: 0, in100: 0 };
  let pairs = oneByOne(test);
  for (let young = 1; young <= MOST_YOUNG; young++) {
    pairs = pairs.map((pair) => ({ ...pair, weight: pair.weight * pair.each }));
    if (young <= LISTED) after.push(chanceOfAll(pairs));
    const left = weightOf(pairs, test.doubt.sign === 'for');
    if (fewest.in20 === 0 && left * 20n < weightOf(pairs)) fewest.in20 = young;
    if (fewest.in100 === 0 && left * 100n < weightOf(pairs)) fewest.in100 = young;
    if (fewest.in100 > 0 && young >= LISTED) return { after, youngFor: fewest };
  }
  return null;
}

interface Test {
  readonly cross: Cross;
  readonly role: ParentRole;
  readonly row: LocusRow;
  readonly doubt: Doubt;
}

function roleOf(sex: Sex | null): ParentRole {
  return sex === 'F' ? 'dam' : 'sire';
}

/** Both parents in one pair of their states: whether it holds there, and how likely that is. */
interface StatePair {
  readonly holds: boolean;
  readonly weight: bigint;
}

function pairsAfter({ cross, role, row, doubt }: Test, seen: readonly Observed[]): readonly StatePair[] {
  const found = evidenceOf(cross, seen);
  const joint = found.joint ?? [];
  const total = commonBottom(joint.map(({ p }) => p));
  return joint.map((one) => ({
    holds: doubt.holds(found[role][one[role]]?.strands.get(row.locus) ?? ['', '']),
    weight: (one.p.top * total) / one.p.bottom,
  }));
}

/** The pairs of states before any young, each with what one young without the sign makes of its weight: eggs are independent given the parents. */
function oneByOne(test: Test): readonly (StatePair & { readonly each: bigint })[] {
  const before = pairsAfter(test, []);
  const first = pairsAfter(test, [{ sex: null, labels: [OTHER], count: 1 }]);
  const all = before.reduce((product, { weight }) => product * (weight === 0n ? 1n : weight), 1n);
  const each = before.map(({ weight }, at) => (weight === 0n ? 0n : ((first[at]?.weight ?? 0n) * all) / weight));
  const common = each.reduce(gcd, 0n) || 1n;
  return before.map((pair, at) => ({ ...pair, each: (each[at] ?? 0n) / common }));
}

function weightOf(pairs: readonly StatePair[], holds: boolean | null = null): bigint {
  return pairs.reduce((sum, one) => (holds === null || one.holds === holds ? sum + one.weight : sum), 0n);
}

function chanceOfAll(pairs: readonly StatePair[]): Fraction {
  return fraction(weightOf(pairs, true), weightOf(pairs));
}

/** The cross if it holds, or if it does not. */
function given({ cross, role, row, doubt }: Test, holds: boolean): Cross {
  const blocks = cross[role].map((block): Block => {
    const at = block.loci.indexOf(row.locus);
    if (at < 0) return block;
    const states = block.states.filter(({ pairs }) => doubt.holds(pairs[at] ?? ['', '']) === holds);
    const total = states.reduce((sum, { p }) => add(sum, p), ZERO);
    return { ...block, states: states.map((state) => ({ ...state, p: divide(state.p, total) })) };
  });
  return { ...cross, [role]: blocks };
}

/** What a young can be seen to be: a look, and its sex. */
interface Sign {
  readonly sex: Sex;
  readonly label: string;
}

function signsOf(test: Test): readonly Sign[] {
  const [ifSo, ifNot] = [looksIn(given(test, true)), looksIn(given(test, false))];
  const all = [...new Set([...ifSo.keys(), ...ifNot.keys()])];
  const isSign = (look: string): boolean => {
    const [so, not] = [ifSo.get(look) ?? ZERO, ifNot.get(look) ?? ZERO];
    if (test.doubt.sign === 'likelier') return compare(not, so) > 0;
    return test.doubt.sign === 'for' ? isZero(not) : isZero(so);
  };
  return all.filter(isSign).map((look) => ({ sex: look.startsWith('M') ? 'M' : 'F', label: look.slice(1) }));
}

/** The chance of each sex and look of this one locus. */
function looksIn(cross: Cross): ReadonlyMap<string, Fraction> {
  return new Map(topPhenotypes(outcomesOf(cross)).map(({ sex, labels, p }) => [`${sex}${labels[0]}`, p] as const));
}

/** The same cross with looks that only say whether a young shows the sign; on a sex chromosome a key tells the sex. */
function bySign({ cross, row }: Test, signs: readonly Sign[]): Cross {
  const locus = cross.loci.get(row.locus);
  if (locus === undefined) return cross;
  const unlike = heterogametic(cross.system) === 'sire' ? 'M' : 'F';
  const like = unlike === 'M' ? 'F' : 'M';
  const phen = new Map(
    [...locus.phen].map(([key, label]) => {
      const sex = key.includes('|') ? unlike : like;
      const shows = signs.some((one) => one.label === label && (row.sexLink === null || one.sex === sex));
      return [key, shows ? SIGN : OTHER] as const;
    }),
  );
  return { ...cross, loci: new Map([...cross.loci, [row.locus, { ...locus, phen }]]) };
}

function signWords(signs: readonly Sign[], { doubt, row }: Test): string {
  const of = (sex: Sex): string =>
    lookWords(
      signs.filter((one) => one.sex === sex).map((one) => one.label),
      nameOf(row, doubt.symbol),
    );
  const [sons, daughters] = [of('M'), of('F')];
  const both =
    sons === daughters
      ? `a young ${sons}`
      : [daughters && `a daughter ${daughters}`, sons && `a son ${sons}`].filter(Boolean).join(' or ');
  return doubt.says === null ? both : `${both} (${doubt.says})`;
}

function lookWords(labels: readonly string[], name: string): string {
  const shown = labels.filter((label) => label !== NORMAL_LOOK);
  if (labels.length === 0) return '';
  const words = shown.length === 0 ? `without ${name}` : `that shows ${shown.join(' or ')}`;
  return shown.length === labels.length || shown.length === 0 ? words : `${words}, or looks normal`;
}
