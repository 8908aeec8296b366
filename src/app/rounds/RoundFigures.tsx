import { StateDot } from '../look/StateDot.tsx';
import type { RoundCounts } from './roundView.ts';

interface RoundFiguresProps {
  readonly counts: RoundCounts;
  readonly isToday: boolean;
}

/** The day in five figures, each with its word and its dot. */
export function RoundFigures({ counts, isToday }: RoundFiguresProps) {
  return (
    <dl class="round-figures" aria-label={isToday ? 'Today' : 'That day'}>
      <div class="figure-first">
        <dt>
          <StateDot state="due" silent /> to feed
        </dt>
        <dd>{counts.feed}</dd>
      </div>
      <div>
        <dt>
          <StateDot state="fed" silent /> done
        </dt>
        <dd>{counts.done}</dd>
      </div>
      <div>
        <dt>
          <StateDot state="overdue" silent /> overdue
        </dt>
        <dd>{counts.overdue}</dd>
      </div>
      <div>
        <dt>
          <StateDot state="hold" silent /> held
        </dt>
        <dd>{counts.held}</dd>
      </div>
      <div class={counts.vet > 0 ? 'figure-stop' : ''}>
        <dt>
          <StateDot state="vet" silent /> vet
        </dt>
        <dd>{counts.vet}</dd>
      </div>
    </dl>
  );
}
