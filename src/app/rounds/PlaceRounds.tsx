import './rackRound.css';
import { useMemo } from 'preact/hooks';
import {
  countsOfRound,
  type Facility,
  goesAtOnce,
  type Id,
  isLeft,
  ROUND_TASKS,
  type RoundCounts,
  type RoundRecord,
  type RoundTask,
  roundPlan,
  sayDayShort,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { sayRound } from '../model/rackRound.ts';
import { aheadOfUtcMs } from '../treatment/siteTime.ts';
import { TASK_NAMES } from './taskWords.ts';
import { RUN_PAGE, useBegin } from './useBegin.tsx';

/** The rounds of a rack, an exhibit or a room besides its feeding: what is left of each, one touch for all, or line by line. */
export function PlaceRounds({ place }: { readonly place: Id }) {
  const { site, clock, round } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const rows = useMemo(() => {
    const aheadMs = aheadOfUtcMs(clock.nowMs(), clock.timeZone.value);
    return ROUND_TASKS.map((task) => rowOf(facility, { task, on: today, within: place, aheadMs })).filter(
      (row) => row.counts.all > 0,
    );
  }, [facility, place, today]);
  const open = round.open.value;
  const { begin, failed, sheet } = useBegin();
  if (open?.place === place) return null;
  if (open !== null)
    return (
      <p class="here-open">
        A round is open: <a href={RUN_PAGE}>{sayRound(open)}</a>. End it before another begins.
      </p>
    );
  return (
    <section class="here-rounds" aria-label="Rounds here">
      <h2>Rounds here</h2>
      <ul>
        {rows.map((row) => (
          <HereRow
            key={row.task}
            row={row}
            lines={() => begin({ place, task: row.task })}
            all={() => begin({ place, task: row.task, all: true })}
          />
        ))}
      </ul>
      <LastRounds facility={facility} place={place} />
      {failed !== null && <ProblemLine problem={failed} />}
      {sheet}
    </section>
  );
}

interface Row {
  readonly task: RoundTask;
  readonly counts: RoundCounts;
  /** How many one touch does. */
  readonly atOnce: number;
}

function rowOf(facility: Facility, question: Parameters<typeof roundPlan>[1]): Row {
  const lines = roundPlan(facility, question);
  const atOnce = goesAtOnce(question.task) ? lines.filter((line) => isLeft(line) && line.problem === null).length : 0;
  return { task: question.task, counts: countsOfRound(lines), atOnce };
}

interface HereRowProps {
  readonly row: Row;
  readonly lines: () => void;
  readonly all: () => void;
}

function HereRow({ row, lines, all }: HereRowProps) {
  const { task, counts, atOnce } = row;
  const name = TASK_NAMES[task];
  const dot = counts.overdue > 0 ? 'overdue' : counts.left > 0 ? 'due' : counts.done > 0 ? 'fed' : 'soon';
  return (
    <li class="here-row">
      <button type="button" class="here-lines" aria-label={`${name}, line by line`} onClick={lines}>
        <StateDot state={dot} silent />
        <span>
          <strong>{name}</strong>{' '}
          <span class="soft">
            {counts.left === 0 ? (counts.done > 0 ? 'done' : 'none due') : `${counts.left} left`}
            {counts.overdue > 0 && `, ${counts.overdue} overdue`}
            {counts.skipped > 0 && `, ${counts.skipped} skipped`}
          </span>
        </span>
      </button>
      {task !== 'feeding' && atOnce > 0 && (
        <button
          type="button"
          class="secondary here-all"
          aria-label={`${name}: all as planned, ${atOnce}`}
          onClick={all}
        >
          All {atOnce}
        </button>
      )}
    </li>
  );
}

/** Who walked what here last. */
function LastRounds({ facility, place }: { readonly facility: Facility; readonly place: Id }) {
  const rounds = facility.places.get(place)?.rounds ?? {};
  const lines = ROUND_TASKS.flatMap((task) => {
    const last = rounds[task];
    return last === undefined || last.ended === null ? [] : [`${TASK_NAMES[task]}: ${sayLast(last, last.ended)}`];
  });
  if (lines.length === 0) return null;
  return (
    <details class="here-last">
      <summary>Last rounds here</summary>
      <ul>
        {lines.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  );
}

function sayLast({ keeper, second, day }: RoundRecord, ended: NonNullable<RoundRecord['ended']>): string {
  const who = second === null ? keeper : `${keeper} with ${second}`;
  const refused = ended.refused > 0 ? `, ${ended.refused} refused` : '';
  return `${sayDayShort(day)}, ${who}; ${ended.done} done${refused}, ${ended.skipped} skipped, ${ended.left} left`;
}
