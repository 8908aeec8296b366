import { useMemo, useState } from 'preact/hooks';
import {
  countsOfRound,
  type Day,
  type Facility,
  groupsOf,
  type Id,
  isLeft,
  type RoundGroup,
  type RoundLine,
  type RoundTask,
  roundPlan,
} from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import { useApp } from '../model/app.ts';
import { aheadOfUtcMs } from '../treatment/siteTime.ts';
import { LineRow } from './LineRow.tsx';
import { StartRound } from './StartRound.tsx';
import { ROUND_TITLES, sayExceptions } from './taskWords.ts';
import { useGrowing } from './useGrowing.ts';

interface TaskWalkProps {
  readonly task: RoundTask;
  readonly day: Day;
  readonly today: Day;
}

type WalkLens = 'left' | 'overdue' | 'passed' | 'all';

/** The walk of one task: who and where, in walking order, each rack with its own start. */
export function TaskWalk({ task, day, today }: TaskWalkProps) {
  const { site, clock } = useApp();
  const [lens, setLens] = useState<WalkLens>('left');
  const facility = site.facility.value;
  const aheadMs = aheadOfUtcMs(clock.nowMs(), clock.timeZone.value);
  const lines = useMemo(() => roundPlan(facility, { task, on: day, aheadMs }), [facility, task, day, aheadMs]);
  const counts = countsOfRound(lines);
  const groups = useMemo(
    () =>
      groupsOf(
        facility,
        lines.filter((line) => isShown(line, lens)),
      ),
    [facility, lines, lens],
  );
  const passed = counts.skipped + counts.held;
  return (
    <>
      <Lens<WalkLens>
        label="Show"
        chosen={lens}
        choose={setLens}
        choices={[
          { id: 'left', words: 'To do', count: counts.left },
          { id: 'overdue', words: 'Overdue', count: counts.overdue },
          { id: 'passed', words: 'Not now', count: passed },
          { id: 'all', words: 'All', count: counts.all },
        ]}
      />
      {groups.length === 0 ? (
        <p class="empty">{NOTHING[lens]}</p>
      ) : (
        <Groups groups={groups} task={task} lens={lens} day={day} today={today} facility={facility} />
      )}
      {day === today && <p class="because walk-how">{sayExceptions(task)}</p>}
    </>
  );
}

const NOTHING: Readonly<Record<WalkLens, string>> = {
  left: 'Nothing is left to do. The round is done.',
  overdue: 'Nothing is overdue.',
  passed: 'Nothing was skipped, and nothing waits.',
  all: 'There is nothing for this round.',
};

/** What was done today stays where it was, so that nobody loses their place. */
function isShown(line: RoundLine, lens: WalkLens): boolean {
  switch (lens) {
    case 'left':
      return isLeft(line) || line.state === 'done';
    case 'overdue':
      return line.state === 'overdue';
    case 'passed':
      return line.state === 'skipped' || line.state === 'held';
    case 'all':
      return true;
    default:
      return lens satisfies never;
  }
}

interface GroupsProps extends TaskWalkProps {
  readonly groups: readonly RoundGroup[];
  readonly lens: WalkLens;
  readonly facility: Facility;
}

function Groups({ groups, task, lens, day, today, facility }: GroupsProps) {
  const shown = useGrowing(`${task} ${lens}`, groups.length);
  const rooms = roomsOf(facility, groups);
  return (
    <>
      {groups.slice(0, shown).map((group) => (
        <Group
          key={group.id ?? 'none'}
          group={group}
          room={rooms.get(group.id) ?? null}
          task={task}
          today={today}
          readOnly={day !== today}
        />
      ))}
    </>
  );
}

/** The room before whose first rack its name stands; only where it holds more than one. */
function roomsOf({ places }: Facility, groups: readonly RoundGroup[]): ReadonlyMap<Id | null, Id> {
  const above = groups.map(({ id }) => ({ id, room: id === null ? null : (places.get(id)?.parent ?? null) }));
  const firsts = new Map<Id | null, Id>();
  for (const [at, { id, room }] of above.entries()) {
    const isFirst = room !== above[at - 1]?.room;
    if (room !== null && places.has(room) && isFirst && above[at + 1]?.room === room) firsts.set(id, room);
  }
  return firsts;
}

interface GroupProps {
  readonly group: RoundGroup;
  readonly room: Id | null;
  readonly task: RoundTask;
  readonly today: Day;
  readonly readOnly: boolean;
}

function Group({ group, room, task, today, readOnly }: GroupProps) {
  const { site } = useApp();
  const title = `${task}-${group.id ?? 'none'}`;
  const counts = countsOfRound(group.lines);
  const roomName = room === null ? null : (site.facility.value.places.get(room)?.name ?? null);
  return (
    <section
      class="round-group"
      aria-labelledby={title}
      style={{ containIntrinsicSize: `auto 300px auto ${56 + 84 * group.lines.length}px` }}
    >
      {room !== null && roomName !== null && (
        <header class="group-room">
          <a class="group-link" href={`/place/${room}`}>
            {roomName}
          </a>
          {!readOnly && <StartRound place={room} name={roomName} task={task} />}
        </header>
      )}
      <header class="group-head">
        <h3 id={title}>
          {group.id === null ? (
            group.name
          ) : (
            <a class="group-link" href={`/place/${group.id}`}>
              {group.name}
            </a>
          )}
          <span class="group-left">{counts.left === 0 ? 'none left' : `${counts.left} left`}</span>
        </h3>
        {!readOnly && group.id !== null && <StartRound place={group.id} name={group.name} task={task} />}
      </header>
      <ol class="round-lines">
        {group.lines.map((line) => (
          <LineRow key={line.of} line={line} today={today} readOnly={readOnly} />
        ))}
      </ol>
    </section>
  );
}

/** The head of the walk of a task. */
export function walkTitle(task: RoundTask): string {
  return ROUND_TITLES[task];
}
