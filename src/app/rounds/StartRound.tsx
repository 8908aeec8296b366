import type { Id, RoundTask } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { RUN_PAGE, useBegin } from './useBegin.tsx';

interface StartRoundProps {
  readonly place: Id;
  readonly name: string;
  readonly task: RoundTask;
}

/** Begins a round at a rack, an exhibit or a room, and opens it; where it is walked already it only opens it. */
export function StartRound({ place, name, task }: StartRoundProps) {
  const { round } = useApp();
  const { begin, failed, sheet } = useBegin();
  const open = round.open.value;
  if (open?.place === place && open.task === task)
    return (
      <a class="start-round start-round-on" href={RUN_PAGE}>
        Go on
      </a>
    );
  return (
    <>
      <button type="button" class="start-round" aria-label={`Start: ${name}`} onClick={() => begin({ place, task })}>
        Start
      </button>
      {failed !== null && <ProblemLine problem={failed} />}
      {sheet}
    </>
  );
}
