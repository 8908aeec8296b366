import { type DayWork, ROUND_TASKS, type RoundCounts, type RoundTask, sayPace } from '../../core/index.ts';
import { type DotState, StateDot } from '../look/StateDot.tsx';
import { TASK_NAMES } from './taskWords.ts';

interface TaskListProps {
  readonly counts: ReadonlyMap<RoundTask, RoundCounts>;
  readonly work: ReadonlyMap<RoundTask, DayWork>;
  readonly chosen: RoundTask;
  /** Something was fed already, so that the thaw list has done its work. */
  readonly thawed: boolean;
}

/** The day's rounds, each with what is left, done and how fast it goes; a touch shows its walk. */
export function TaskList({ counts, work, chosen, thawed }: TaskListProps) {
  const shown = ROUND_TASKS.filter((task) => task === 'feeding' || (counts.get(task)?.all ?? 0) > 0);
  return (
    <nav class="day-rounds" aria-label="Rounds of the day">
      <ol>
        <li>
          <a class="task-link" href="/rounds?task=feeding&at=thaw">
            <StateDot state={thawed ? 'fed' : 'due'} silent />
            <span class="task-name">Thaw list</span>
            <span class="task-left">{thawed ? 'feeding has begun' : 'first thing'}</span>
          </a>
        </li>
        {shown.map((task) => (
          <li key={task}>
            <a class="task-link" href={`/rounds?task=${task}`} aria-current={task === chosen ? 'true' : undefined}>
              <Row task={task} counts={counts.get(task) ?? null} work={work.get(task) ?? null} />
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}

interface RowProps {
  readonly task: RoundTask;
  readonly counts: RoundCounts | null;
  readonly work: DayWork | null;
}

function Row({ task, counts, work }: RowProps) {
  if (counts === null)
    return (
      <>
        <StateDot state="none" silent />
        <span class="task-name">{TASK_NAMES[task]}</span>
      </>
    );
  return (
    <>
      <StateDot state={dotFor(counts)} silent />
      <span class="task-name">{TASK_NAMES[task]}</span>
      <span class="task-left">
        <b>{counts.left}</b> left
      </span>
      <span class="task-more">
        {[...sayCounts(counts), ...(work === null ? [] : sayWork(work))].join(' · ') ||
          (counts.left > 0 ? 'nothing done yet' : 'none due today')}
      </span>
    </>
  );
}

function dotFor({ left, overdue, done }: RoundCounts): DotState {
  if (overdue > 0) return 'overdue';
  if (left > 0) return 'due';
  return done > 0 ? 'fed' : 'soon';
}

function sayCounts({ done, overdue, skipped }: RoundCounts): readonly string[] {
  return [
    ...(done > 0 ? [`${done} done`] : []),
    ...(overdue > 0 ? [`${overdue} overdue`] : []),
    ...(skipped > 0 ? [`${skipped} skipped`] : []),
  ];
}

/** Who did how much, and the pace; both from today's log alone. */
function sayWork(work: DayWork): readonly string[] {
  const pace = sayPace(work);
  const [first] = work.byKeeper;
  const who =
    work.byKeeper.length === 1 && first ? [first[0]] : work.byKeeper.map(([keeper, pieces]) => `${keeper} ${pieces}`);
  return [...(pace === null ? [] : [pace]), who.filter((name) => name !== '').join(', ')].filter(
    (words) => words !== '',
  );
}
