import { type Fraction, fraction, multiply, ONE } from './fraction.ts';
import { locusOrder, type Sex } from './model.ts';
import type { Outcomes, Part, PartPhenotype } from './outcomes.ts';

/** A phenotype of the whole animal. */
export interface Phenotype {
  readonly sex: Sex | null;
  /** A label per locus, in the order of the chromosomes. */
  readonly labels: readonly string[];
  readonly p: Fraction;
  /** The genotypes behind it, per locus. */
  readonly within: ReadonlyMap<string, ReadonlyMap<string, Fraction>>;
}

/** A genotype of the whole animal. */
export interface Genotype {
  readonly sex: Sex | null;
  readonly keys: readonly string[];
  readonly p: Fraction;
}

/** How many different phenotypes and genotypes live; a product, so it is known without listing them. */
export function countsOf(outcomes: Outcomes): { readonly phenotypes: bigint; readonly genotypes: bigint } {
  const product = (of: (part: Part) => number): bigint =>
    outcomes.parts.reduce((all, part) => all * BigInt(of(part)), 1n);
  return { phenotypes: product((part) => part.phenotypes.length), genotypes: product((part) => part.genotypes.length) };
}

/** Every genotype that lives, with its probability among those that live. */
export function allGenotypes(outcomes: Outcomes): readonly Genotype[] {
  const order = labelOrder(outcomes);
  let all: { sex: Sex | null; keys: readonly string[]; weight: bigint }[] = [{ sex: null, keys: [], weight: 1n }];
  for (const part of outcomes.parts) {
    all = all.flatMap((sofar) =>
      part.genotypes.map(([egg, weight]) => ({
        sex: sofar.sex ?? egg.sex,
        keys: [...sofar.keys, ...egg.keys],
        weight: sofar.weight * weight,
      })),
    );
  }
  const total = outcomes.parts.reduce((product, part) => product * part.total, 1n);
  return all.map(({ sex, keys, weight }) => ({
    sex,
    keys: order.map((at) => keys[at] ?? ''),
    p: fraction(weight, total),
  }));
}

/** The most probable phenotypes, in falling order; all of them without a limit. */
export function topPhenotypes(outcomes: Outcomes, limit = Number.POSITIVE_INFINITY): readonly Phenotype[] {
  if (outcomes.parts.some((part) => part.phenotypes.length === 0)) return [];
  const build = phenotypeBuilder(outcomes);
  const found: Phenotype[] = [];
  for (const choice of bestFirst(outcomes.parts, limit)) found.push(build(choice));
  return found;
}

/** The probability of a wanted phenotype among those that live; the labels named are enough, others may be anything. */
export function chanceOf(outcomes: Outcomes, wanted: ReadonlyMap<string, string>, sex: Sex | null = null): Fraction {
  return outcomes.parts.reduce((all, part) => multiply(all, chanceInPart(part, wanted, sex)), ONE);
}

/** The same in one part; loci outside of it do not matter. */
export function chanceInPart(part: Part, wanted: ReadonlyMap<string, string>, sex: Sex | null): Fraction {
  const fits = (one: PartPhenotype): boolean =>
    (sex === null || one.sex === null || one.sex === sex) &&
    part.loci.every((locus, at) => !wanted.has(locus) || wanted.get(locus) === one.labels[at]);
  const weight = part.phenotypes.filter(fits).reduce((sum, one) => sum + one.weight, 0n);
  return part.total === 0n ? fraction(0n, 1n) : fraction(weight, part.total);
}

/** Where the parts' labels, joined, hold the loci in the order of the chromosomes. */
export function labelOrder(outcomes: Outcomes): readonly number[] {
  const joinedLoci = outcomes.parts.flatMap((part) => part.loci);
  return locusOrder(outcomes.cross).map((locus) => joinedLoci.indexOf(locus));
}

function phenotypeBuilder(outcomes: Outcomes): (choice: readonly number[]) => Phenotype {
  const order = labelOrder(outcomes);
  const loci = locusOrder(outcomes.cross);
  const total = outcomes.parts.reduce((product, part) => product * part.total, 1n);
  const behind = new Map<PartPhenotype, readonly ReadonlyMap<string, Fraction>[]>();
  const within = (one: PartPhenotype): readonly ReadonlyMap<string, Fraction>[] => {
    const known =
      behind.get(one) ??
      one.within.map((map) => new Map([...map].map(([key, weight]) => [key, fraction(weight, one.weight)] as const)));
    behind.set(one, known);
    return known;
  };
  return (choice) => {
    const chosen = outcomes.parts
      .map((part, at) => part.phenotypes[choice[at] ?? 0])
      .filter((one) => one !== undefined);
    const labels = chosen.flatMap((one) => one.labels);
    const maps = chosen.flatMap(within);
    const weight = chosen.reduce((product, one) => product * one.weight, 1n);
    return {
      sex: chosen.find((one) => one.sex !== null)?.sex ?? null,
      labels: order.map((at) => labels[at] ?? ''),
      p: fraction(weight, total),
      within: new Map(loci.map((locus, at) => [locus, maps[order[at] ?? 0] ?? new Map()])),
    };
  };
}

interface Candidate {
  readonly choice: readonly number[];
  readonly weight: bigint;
  /** Only parts from here on may still step down: so each choice is reached on one way only. */
  readonly from: number;
}

/** Choices of one phenotype per part in falling order of their product: each list is sorted, so a step down never gains. */
function* bestFirst(parts: readonly Part[], limit: number): Generator<readonly number[]> {
  const heap: Candidate[] = [];
  const weightAt = (part: number, at: number): bigint => parts[part]?.phenotypes[at]?.weight ?? 0n;
  const first = parts.map(() => 0);
  push(heap, { choice: first, weight: first.reduce((product, at, part) => product * weightAt(part, at), 1n), from: 0 });
  for (let given = 0; given < limit; given++) {
    const best = pop(heap);
    if (best === undefined) return;
    yield best.choice;
    for (let part = best.from; part < parts.length; part++) {
      const at = (best.choice[part] ?? 0) + 1;
      if (at >= (parts[part]?.phenotypes.length ?? 0)) continue;
      const weight = (best.weight / weightAt(part, at - 1)) * weightAt(part, at);
      push(heap, { choice: best.choice.with(part, at), weight, from: part });
    }
  }
}

function push(heap: Candidate[], item: Candidate): void {
  heap.push(item);
  let at = heap.length - 1;
  while (at > 0) {
    const up = (at - 1) >> 1;
    const [one, parent] = [heap[at], heap[up]];
    if (!one || !parent || one.weight <= parent.weight) return;
    heap[at] = parent;
    heap[up] = one;
    at = up;
  }
}

function pop(heap: Candidate[]): Candidate | undefined {
  const top = heap[0];
  const last = heap.pop();
  if (top === undefined || last === undefined || heap.length === 0) return top;
  heap[0] = last;
  let at = 0;
  for (;;) {
    const [left, right] = [2 * at + 1, 2 * at + 2];
    const larger = (heap[right]?.weight ?? -1n) > (heap[left]?.weight ?? -1n) ? right : left;
    const [one, child] = [heap[at], heap[larger]];
    if (!one || !child || child.weight <= one.weight) return top;
    heap[at] = child;
    heap[larger] = one;
    at = larger;
  }
}
