import { likelihoods, type Observed } from './evidence.ts';
import { isZero } from './fraction.ts';
import type { Cross } from './model.ts';
import { possibleStates } from './strandPairs.ts';

/** A sire with his cross. */
interface Candidate {
  readonly id: string;
  readonly cross: Cross;
}

/** Rows that one sire can have given in one of his states, as bits. */
type Rows = bigint;

/**
 * Each smallest set of sires that can have given all hatchlings together, in the order given; none if not even all of
 * them can. One state of the dam must hold for all rows and one state of each sire for all of his: a father who is het
 * for one young is het for the next.
 */
export function fewestTogether(
  candidates: readonly Candidate[],
  observed: readonly Observed[],
): readonly (readonly string[])[] {
  const rows = observed.filter((row) => row.count > 0);
  const all = (1n << BigInt(rows.length)) - 1n;
  const cases = coverCases(candidates, rows).filter((one) => one.flat().reduce((sum, own) => sum | own, 0n) === all);
  for (let size = 1; size <= candidates.length; size++) {
    const found = new Set(cases.flatMap((one) => covers(one, all, size)));
    if (found.size > 0) return [...found].map((key) => key.split(' ').map((at) => candidates[Number(at)]?.id ?? ''));
  }
  return [];
}

/** For each state of the dam, what each sire can give with her. */
function coverCases(
  candidates: readonly Candidate[],
  rows: readonly Observed[],
): readonly (readonly (readonly Rows[])[])[] {
  const sides = candidates.map(({ cross }) => ({
    sires: possibleStates(cross, 'sire'),
    chances: rows.map((row) => likelihoods(cross, [{ ...row, count: 1 }])),
  }));
  const dams = candidates[0] === undefined ? [] : possibleStates(candidates[0].cross, 'dam');
  return dams.map((dam) =>
    sides.map(({ sires, chances }) =>
      largest(
        sires.map((sire) => {
          const bits = chances.map((chance, at) => (isZero(chance(sire, dam)) ? 0n : 1n << BigInt(at)));
          return bits.reduce((sum, bit) => sum | bit, 0n);
        }),
      ),
    ),
  );
}

/** States that can give no more than another state are never needed. */
function largest(all: readonly Rows[]): readonly Rows[] {
  const distinct = [...new Set(all)];
  return distinct.filter((one) => one !== 0n && !distinct.some((other) => other !== one && (one & other) === one));
}

/** The sets of at most so many sires that give every row, as their places; the first row that is left must be somebody's. */
function covers(given: readonly (readonly Rows[])[], all: Rows, size: number): readonly string[] {
  const found: string[] = [];
  const walk = (left: Rows, taken: readonly number[]): void => {
    if (left === 0n) found.push([...taken].sort((a, b) => a - b).join(' '));
    if (left === 0n || taken.length === size) return;
    const next = left & -left;
    given.forEach((own, sire) => {
      if (taken.includes(sire)) return;
      for (const rows of own) if ((rows & next) !== 0n) walk(left & ~rows, [...taken, sire]);
    });
  };
  walk(all, []);
  return found;
}
