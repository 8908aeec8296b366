import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { addDays, type Day, isDay, ROUND_TASKS, type RoundTask } from '../../core/index.ts';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { sayRound } from '../model/rackRound.ts';
import { DayPicker } from './DayPicker.tsx';
import { FeedingWalk } from './FeedingWalk.tsx';
import './rounds.css';
import { countLines, roundLines } from './roundView.ts';
import { TaskList } from './TaskList.tsx';
import { TaskWalk } from './TaskWalk.tsx';
import { ThawList } from './ThawList.tsx';
import { ROUND_TITLES } from './taskWords.ts';
import { RUN_PAGE } from './useBegin.tsx';
import { useDayCounts } from './useDayCounts.ts';
import { useDayWork } from './useDayWork.ts';

/** What is to be done on a day: the thaw list, the rounds, and the walk of the one that was chosen; only today can be logged from here. */
export function RoundsScreen() {
  const { site, clock } = useApp();
  const [picked, pick] = useState<Day | null>(null);
  const facility = site.facility.value;
  const today = clock.today.value;
  const day = picked ?? today;
  const lines = useMemo(() => roundLines(facility, day), [facility, day]);
  const feeding = countLines(lines);
  const counts = useDayCounts(lines, day);
  const work = useDayWork(day);
  const task = useTask();
  const { walk, thaw } = useShown(task);
  return (
    <section class="screen rounds" aria-labelledby="rounds-title">
      <header class="rounds-head">
        <h1 id="rounds-title">Rounds</h1>
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
      {feeding.all === 0 ? (
        <NoAnimals />
      ) : (
        <div class="rounds-body">
          <div class="rounds-first">
            <OpenLine />
            <TaskList counts={counts} work={work} chosen={task} thawed={feeding.done > 0} />
          </div>
          {task === 'feeding' && (
            <div class="rounds-thaw" ref={thaw}>
              <ThawList day={day} isToday={day === today} begun={feeding.done > 0} />
            </div>
          )}
          <section class="rounds-walk" aria-labelledby="walk-title" ref={walk}>
            <h2 id="walk-title">{ROUND_TITLES[task]}</h2>
            {task === 'feeding' ? (
              <FeedingWalk facility={facility} lines={lines} counts={feeding} day={day} today={today} />
            ) : (
              <TaskWalk key={task} task={task} day={day} today={today} />
            )}
          </section>
        </div>
      )}
    </section>
  );
}

/** The round whose walk is shown; feeding unless the address says another. */
function useTask(): RoundTask {
  const { query } = useLocation();
  return ROUND_TASKS.find((one) => one === query['task']) ?? 'feeding';
}

/** On a phone the walk lies below the list: a touch on a round, or on the thaw list, brings it into view. */
function useShown(task: RoundTask) {
  const { query } = useLocation();
  const walk = useRef<HTMLElement>(null);
  const thaw = useRef<HTMLDivElement>(null);
  const isAsked = query['task'] !== undefined;
  const at = query['at'];
  useEffect(() => {
    if (!isAsked) return;
    const frame = requestAnimationFrame(() =>
      (at === 'thaw' ? thaw : walk).current?.scrollIntoView({ block: 'start' }),
    );
    return () => cancelAnimationFrame(frame);
  }, [task, isAsked, at]);
  return { walk, thaw };
}

/** A round that is open already stands first: it is gone on with, or ended. */
function OpenLine() {
  const { round } = useApp();
  const open = round.open.value;
  if (open === null) return null;
  return (
    <a class="open-line" href={RUN_PAGE}>
      <strong>Open round</strong> {sayRound(open)}
    </a>
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
