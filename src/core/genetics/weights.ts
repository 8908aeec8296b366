import { commonBottom, type Fraction, fraction } from './fraction.ts';

/** A distribution as whole weights over one total: sums and products need no reduction until the end. */
export interface Weights<K> {
  readonly total: bigint;
  readonly of: ReadonlyMap<K, bigint>;
}

/** Weights from pairs of key and probability; the same key twice is added up, 0 is left out. */
export function weightsOf<K>(pairs: readonly (readonly [K, Fraction])[]): Weights<K> {
  const total = commonBottom(pairs.map(([, p]) => p));
  const of = new Map<K, bigint>();
  for (const [key, p] of pairs) addWeight(of, key, (p.top * total) / p.bottom);
  return { total, of };
}

/** Adds a weight under a key; 0 adds nothing. */
export function addWeight<K>(of: Map<K, bigint>, key: K, weight: bigint): void {
  if (weight !== 0n) of.set(key, (of.get(key) ?? 0n) + weight);
}

/** All pairs of two independent things under a joined key. */
export function joined<A, B, K>(a: Weights<A>, b: Weights<B>, key: (a: A, b: B) => K): Weights<K> {
  const of = new Map<K, bigint>();
  for (const [one, weight] of a.of) for (const [other, more] of b.of) addWeight(of, key(one, other), weight * more);
  return { total: a.total * b.total, of };
}

/** The probability of a weight. */
export function shareOf(weight: bigint, total: bigint): Fraction {
  return fraction(weight, total);
}
