import * as z from 'zod/mini';
import { ok, type Result, type SeasonPlanCase } from '../../core/index.ts';
import { type PlanAnswer, solvePlan } from '../../solver/index.ts';
import { type Kind, readCase } from './kind.ts';

const HELP = `season-plan: which male goes to which female
  {"females","males","capPerMale","maxMales","maleCost","meanKinshipLimit": k|null,"goalMinExpected": [eggs]|null,
  "pairs": [[female, male, kinship, value, [expected eggs of each goal]|null]],"timeLimitSeconds"?}
    -> {"status": "optimal"|"infeasible"|"stopped","value","pairs": [[female, male]],"unreachableGoals"}`;

const figure = z.number('a number is wanted');
const seasonCase = z.object({
  females: figure,
  males: figure,
  capPerMale: figure,
  maxMales: figure,
  maleCost: figure,
  meanKinshipLimit: z.nullish(figure),
  goalMinExpected: z.nullish(z.array(figure)),
  pairs: z.array(
    z.tuple(
      [figure, figure, figure, figure, z.nullish(z.array(figure))],
      '[female, male, kinship, value, [eggs]|null] is wanted',
    ),
  ),
  timeLimitSeconds: z.nullish(figure.check(z.gte(0, 'a number from 0 is wanted'))),
});

/** Which male goes to which female, proven. */
export const seasonPlanKind: Kind = {
  name: 'season-plan',
  help: HELP,
  async answer(given) {
    const asked = readCase(seasonCase, given);
    if (!asked.ok) return asked;
    const { timeLimitSeconds, ...data } = asked.value;
    const solved = await solvePlan(caseOf(data), timeLimitSeconds == null ? {} : { timeLimitSeconds });
    return solved.ok ? said(solved.value) : solved;
  },
};

function caseOf(data: Omit<z.infer<typeof seasonCase>, 'timeLimitSeconds'>): SeasonPlanCase {
  return {
    ...data,
    meanKinshipLimit: data.meanKinshipLimit ?? null,
    goalMinExpected: data.goalMinExpected ?? null,
    pairs: data.pairs.map(([female, male, kinship, value, goals]) => [female, male, kinship, value, goals ?? null]),
  };
}

/** Only a search that was stopped has a gap to tell of. */
function said({ status, plan, gap, unreachableGoals }: PlanAnswer): Result<unknown> {
  const answer = { status, value: plan?.value ?? null, pairs: plan?.pairs ?? [], unreachableGoals };
  return ok(status === 'stopped' ? { ...answer, gap } : answer);
}
