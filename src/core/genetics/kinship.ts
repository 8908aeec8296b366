import { ok, type Result, refuse } from '../problems.ts';
import { add, type Fraction, HALF, multiply, ONE, ZERO } from './fraction.ts';

/** An animal and its parents; null is unknown, unrelated to all and not inbred. */
export interface Parentage {
  readonly id: string;
  readonly sire: string | null;
  readonly dam: string | null;
}

/** What is known of founders; everything else is 0. */
export interface FounderFacts {
  readonly inbreeding: ReadonlyMap<string, Fraction>;
  readonly kinship: readonly (readonly [string, string, Fraction])[];
}

/** Kinship of any two animals of a pedigree, exact and remembered. */
export interface Kinship {
  of(a: string, b: string): Fraction;
  inbreeding(id: string): Fraction;
}

/** Parents before young. Errors: `pedigree-cycle` and `parent-unknown`, each naming the animal. */
export function pedigreeOrder(animals: readonly Parentage[]): Result<readonly Parentage[]> {
  const byId = new Map(animals.map((one) => [one.id, one]));
  if (byId.size < animals.length) return refuse('pedigree-twice', { id: twice(animals) }, 'animals');
  for (const one of animals) {
    const stranger = [one.sire, one.dam].find((parent) => parent !== null && !byId.has(parent));
    if (stranger !== undefined && stranger !== null)
      return refuse('parent-unknown', { id: one.id, parent: stranger }, 'animals');
  }
  const state = new Map<string, 'open' | 'done'>();
  const ordered: Parentage[] = [];
  for (const start of animals) {
    const stack: Parentage[] = [start];
    while (stack.length > 0) {
      const one = stack.at(-1);
      if (one === undefined || state.get(one.id) === 'done') {
        stack.pop();
        continue;
      }
      const parents = [one.sire, one.dam].flatMap((id) => (id === null ? [] : (byId.get(id) ?? [])));
      const waiting = parents.filter((parent) => state.get(parent.id) !== 'done');
      if (state.get(one.id) === 'open' && waiting.some((parent) => state.get(parent.id) === 'open')) {
        return refuse(
          'pedigree-cycle',
          { id: waiting.find((parent) => state.get(parent.id) === 'open')?.id ?? one.id },
          'animals',
        );
      }
      state.set(one.id, 'open');
      if (waiting.length > 0) stack.push(...waiting);
      else {
        state.set(one.id, 'done');
        ordered.push(one);
        stack.pop();
      }
    }
  }
  return ok(ordered);
}

/**
 * Exact kinship by the path-free rule: f(a, b) = (f(sire of the younger, other) + f(dam of the younger, other)) / 2 and
 * f(a, a) = (1 + F) / 2 (Wright 1922; the rules as in Mrode's textbook, chapter 2).
 */
export function exactKinship(ordered: readonly Parentage[], facts: FounderFacts): Kinship {
  const place = new Map(ordered.map((one, at) => [one.id, at]));
  const table = ordered.map((): (Fraction | undefined)[] => []);
  const founders = new Map(
    facts.kinship.flatMap(([a, b, k]) => [[`${a}\u0000${b}`, k] as const, [`${b}\u0000${a}`, k] as const]),
  );

  function at(one: number, other: number): Fraction {
    const [young, old] = one >= other ? [one, other] : [other, one];
    const row = table[young];
    const kept = row?.[old];
    if (kept !== undefined || row === undefined) return kept ?? ZERO;
    const value = young === old ? self(young) : pair(young, old);
    row[old] = value;
    return value;
  }

  function self(young: number): Fraction {
    return multiply(HALF, add(ONE, inbreedingAt(young)));
  }

  function inbreedingAt(young: number): Fraction {
    const one = ordered[young];
    if (one === undefined) return ZERO;
    if (one.sire === null && one.dam === null) return facts.inbreeding.get(one.id) ?? ZERO;
    return one.sire === null || one.dam === null ? ZERO : at(place.get(one.sire) ?? 0, place.get(one.dam) ?? 0);
  }

  function pair(young: number, old: number): Fraction {
    const one = ordered[young];
    if (one === undefined) return ZERO;
    if (one.sire === null && one.dam === null) return founders.get(`${one.id}\u0000${ordered[old]?.id}`) ?? ZERO;
    const parents = [one.sire, one.dam].filter((parent) => parent !== null);
    return multiply(HALF, parents.map((parent) => at(place.get(parent) ?? 0, old)).reduce(add, ZERO));
  }

  // Filled from the oldest on, so that the recursion never goes deeper than one generation.
  ordered.forEach((_, young) => {
    for (let old = 0; old <= young; old++) at(young, old);
  });
  return {
    of: (a, b) => at(place.get(a) ?? 0, place.get(b) ?? 0),
    inbreeding: (id) => inbreedingAt(place.get(id) ?? 0),
  };
}

function twice(animals: readonly Parentage[]): string {
  const seen = new Set<string>();
  return animals.find((one) => seen.has(one.id) || !seen.add(one.id))?.id ?? '';
}
