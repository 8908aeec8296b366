import type { DueState } from '../../core/index.ts';

/** What a dot can say; `fed` is a due feed that is done, `none` has no plan yet. */
export type DotState = DueState | 'fed' | 'none';

const WORDS: Record<DotState, string> = {
  soon: 'not yet due',
  due: 'due',
  overdue: 'overdue',
  hold: 'on hold',
  vet: 'vet’s word needed',
  fed: 'done today',
  none: 'no plan yet',
};

/** The word that stands with a dot, so that the shape is never alone. */
export function sayDot(state: DotState): string {
  return WORDS[state];
}

/** Due is a filled dot, soon an open one, overdue one with a bar; a hold is hatched, a vet's word a crossed ring. */
export function StateDot({ state, silent }: { readonly state: DotState; readonly silent?: boolean }) {
  const kind = `state-dot state-dot-${state}`;
  if (silent === true)
    return (
      <svg class={kind} viewBox="0 0 24 24" width="24" height="24" aria-hidden="true">
        <Shape state={state} />
      </svg>
    );
  return (
    <svg class={kind} viewBox="0 0 24 24" width="24" height="24" role="img" aria-label={sayDot(state)}>
      <Shape state={state} />
    </svg>
  );
}

function Shape({ state }: { readonly state: DotState }) {
  switch (state) {
    case 'soon':
      return <circle class="stroke" cx="12" cy="12" r="5" />;
    case 'due':
      return <circle class="fill" cx="12" cy="12" r="6" />;
    case 'overdue':
      return (
        <>
          <circle class="fill" cx="12" cy="10" r="6" />
          <path class="stroke" d="M4 21h16" />
        </>
      );
    case 'hold':
      return <path class="stroke" d="M4 11l7-7M4 18L18 4M7 21L20 8M14 21l6-6" />;
    case 'vet':
      return (
        <>
          <circle class="stroke" cx="12" cy="12" r="8" />
          <path class="stroke" d="M12 7.5v9M7.5 12h9" />
        </>
      );
    case 'fed':
      return <path class="stroke" d="M4 13l5 5L20 6" />;
    case 'none':
      return <path class="stroke" d="M7 12h10" />;
    default:
      return state satisfies never;
  }
}
