import { ok, type Result, refuse } from '../problems.ts';
import {
  commonBottom,
  compare,
  type Fraction,
  fraction,
  gcd,
  isZero,
  multiply,
  ONE,
  sayFraction,
  ZERO,
} from './fraction.ts';

/** A test of a season: the exact p of a clutch, as `pValue` of {@link ClutchTest}. */
export interface SeasonTest {
  readonly id: string;
  readonly p: Fraction;
}

/**
 * How false flags are held down. `independent`: Benjamini & Hochberg 1995, J R Stat Soc B 57:289, also sound for tests
 * that rise and fall together. `any`: Benjamini & Yekutieli 2001, Ann Stat 29:1165, whatever hangs together, such as
 * clutches of one animal; it flags less. (Both cited from memory.)
 */
export type Dependence = 'independent' | 'any';

/** What is made of one test. */
export interface SeasonFlag extends SeasonTest {
  /** The least rate at which this test would be flagged; null where the clutch is impossible. */
  readonly adjusted: Fraction | null;
  readonly isFlagged: boolean;
  /** A look of chance 0 was seen: no matter of statistics, so it is flagged at every rate and counted with no others. */
  readonly isImpossible: boolean;
}

/** The flags of a season, in the order given. */
export interface SeasonFlags {
  /** How many tests the rate was shared among. */
  readonly tests: number;
  readonly flags: readonly SeasonFlag[];
}

/** More tests than this are no season. */
export const MOST_TESTS = 10_000;

/**
 * Which clutches of a season to look into, so that of those flagged by their p at most the share `rate` is expected to
 * be by chance. Step-up with exact adjusted p; an exact p is above 0 for all that can be, so p = 0 means a look of
 * chance 0. Errors: `flag-rate`, `flag-p`, `flags-many`.
 */
export function seasonFlags(
  tests: readonly SeasonTest[],
  rate: Fraction,
  dependence: Dependence = 'independent',
): Result<SeasonFlags> {
  if (!isChance(rate) || isZero(rate) || compare(rate, ONE) === 0)
    return refuse('flag-rate', { rate: sayFraction(rate) }, 'rate');
  const wrong = tests.findIndex((one) => !isChance(one.p));
  const { id = '', p = ZERO } = tests[wrong] ?? {};
  if (wrong >= 0) return refuse('flag-p', { id, p: sayFraction(p) }, `tests.${wrong}.p`);
  if (tests.length > MOST_TESTS) return refuse('flags-many', { count: tests.length, most: MOST_TESTS }, 'tests');
  const judged = tests.filter((one) => !isZero(one.p));
  const adjusted = adjustedPs(
    judged.map((one) => one.p),
    dependence,
  );
  let next = 0;
  const flags = tests.map((one): SeasonFlag => {
    if (isZero(one.p)) return { ...one, adjusted: null, isFlagged: true, isImpossible: true };
    const own = adjusted[next++] ?? ONE;
    return { ...one, adjusted: own, isFlagged: compare(own, rate) <= 0, isImpossible: false };
  });
  return ok({ tests: judged.length, flags });
}

/** p x m / rank, the least of it and of all later ranks, at most 1; times 1 + 1/2 + … + 1/m for `any`. */
function adjustedPs(ps: readonly Fraction[], dependence: Dependence): readonly Fraction[] {
  const ranked = ps.map((p, at) => ({ p, at })).sort((a, b) => compare(a.p, b.p));
  const factor = dependence === 'any' ? harmonic(ps.length) : ONE;
  const found: Fraction[] = ps.map(() => ONE);
  let least: Fraction | null = null;
  for (let rank = ranked.length; rank >= 1; rank--) {
    const one = ranked[rank - 1];
    if (one === undefined) continue;
    const raw = multiply(one.p, fraction(BigInt(ps.length), BigInt(rank)));
    if (least === null || compare(raw, least) < 0) least = raw;
    found[one.at] = atMostOne(multiplyReduced(least, factor));
  }
  return found;
}

/** 1 + 1/2 + … + 1/m over one bottom, so that there is one long gcd and not m of them. */
function harmonic(m: number): Fraction {
  const parts = Array.from({ length: m }, (_, at) => ({ top: 1n, bottom: BigInt(at + 1) }));
  const bottom = commonBottom(parts);
  return fraction(
    parts.reduce((sum, one) => sum + bottom / one.bottom, 0n),
    bottom,
  );
}

/** Reduced crosswise first: 1 + 1/2 + … + 1/m has thousands of digits, and a gcd of short with long is quick. */
function multiplyReduced(a: Fraction, b: Fraction): Fraction {
  const [one, other] = [gcd(a.top, b.bottom), gcd(b.top, a.bottom)];
  return { top: (a.top / one) * (b.top / other), bottom: (a.bottom / other) * (b.bottom / one) };
}

function atMostOne(a: Fraction): Fraction {
  return compare(a, ONE) > 0 ? ONE : a;
}

function isChance(a: Fraction): boolean {
  return a.bottom > 0n && compare(a, ZERO) >= 0 && compare(a, ONE) <= 0;
}
