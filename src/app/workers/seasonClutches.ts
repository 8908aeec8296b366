import { type ClutchFindings, type Facility, findingsOf, type Id } from '../../core/index.ts';
import type { GeneticProgress, JudgedClutch, SeasonClutchesAsk } from './geneticsMessages.ts';

/** What the young of each clutch say of their parents; a clutch that cannot be judged says why. */
export function seasonClutches(
  { facility, clutches }: SeasonClutchesAsk,
  tell: (progress: GeneticProgress) => void,
): readonly JudgedClutch[] {
  return clutches.map((id, done) => {
    tell({ done, of: clutches.length });
    return judged(facility, id);
  });
}

function judged(facility: Facility, id: Id): JudgedClutch {
  const nothing = { id, p: null, noSire: null, withoutFather: [] };
  const clutch = facility.clutches.get(id);
  if (clutch === undefined) return { ...nothing, why: 'it is not here any more' };
  const found = findingsOf(facility, clutch);
  if (!found.ok) return { ...nothing, why: found.problem.message };
  const { paternity, test, parthenogenesis } = found.value;
  return {
    id,
    p: test?.pValue ?? null,
    why: test === null ? whyUntested(found.value) : null,
    noSire: paternity === null || paternity.paternity === 'one' ? null : paternity.paternity,
    withoutFather: parthenogenesis === null ? [] : [...parthenogenesis.reasons, parthenogenesis.says],
  };
}

function whyUntested({ observed, sires }: ClutchFindings): string {
  if (sires.length === 0) return 'no male is known';
  if (observed.length === 0) return 'no young with traits written';
  return sires.length > 1 ? 'the sire is not said' : 'a parent’s traits are in doubt, so there is no one expectation';
}
