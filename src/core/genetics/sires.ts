import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { crossOf } from './cross.ts';
import { type Evidence, evidenceOf, likelihoods, type Observed, type StateChance } from './evidence.ts';
import { add, compare, divide, type Fraction, isZero, multiply, ONE, sayFraction, ZERO } from './fraction.ts';
import { hatchlingsFault } from './hatchlings.ts';
import type { Cross } from './model.ts';
import type { CrossSetting, Parent } from './parents.ts';
import { possibleStates } from './strandPairs.ts';
import { fewestTogether } from './together.ts';

/** A male that may have sired a clutch, and how likely that was before the hatchlings were seen. */
export interface PossibleSire {
  readonly id: string;
  readonly parent: Parent;
  /** A weight against the others' (they need not add up to 1); left out for all of them, all are as likely. */
  readonly prior?: Fraction;
}

/** The cross of the dam with one possible sire; `prior` is his share of all of them. */
export interface SireCross {
  readonly id: string;
  readonly prior: Fraction;
  readonly cross: Cross;
  /** As in {@link PlannedCross}. */
  readonly assumed: readonly string[];
}

/** More males than this are no list of those that were with her. */
export const MOST_SIRES = 12;

/**
 * The crosses of a dam with each possible sire over the same loci and alleles, so that one row of looks fits all of them.
 * Whom to list is the caller's to say: females store sperm, so last season's male stays a candidate. Errors:
 * `sires-none`, `sires-many`, `sire-twice`, `sires-prior`, and those of {@link crossOf} with the place of the sire.
 */
export function crossesOf(
  sires: readonly PossibleSire[],
  dam: Parent,
  setting: CrossSetting,
): Result<readonly SireCross[]> {
  const refused = listFault(sires);
  if (refused !== null) return { ok: false, problem: refused };
  const total = sires.reduce((sum, one) => add(sum, one.prior ?? ONE), ZERO);
  const beside = [...sires.map((one) => one.parent.traits), ...(setting.beside ?? [])];
  const crosses: SireCross[] = [];
  for (const [at, { id, parent, prior }] of sires.entries()) {
    const planned = crossOf(parent, dam, { ...setting, beside });
    if (!planned.ok) return { ok: false, problem: placed(planned.problem, at) };
    crosses.push({ id, prior: divide(prior ?? ONE, total), ...planned.value });
  }
  return ok(crosses);
}

function listFault(sires: readonly PossibleSire[]): Problem | null {
  if (sires.length === 0) return problem('sires-none', {}, 'sires');
  if (sires.length > MOST_SIRES) return problem('sires-many', { count: sires.length, most: MOST_SIRES }, 'sires');
  const twice = sires.findIndex((one, at) => sires.findIndex((other) => other.id === one.id) < at);
  if (twice >= 0) return problem('sire-twice', { id: sires[twice]?.id ?? '' }, `sires.${twice}`);
  const isMixed = sires.some((one) => one.prior === undefined) && sires.some((one) => one.prior !== undefined);
  if (isMixed) return problem('sires-prior', { why: 'some have one and some have none' }, 'sires');
  const negative = sires.findIndex(({ prior }) => prior !== undefined && (prior.top < 0n || prior.bottom <= 0n));
  if (negative >= 0)
    return problem(
      'sires-prior',
      { why: `${sayFraction(sires[negative]?.prior ?? ZERO)} is none` },
      `sires.${negative}`,
    );
  return sires.every(({ prior }) => prior !== undefined && isZero(prior))
    ? problem('sires-prior', { why: 'all are 0' }, 'sires')
    : null;
}

function placed(found: Problem, at: number): Problem {
  const path = found.path ?? (found.code === 'pairing-species' ? 'sire' : '');
  return path.startsWith('sire') ? { ...found, path: path.replace('sire', `sires.${at}`) } : found;
}

/** What hatchlings say of one possible sire. */
export interface SireEvidence {
  readonly id: string;
  readonly prior: Fraction;
  /** The chance that he sired all of them, one sire taken for granted; null where none of the sires can have. */
  readonly p: Fraction | null;
  /** What they say of his states and the dam's, if it was he. */
  readonly evidence: Evidence;
}

/** What hatchlings say of all possible sires. */
export interface SiresEvidence {
  /** The probability of what was seen if one of them sired all, his prior weighed in. */
  readonly evidence: Fraction;
  readonly sires: readonly SireEvidence[];
  /** The dam's states, mixed over the sires; as before the hatchlings where no single sire explains them. */
  readonly dam: readonly StateChance[];
  /** For each row of hatchlings the ids of the sires who can give one like it. */
  readonly rows: readonly (readonly string[])[];
  /**
   * `one`: at least one sire can have given all of them, which does not prove that one did. `more than one`: no single
   * sire can, but some can together (several fathers of one clutch are known in snakes: memory, no source seen).
   * `none of these`: not even all of them together.
   */
  readonly paternity: 'one' | 'more than one' | 'none of these';
  /** For `more than one`, each smallest set of sires that explains them together; else empty. */
  readonly together: readonly (readonly string[])[];
}

/**
 * Which of several possible sires the hatchlings of one clutch speak for: prior times evidence, one sire a clutch. The
 * candidates are those of {@link crossesOf}; a prior of 0 leaves a sire out. Errors: `hatchlings-malformed`, `parents-too-open`.
 */
export function siresEvidence(candidates: readonly SireCross[], observed: readonly Observed[]): Result<SiresEvidence> {
  if (candidates.length === 0) return refuse('sires-none', {}, 'sires');
  if (candidates.length > MOST_SIRES)
    return refuse('sires-many', { count: candidates.length, most: MOST_SIRES }, 'sires');
  const refused = hatchlingsFault(
    candidates.map((one) => one.cross),
    observed,
  );
  if (refused !== null) return { ok: false, problem: refused };
  const weighed = candidates.map((one) => {
    const evidence = evidenceOf(one.cross, observed);
    return { id: one.id, prior: one.prior, evidence, share: multiply(one.prior, evidence.evidence) };
  });
  const total = weighed.reduce((sum, one) => add(sum, one.share), ZERO);
  const isOne = !isZero(total);
  const sires = weighed.map(({ share, ...one }) => ({ ...one, p: isOne ? divide(share, total) : null }));
  const possible = candidates.filter((one) => compare(one.prior, ZERO) > 0);
  const together = isOne ? [] : fewestTogether(possible, observed);
  return ok({
    evidence: total,
    sires,
    dam: mixedDam(sires),
    rows: observed.map((row) => possible.filter(({ cross }) => canGive(cross, row)).map((one) => one.id)),
    paternity: isOne ? 'one' : together.length > 0 ? 'more than one' : 'none of these',
    together,
  });
}

/** All crosses have the dam's states in the same order, because they have the same loci. */
function mixedDam(sires: readonly SireEvidence[]): readonly StateChance[] {
  const states = sires[0]?.evidence.dam ?? [];
  return states.map((state, at) => {
    const shares = sires.map(({ p, evidence }) => (p === null ? ZERO : multiply(p, evidence.dam[at]?.p ?? ZERO)));
    return sires.some(({ p }) => p !== null) ? { ...state, p: shares.reduce(add, ZERO) } : state;
  });
}

function canGive(cross: Cross, row: Observed): boolean {
  const chance = likelihoods(cross, [{ ...row, count: 1 }]);
  const [sires, dams] = [possibleStates(cross, 'sire'), possibleStates(cross, 'dam')];
  return sires.some((sire) => dams.some((dam) => !isZero(chance(sire, dam))));
}
