import { type Problem, problem } from '../problems.ts';
import type { Observed } from './evidence.ts';
import { type Cross, locusOrder } from './model.ts';
import { MOST_STATE_PAIRS, pairsOfStates } from './strandPairs.ts';

/** More hatchlings of one look than this are a slip of the pen. */
const MOST_OF_ONE_LOOK = 10_000;

/** What speaks against weighing these hatchlings with these crosses: a row that cannot be read, or too many states. */
export function hatchlingsFault(crosses: readonly Cross[], observed: readonly Observed[]): Problem | null {
  for (const cross of crosses) {
    const loci = locusOrder(cross);
    const row = observed.findIndex((one) => one.labels.length !== loci.length || !isCount(one.count));
    if (row < 0) continue;
    const why = isCount(observed[row]?.count ?? 0)
      ? `it has ${observed[row]?.labels.length} looks`
      : `${observed[row]?.count} is no number of hatchlings`;
    const wanted = loci.length === 0 ? 'no look' : `a look for each of ${loci.join(', ')}`;
    return problem('hatchlings-malformed', { row: row + 1, why, wanted }, `observed.${row}`);
  }
  const pairs = crosses.reduce((sum, cross) => sum + pairsOfStates(cross), 0);
  return pairs > MOST_STATE_PAIRS ? problem('parents-too-open', { pairs, most: MOST_STATE_PAIRS }) : null;
}

function isCount(count: number): boolean {
  return Number.isInteger(count) && count >= 0 && count <= MOST_OF_ONE_LOOK;
}
