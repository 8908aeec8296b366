import type { TakenUp } from './useFormDraft.ts';

interface TakenUpLineProps {
  readonly takenUp: TakenUp;
  readonly anew: () => void;
}

/** Says that a form was half typed before, and how to be rid of that; nothing where it was not. */
export function TakenUpLine({ takenUp, anew }: TakenUpLineProps) {
  if (takenUp === 'no') return null;
  return (
    <p class="taken-up" role="status">
      Taken up from before, as you left it.
      {takenUp === 'old' ? ' What is saved has changed since then.' : null}{' '}
      <button type="button" class="link" onClick={anew}>
        Start anew
      </button>
    </p>
  );
}
