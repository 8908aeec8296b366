import { useMemo, useState } from 'preact/hooks';
import { addDays, type Day, isDay } from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { DayPicker } from './DayPicker.tsx';
import { RoundFigures } from './RoundFigures.tsx';
import { RoundGroups } from './RoundGroups.tsx';
import './rounds.css';
import { countLines, groupLines, type RoundLens, roundLines } from './roundView.ts';
import { ThawList } from './ThawList.tsx';

/** What is to be done on a day, in walking order; only today can be logged from here. */
export function RoundsScreen() {
  const { site, clock } = useApp();
  const [picked, pick] = useState<Day | null>(null);
  const [lens, setLens] = useState<RoundLens>('feed');
  const facility = site.facility.value;
  const today = clock.today.value;
  const day = picked ?? today;
  const lines = useMemo(() => roundLines(facility, day), [facility, day]);
  const groups = useMemo(() => groupLines(facility, lines, lens), [facility, lines, lens]);
  const counts = countLines(lines);
  return (
    <section class="screen rounds" aria-labelledby="rounds-title">
      <header class="rounds-head">
        <h1 id="rounds-title">Feeding round</h1>
        <DayPicker
          day={day}
          today={today}
          pick={(text) => pick(isDay(text) && text !== today ? text : null)}
          step={(days) => {
            const next = addDays(day, days);
            pick(next === today ? null : next);
          }}
        />
      </header>
      {counts.all === 0 ? (
        <NoAnimals />
      ) : (
        <div class="rounds-body">
          <div class="rounds-first">
            <RoundFigures counts={counts} isToday={day === today} />
            <ThawList day={day} isToday={day === today} begun={counts.done > 0} />
          </div>
          <div class="rounds-walk">
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
          </div>
        </div>
      )}
    </section>
  );
}

function NoAnimals() {
  return (
    <p class="empty">
      No animals yet, so nobody is to be fed. <a href="/books">Add a rack and an animal in Books</a>, or import a log
      there.
    </p>
  );
}
