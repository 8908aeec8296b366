import { useEffect, useRef, useState } from 'preact/hooks';
import type { Facility, PairingWarning, Problem, Result, SeasonPlanCase } from '../../core/index.ts';
import type { PlanAnswer, PlanProgress } from '../../solver/index.ts';
import { type GeneticProgress, startGenetics } from '../genetics/index.ts';
import type { PlanPairsAnswer } from '../workers/geneticsMessages.ts';
import type { Herd } from './herd.ts';
import { type Loosening, loosenings } from './loosening.ts';
import { type PairsWanted, type PlanSetting, pairsWanted, planCaseOf } from './planCase.ts';
import { startPlan } from './planning.ts';

/** What a plan was asked with; its result stays readable while the form changes. */
export interface PlanAsked {
  readonly herd: Herd;
  readonly setting: PlanSetting;
  readonly basis: string;
}

/** A plan that was worked out, or why there is none. */
export interface PlanMade {
  readonly asked: PlanAsked;
  readonly wanted: PairsWanted;
  readonly chances: PlanPairsAnswer;
  readonly made: SeasonPlanCase;
  readonly answer: PlanAnswer;
  /** What is to be warned of, by pair of the plan. */
  readonly warnings: readonly (readonly PairingWarning[])[];
  /** Where no plan is possible: the limits of which a single one stands in the way. */
  readonly loosenings: readonly Loosening[];
}

export type PlanState =
  | { readonly at: 'form' }
  | { readonly at: 'pairs'; readonly progress: GeneticProgress | null }
  | { readonly at: 'search'; readonly progress: PlanProgress | null }
  | { readonly at: 'why' }
  | { readonly at: 'done'; readonly plan: PlanMade }
  | { readonly at: 'failed'; readonly problem: Problem };

export interface Planning {
  readonly state: PlanState;
  begin(facility: Facility, asked: PlanAsked): void;
  cancel(): void;
}

/** Works a season's plan out in workers: chances and kinship of all pairs, then the search. Cancelled, nothing comes of it. */
export function usePlan(): Planning {
  const [state, setState] = useState<PlanState>({ at: 'form' });
  const running = useRef<{ stop(): void } | null>(null);
  const stop = (): void => {
    running.current?.stop();
    running.current = null;
  };
  useEffect(() => stop, []);
  return {
    state,
    begin(facility, asked) {
      stop();
      const run = startRun(setState);
      running.current = run;
      void run.all(facility, asked);
    },
    cancel() {
      stop();
      setState({ at: 'form' });
    },
  };
}

/** One run of the steps; a step of a stopped run says nothing any more. */
function startRun(say: (state: PlanState) => void) {
  let stopped = false;
  let current: { stop(): void } | null = null;
  const tell = (state: PlanState): void => {
    if (!stopped) say(state);
  };

  async function solve(
    made: SeasonPlanCase,
    onProgress?: (progress: PlanProgress) => void,
  ): Promise<Result<PlanAnswer>> {
    const search = startPlan(made, onProgress);
    current = search;
    // A search that begins after the stop must not go on unseen.
    if (stopped) search.stop();
    return search.answer;
  }

  async function warnedOf({ ask }: PairsWanted, { plan }: PlanAnswer): Promise<Result<PlanMade['warnings']>> {
    const pairs = (plan?.pairs ?? []).flatMap(([female, male]) => {
      const [sire, dam] = [ask.sires[male], ask.dams[female]];
      return sire === undefined || dam === undefined ? [] : [{ sire, dam }];
    });
    const asking = startGenetics({ ask: 'pair-warnings', species: ask.species, siteRows: ask.siteRows, pairs });
    current = asking;
    return asking.answer;
  }

  async function all(facility: Facility, asked: PlanAsked): Promise<void> {
    tell({ at: 'pairs', progress: null });
    const wanted = pairsWanted(facility, asked.herd, asked.setting.goals);
    const asking = startGenetics(wanted.ask, (progress) => tell({ at: 'pairs', progress }));
    current = asking;
    const chances = await asking.answer;
    if (!chances.ok) return tell({ at: 'failed', problem: chances.problem });
    tell({ at: 'search', progress: null });
    const made = planCaseOf(wanted.ask, chances.value, asked.setting);
    const answer = await solve(made, (progress) => tell({ at: 'search', progress }));
    if (!answer.ok) return tell({ at: 'failed', problem: answer.problem });
    const warnings = await warnedOf(wanted, answer.value);
    if (!warnings.ok) return tell({ at: 'failed', problem: warnings.problem });
    const found = { asked, wanted, chances: chances.value, made, answer: answer.value, warnings: warnings.value };
    if (answer.value.status !== 'infeasible') return tell({ at: 'done', plan: { ...found, loosenings: [] } });
    tell({ at: 'why' });
    const why = await loosenings(made, (looser) => solve(looser));
    if (!why.ok) return tell({ at: 'failed', problem: why.problem });
    tell({ at: 'done', plan: { ...found, loosenings: why.value } });
  }

  return {
    all,
    stop() {
      stopped = true;
      current?.stop();
    },
  };
}
