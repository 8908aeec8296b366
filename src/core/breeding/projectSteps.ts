import { add, type Fraction, type Sex, sayFraction, toNumber, ZERO } from '../genetics/index.ts';
import { clutchesUntil, type ProjectKeeps } from './projectCross.ts';
import { codeOf, type Doses } from './projectGenes.ts';
import type { Goal, Ground, Held, Made } from './projectSearch.ts';

/** A cross of a route, with everything as figures and in words. */
export interface ProjectStep {
  readonly number: number;
  /** Trait codes; the young's is null in the last step, where it is the wanted animal. */
  readonly sire: string;
  readonly dam: string;
  readonly young: string | null;
  readonly keeps: ProjectKeeps;
  /** The share of hatchlings that are what is kept, of both sexes together. */
  readonly chance: Fraction;
  readonly clutches: Fraction;
  /** Years from the beginning: when the parents can be bred, and when the young has hatched. */
  readonly from: number;
  readonly until: number;
  readonly words: string;
}

/** Names of the animals to begin with that carry this. */
export type NamesOf = (doses: Doses, sex: Sex) => string;

interface Planned {
  readonly made: Made;
  kept: ProjectKeeps;
}

/** The steps of a route, parents before their young; what two lines share is made once and kept for both. */
export function stepsOf(
  ground: Ground,
  goal: Goal,
  namesOf: NamesOf,
): { readonly steps: readonly ProjectStep[]; readonly clutches: Fraction; readonly years: number } {
  const planned: Planned[] = [];
  collect(goal.made, planned);
  const steps: ProjectStep[] = [];
  for (const { made, kept } of planned) steps.push(stepOf(ground, made, kept, steps, planned, namesOf));
  return {
    steps,
    clutches: steps.reduce((sum, { clutches }) => add(sum, clutches), ZERO),
    years: steps.at(-1)?.until ?? 0,
  };
}

function collect(made: Made, planned: Planned[]): void {
  for (const parent of new Set([made.sire, made.dam])) if (parent.made !== null) collect(parent.made, planned);
  const same = planned.find((one) => isSameCross(one.made, made));
  if (same === undefined) planned.push({ made, kept: made.kept });
  else if (same.kept !== made.kept) same.kept = 'pair';
}

function isSameCross(a: Made, b: Made): boolean {
  const text = ({ doses, sire, dam }: Made): string =>
    [doses?.join(''), sire.doses.join(''), dam.doses.join('')].join(' ');
  return text(a) === text(b);
}

function stepOf(
  ground: Ground,
  made: Made,
  kept: ProjectKeeps,
  before: readonly ProjectStep[],
  planned: readonly Planned[],
  namesOf: NamesOf,
): ProjectStep {
  const numberOf = (held: Held): number | null =>
    held.made === null ? null : planned.findIndex((one) => held.made !== null && isSameCross(one.made, held.made)) + 1;
  const readyOf = (held: Held, sex: Sex): number => {
    const step = before[(numberOf(held) ?? 0) - 1];
    return step === undefined ? 0 : step.until + ground.years[sex];
  };
  const clutches = clutchesUntil(made.p, ground.clutch, kept);
  const from = Math.max(readyOf(made.sire, 'M'), readyOf(made.dam, 'F'));
  const until = from + toNumber(clutches) * ground.years.clutch;
  const say = (held: Held, sex: Sex): string => {
    const number = numberOf(held);
    const who = number === null ? namesOf(held.doses, sex) : `of step ${number}`;
    return `${sex === 'M' ? 'male' : 'female'} ${codeOf(ground.genes, held.doses)} (${who})`;
  };
  const young = made.doses === null ? null : codeOf(ground.genes, made.doses);
  const part = sayFraction(made.p) === '1' ? 'all' : sayFraction(made.p);
  const share = `${part} of the young ${young === null ? 'are what is wanted' : `are known to be ${young}`}`;
  return {
    number: before.length + 1,
    sire: codeOf(ground.genes, made.sire.doses),
    dam: codeOf(ground.genes, made.dam.doses),
    young,
    keeps: kept,
    chance: made.p,
    clutches,
    from,
    until,
    words: `Pair the ${say(made.sire, 'M')} with the ${say(made.dam, 'F')}: ${share}. ${sayKept(kept)}: ${about(toNumber(clutches))} clutches of ${ground.clutch} on average, hatched about ${about(until)} years from the beginning.`,
  };
}

function sayKept(kept: ProjectKeeps): string {
  switch (kept) {
    case 'one':
      return 'Until one has hatched';
    case 'M':
      return 'Keep a male';
    case 'F':
      return 'Keep a female';
    case 'pair':
      return 'Keep a male and a female';
    default:
      return kept satisfies never;
  }
}

/** The whole route in words, a step a line and the sum below. */
export function sayRoute(steps: readonly ProjectStep[], clutches: Fraction, years: number): readonly string[] {
  const sum = `In all ${about(toNumber(clutches))} clutches and ${about(years)} years on average.`;
  return [...steps.map(({ number, words }) => `${number}. ${words}`), sum];
}

function about(value: number): string {
  return value < 10 ? String(Number(value.toFixed(2))) : String(Number(value.toFixed(1)));
}
