import { useMemo, useState } from 'preact/hooks';
import type { Day, Facility } from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import { RoundFigures } from './RoundFigures.tsx';
import { RoundGroups } from './RoundGroups.tsx';
import { groupLines, type RoundCounts, type RoundLens, type RoundLine } from './roundView.ts';

interface FeedingWalkProps {
  readonly facility: Facility;
  readonly lines: readonly RoundLine[];
  readonly counts: RoundCounts;
  readonly day: Day;
  readonly today: Day;
}

/** The walk of the feeding round: its figures, and every animal by rack. */
export function FeedingWalk({ facility, lines, counts, day, today }: FeedingWalkProps) {
  const [lens, setLens] = useState<RoundLens>('feed');
  const groups = useMemo(() => groupLines(facility, lines, lens), [facility, lines, lens]);
  return (
    <>
      <RoundFigures counts={counts} isToday={day === today} />
      <Lens<RoundLens>
        label="Show"
        chosen={lens}
        choose={setLens}
        choices={[
          { id: 'feed', words: 'To feed', count: counts.feed },
          { id: 'overdue', words: 'Overdue', count: counts.overdue },
          { id: 'held', words: 'Held', count: counts.held + counts.vet },
          { id: 'all', words: 'All', count: counts.all },
        ]}
      />
      <RoundGroups groups={groups} lens={lens} today={today} readOnly={day !== today} />
    </>
  );
}
