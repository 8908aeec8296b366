import { ok, type Result, refuse } from '../problems.ts';
import { add, commonBottom, type Fraction, fraction, gcd, HALF, multiply, ZERO } from './fraction.ts';
import { type Parentage, pedigreeOrder } from './kinship.ts';
import { addWeight } from './weights.ts';

/** An animal of the pedigree with what is known of its genotype at one locus. */
export interface Carrier extends Parentage {
  /** Its chances before anything was seen, where they are not those of the founders. */
  readonly prior: ReadonlyMap<string, Fraction> | null;
  /** The genotype keys that fit what it shows; null if it was not looked at. */
  readonly seen: ReadonlySet<string> | null;
}

/** The chance of everything that was seen, and of each genotype of each animal after it. */
export interface CarrierChances {
  readonly evidence: Fraction;
  readonly post: ReadonlyMap<string, ReadonlyMap<string, Fraction>>;
}

/** Larger tables than this are refused; a pedigree as tangled as that needs fewer unknown animals. */
export const MOST_CELLS = 20_000_000;

/** A table over some animals; `cells` in mixed radix, first animal slowest. */
interface Factor {
  readonly scope: readonly number[];
  readonly cells: readonly bigint[];
  readonly total: bigint;
}

interface Setting {
  readonly domains: readonly (readonly string[])[];
  readonly alleles: readonly string[];
}

/**
 * Genotype chances at one autosomal locus over a pedigree, loops allowed: exact variable elimination on a bucket tree,
 * animals taken out by the fewest new neighbours first, then a pass back for every animal's own chances
 * (Lauritzen & Sheehan 2003, "Graphical models for genetic analyses", describe the method). Errors: `pedigree-cycle`,
 * `parent-unknown`, `seen-impossible`, `pedigree-tangled`.
 */
export function carrierChances(
  alleles: readonly string[],
  animals: readonly Carrier[],
  founderFreq: ReadonlyMap<string, Fraction>,
): Result<CarrierChances> {
  const order = pedigreeOrder(animals);
  if (!order.ok) return order;
  const keys = genotypeKeys(alleles);
  const setting: Setting = {
    alleles,
    domains: animals.map((one) => keys.filter((key) => one.seen === null || one.seen.has(key))),
  };
  const factors = animals.flatMap((_, at) => factorsOf(setting, animals, at, founderFreq));
  return solve(setting, animals, factors);
}

/** Every genotype key of some alleles, in allele order. */
export function genotypeKeys(alleles: readonly string[]): readonly string[] {
  return alleles.flatMap((a, at) => alleles.slice(at).map((b) => `${a}/${b}`));
}

function factorsOf(
  setting: Setting,
  animals: readonly Carrier[],
  at: number,
  freq: ReadonlyMap<string, Fraction>,
): readonly Factor[] {
  const one = animals[at];
  if (one === undefined) return [];
  const index = (id: string | null): number => animals.findIndex((other) => other.id === id);
  const parents = [one.sire, one.dam].filter((parent) => parent !== null).map(index);
  const own = one.prior === null ? [] : [tableOf(setting, [at], ([key = '']) => one.prior?.get(key) ?? ZERO)];
  if (parents.length === 0)
    return own.length > 0 ? own : [tableOf(setting, [at], ([key = '']) => fromTwo(freq, freq, key))];
  const gametes = (key: string): ReadonlyMap<string, Fraction> => gametesOfKey(key);
  const same = parents.length === 2 && parents[0] === parents[1];
  const scope = same ? [at, parents[0] ?? 0] : [at, ...parents];
  const passed = tableOf(setting, scope, ([key = '', first = '', second = '']) => {
    const other = same ? gametes(first) : parents.length === 2 ? gametes(second) : freq;
    return fromTwo(gametes(first), other, key);
  });
  return [...own, passed];
}

function gametesOfKey(key: string): ReadonlyMap<string, Fraction> {
  const [a = '', b = ''] = key.split('/');
  return a === b
    ? new Map([[a, { top: 1n, bottom: 1n }]])
    : new Map([
        [a, HALF],
        [b, HALF],
      ]);
}

function fromTwo(one: ReadonlyMap<string, Fraction>, other: ReadonlyMap<string, Fraction>, key: string): Fraction {
  const [a = '', b = ''] = key.split('/');
  const straight = multiply(one.get(a) ?? ZERO, other.get(b) ?? ZERO);
  return a === b ? straight : add(straight, multiply(one.get(b) ?? ZERO, other.get(a) ?? ZERO));
}

function tableOf(setting: Setting, scope: readonly number[], value: (keys: readonly string[]) => Fraction): Factor {
  const cells: Fraction[] = [];
  eachRow(setting, scope, (row) =>
    cells.push(value(row.map((state, place) => setting.domains[scope[place] ?? 0]?.[state] ?? ''))),
  );
  const total = commonBottom(cells);
  return { scope, total, cells: cells.map((cell) => (cell.top * total) / cell.bottom) };
}

function eachRow(setting: Setting, scope: readonly number[], visit: (row: readonly number[]) => void): void {
  const sizes = scope.map((at) => setting.domains[at]?.length ?? 0);
  const row = scope.map(() => 0);
  if (sizes.some((size) => size === 0)) return;
  for (;;) {
    visit(row);
    let place = row.length - 1;
    while (place >= 0 && (row[place] ?? 0) + 1 >= (sizes[place] ?? 0)) row[place--] = 0;
    if (place < 0) return;
    row[place] = (row[place] ?? 0) + 1;
  }
}

interface Bucket {
  readonly variable: number;
  readonly scope: readonly number[];
  readonly own: Factor[];
  readonly messages: { readonly from: number; readonly factor: Factor }[];
  parent: number;
}

function solve(setting: Setting, animals: readonly Carrier[], factors: readonly Factor[]): Result<CarrierChances> {
  const buckets = bucketsOf(setting, animals.length, factors);
  if (!buckets.ok) return buckets;
  let evidence: Fraction = { top: 1n, bottom: 1n };
  const up: (Factor | undefined)[] = [];
  for (const [at, bucket] of buckets.value.entries()) {
    const message = summed(
      setting,
      bucket.scope,
      [...bucket.own, ...bucket.messages.map((one) => one.factor)],
      bucket.scope.slice(1),
    );
    up[at] = message;
    const parent = buckets.value[bucket.parent];
    if (parent === undefined) evidence = multiply(evidence, fraction(message.cells[0] ?? 0n, message.total));
    else parent.messages.push({ from: at, factor: message });
  }
  const post =
    evidence.top === 0n ? new Map<string, ReadonlyMap<string, Fraction>>() : marginals(setting, animals, buckets.value);
  return ok({ evidence, post });
}

/** The pass back: what the rest of the pedigree says to each bucket, and from it the chances of its animal. */
function marginals(
  setting: Setting,
  animals: readonly Carrier[],
  buckets: readonly Bucket[],
): ReadonlyMap<string, ReadonlyMap<string, Fraction>> {
  const down = new Map<number, Factor>();
  const found = new Map<string, ReadonlyMap<string, Fraction>>();
  for (let at = buckets.length - 1; at >= 0; at--) {
    const bucket = buckets[at];
    if (bucket === undefined) continue;
    const parent = buckets[bucket.parent];
    if (parent !== undefined) {
      const others = parent.messages.filter((one) => one.from !== at).map((one) => one.factor);
      const above = down.get(bucket.parent);
      down.set(
        at,
        summed(setting, parent.scope, [...parent.own, ...others, ...(above ? [above] : [])], bucket.scope.slice(1)),
      );
    }
    const above = down.get(at);
    const all = [...bucket.own, ...bucket.messages.map((one) => one.factor), ...(above ? [above] : [])];
    found.set(
      animals[bucket.variable]?.id ?? '',
      chancesIn(setting, bucket.variable, summed(setting, bucket.scope, all, [bucket.variable])),
    );
  }
  return new Map(animals.map((one) => [one.id, found.get(one.id) ?? new Map()]));
}

function chancesIn(setting: Setting, variable: number, factor: Factor): ReadonlyMap<string, Fraction> {
  const total = factor.cells.reduce((sum, cell) => sum + cell, 0n);
  const weights = new Map<string, bigint>();
  for (const [state, cell] of factor.cells.entries())
    addWeight(weights, setting.domains[variable]?.[state] ?? '', cell);
  return new Map([...weights].map(([key, weight]) => [key, fraction(weight, total)] as const));
}

/** The product of factors over a scope, summed down to `kept`, reduced by the common divisor to keep the numbers short. */
function summed(
  setting: Setting,
  scope: readonly number[],
  factors: readonly Factor[],
  kept: readonly number[],
): Factor {
  const steps = factors.map((factor) => stepsOf(setting, factor.scope, scope));
  const keptSteps = stepsOf(setting, kept, scope);
  const size = kept.reduce((product, at) => product * (setting.domains[at]?.length ?? 0), 1);
  const cells = new Array<bigint>(size).fill(0n);
  eachRow(setting, scope, (row) => {
    let weight = 1n;
    for (let one = 0; one < factors.length && weight !== 0n; one++)
      weight *= factors[one]?.cells[placeIn(row, steps[one] ?? [])] ?? 0n;
    if (weight !== 0n) {
      const place = placeIn(row, keptSteps);
      cells[place] = (cells[place] ?? 0n) + weight;
    }
  });
  const total = factors.reduce((product, factor) => product * factor.total, 1n);
  const common = cells.reduce(gcd, total);
  return { scope: kept, total: total / common, cells: common === 1n ? cells : cells.map((cell) => cell / common) };
}

/** For each animal of `scope` how far its state moves the place in a table over `of`. */
function stepsOf(setting: Setting, of: readonly number[], scope: readonly number[]): readonly number[] {
  let step = 1;
  const steps = new Map<number, number>();
  for (const at of [...of].reverse()) {
    steps.set(at, step);
    step *= setting.domains[at]?.length ?? 0;
  }
  return scope.map((at) => steps.get(at) ?? 0);
}

function placeIn(row: readonly number[], steps: readonly number[]): number {
  let place = 0;
  for (let at = 0; at < row.length; at++) place += (row[at] ?? 0) * (steps[at] ?? 0);
  return place;
}

function bucketsOf(setting: Setting, count: number, factors: readonly Factor[]): Result<readonly Bucket[]> {
  const neighbours = Array.from({ length: count }, () => new Set<number>());
  for (const { scope } of factors) for (const a of scope) for (const b of scope) if (a !== b) neighbours[a]?.add(b);
  const left = new Set(Array.from({ length: count }, (_, at) => at));
  const buckets: Bucket[] = [];
  const placeOf = new Map<number, number>();
  while (left.size > 0) {
    const variable = cheapest(setting, left, neighbours);
    const near = [...(neighbours[variable] ?? [])];
    const scope = [variable, ...near];
    const cells = scope.reduce((product, at) => product * (setting.domains[at]?.length ?? 0), 1);
    if (cells > MOST_CELLS) return refuse('pedigree-tangled', { cells });
    for (const a of near) {
      neighbours[a]?.delete(variable);
      for (const b of near) if (a !== b) neighbours[a]?.add(b);
    }
    left.delete(variable);
    placeOf.set(variable, buckets.length);
    buckets.push({ variable, scope, own: [], messages: [], parent: -1 });
  }
  for (const bucket of buckets)
    bucket.parent = Math.min(...bucket.scope.slice(1).map((at) => placeOf.get(at) ?? count), count);
  for (const factor of factors) buckets[Math.min(...factor.scope.map((at) => placeOf.get(at) ?? 0))]?.own.push(factor);
  return ok(buckets);
}

/** The animal whose removal ties together the fewest others that were apart; of equals the one with the smallest table. */
function cheapest(setting: Setting, left: ReadonlySet<number>, neighbours: readonly ReadonlySet<number>[]): number {
  let [best, bestFill, bestCells] = [-1, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const at of left) {
    const near = [...(neighbours[at] ?? [])];
    const cells = near.reduce((product, one) => product * (setting.domains[one]?.length ?? 0), 1);
    let fill = 0;
    for (let a = 0; a < near.length && fill <= bestFill; a++)
      for (let b = a + 1; b < near.length; b++) if (!neighbours[near[a] ?? 0]?.has(near[b] ?? 0)) fill++;
    if (fill < bestFill || (fill === bestFill && cells < bestCells)) [best, bestFill, bestCells] = [at, fill, cells];
  }
  return best;
}
