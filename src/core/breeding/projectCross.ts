import { divide, type Fraction, fraction, HALF, multiply, ONE, power, subtract, ZERO } from '../genetics/index.ts';
import { type Doses, deathOf, type Gene } from './projectGenes.ts';

/** Whom a step keeps: an animal of either sex, one of a sex, or a male and a female. */
export type ProjectKeeps = 'one' | 'M' | 'F' | 'pair';

/** Young that can be told from their siblings by their looks, with their share of the hatchlings. */
export interface KnownYoung {
  readonly doses: Doses;
  readonly p: Fraction;
}

const TWO: Fraction = fraction(2n, 1n);

/**
 * The clutches of `size` until whoever is to be kept has hatched, on average: 1 / (1 - (1 - p)^size) for one young of
 * chance p; half of p for one of a sex; for one of each the mean of the later of the two, that is the sum of both less the
 * mean of the earlier one. Clutches and sexes fall independently.
 */
export function clutchesUntil(p: Fraction, size: number, kept: ProjectKeeps): Fraction {
  const until = (one: Fraction): Fraction => divide(ONE, subtract(ONE, power(subtract(ONE, one), size)));
  switch (kept) {
    case 'one':
      return until(p);
    case 'M':
    case 'F':
      return until(multiply(p, HALF));
    case 'pair':
      return subtract(multiply(TWO, until(multiply(p, HALF))), until(p));
    default:
      return kept satisfies never;
  }
}

/** The young of two animals whose looks leave no doubt about their copies: nobody has to be proven by breeding. */
export function knownYoung(genes: readonly Gene[], sire: Doses, dam: Doses): readonly KnownYoung[] {
  const chances = chancesOf(genes, sire, dam);
  const known = chances.map((all, at) =>
    all.filter(({ dose }) =>
      all.every((other) => other.dose === dose || lookAt(genes[at], other.dose) !== lookAt(genes[at], dose)),
    ),
  );
  const viable = viableOf(genes, chances);
  return living(genes, known).map(({ doses, weight }) => ({ doses, p: shareOf(weight, viable) }));
}

/** The share of hatchlings that look as only animals with all that is wanted do. */
export function wantedShare(genes: readonly Gene[], sire: Doses, dam: Doses): Fraction {
  const chances = chancesOf(genes, sire, dam);
  const sure = chances.map((all, at) => {
    const isEnough = (dose: number): boolean => dose >= (genes[at]?.copies ?? 0);
    return all.filter(({ dose }) =>
      all.every((other) => lookAt(genes[at], other.dose) !== lookAt(genes[at], dose) || isEnough(other.dose)),
    );
  });
  return shareOf(weightOf(living(genes, sure)), viableOf(genes, chances));
}

function lookAt(gene: Gene | undefined, dose: number): string | undefined {
  return gene?.looks[dose];
}

interface DoseChance {
  readonly dose: number;
  /** Of four young so many. */
  readonly weight: number;
}

/** For each gene what the young can have: each parent gives one of its two copies (Mendel 1866). */
function chancesOf(genes: readonly Gene[], sire: Doses, dam: Doses): readonly (readonly DoseChance[])[] {
  return genes.map((_gene, at) => {
    const [a, b] = [sire[at] ?? 0, dam[at] ?? 0];
    const weights = [(2 - a) * (2 - b), (2 - a) * b + a * (2 - b), a * b];
    return weights.map((weight, dose) => ({ dose, weight })).filter(({ weight }) => weight > 0);
  });
}

interface Weighed {
  readonly doses: Doses;
  readonly weight: number;
}

/** All combinations of the genes but those that are taken to die; weights are of 4 to the number of genes. */
function living(genes: readonly Gene[], chances: readonly (readonly DoseChance[])[]): readonly Weighed[] {
  const all = chances.reduce<readonly Weighed[]>(
    (made, next) =>
      made.flatMap(({ doses, weight }) =>
        next.map((one) => ({ doses: [...doses, one.dose], weight: weight * one.weight })),
      ),
    [{ doses: [], weight: 1 }],
  );
  return isDeadly(genes) ? all.filter(({ doses }) => deathOf(genes, doses) === null) : all;
}

function isDeadly(genes: readonly Gene[]): boolean {
  return genes.some(({ row }) => row.lethal.length > 0);
}

function viableOf(genes: readonly Gene[], chances: readonly (readonly DoseChance[])[]): number {
  return isDeadly(genes) ? weightOf(living(genes, chances)) : 4 ** genes.length;
}

function weightOf(all: readonly Weighed[]): number {
  return all.reduce((sum, { weight }) => sum + weight, 0);
}

function shareOf(weight: number, viable: number): Fraction {
  return viable === 0 ? ZERO : fraction(BigInt(weight), BigInt(viable));
}
