import { sayNumber } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import type { PlanState } from './usePlan.ts';

/** How far the plan is, and the way to stop it. */
export function PlanWork({ state, cancel }: { readonly state: PlanState; cancel(): void }) {
  if (state.at === 'form' || state.at === 'done') return null;
  if (state.at === 'failed') return <ProblemLine problem={state.problem} />;
  return (
    <div class="plan-work">
      <p role="status">{wordsOf(state)}</p>
      <progress aria-label="How far the plan is" {...measure(state)} />
      <button type="button" onClick={cancel}>
        Cancel
      </button>
    </div>
  );
}

type Working = Extract<PlanState, { at: 'pairs' | 'search' | 'why' }>;

function wordsOf(state: Working): string {
  switch (state.at) {
    case 'pairs':
      return state.progress === null
        ? 'Chances and kinship of the pairs …'
        : `Chances and kinship: ${sayNumber(state.progress.done)} of ${sayNumber(state.progress.of)} pairs`;
    case 'search':
      return sayGap(state);
    case 'why':
      return 'No plan keeps to all limits: looking for the one that stands in the way …';
    default:
      return state satisfies never;
  }
}

function sayGap({ progress }: Extract<Working, { at: 'search' }>): string {
  if (progress?.best == null) return 'Searching for the best plan …';
  const { pairs } = progress.best;
  const found = `Searching: ${pairs.length} ${pairs.length === 1 ? 'pairing' : 'pairings'} so far`;
  return progress.gap === null || progress.gap === 0
    ? found
    : `${found}, at most ${(100 * progress.gap).toPrecision(2)} % from the best`;
}

/** A search has no end that is known beforehand: then the bar only says that it goes on. */
function measure(state: Working): { readonly max?: number; readonly value?: number } {
  return state.at === 'pairs' && state.progress !== null ? { max: state.progress.of, value: state.progress.done } : {};
}
