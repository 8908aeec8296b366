import type { Day } from '../../core/index.ts';
import { RoundRow } from './RoundRow.tsx';
import { isStillToFeed, type RoundGroup, type RoundLens } from './roundView.ts';
import { StartRound } from './StartRound.tsx';
import { useGrowing } from './useGrowing.ts';

interface RoundGroupsProps {
  readonly groups: readonly RoundGroup[];
  readonly lens: RoundLens;
  readonly today: Day;
  readonly readOnly: boolean;
}

const NOBODY: Record<RoundLens, string> = {
  feed: 'Nobody is to be fed. The round is done.',
  overdue: 'Nobody is overdue.',
  held: 'Nobody is on hold.',
  all: 'No animals are here.',
};

/** The walk: one ruled block a rack; blocks out of sight cost nothing to lay out (content-visibility). */
export function RoundGroups({ groups, lens, today, readOnly }: RoundGroupsProps) {
  const shown = useGrowing(lens, groups.length);
  if (groups.length === 0) return <p class="empty">{NOBODY[lens]}</p>;
  return (
    <>
      {groups.slice(0, shown).map((group) => (
        <Group key={group.id ?? 'none'} group={group} lens={lens} today={today} readOnly={readOnly} />
      ))}
    </>
  );
}

interface GroupProps {
  readonly group: RoundGroup;
  readonly lens: RoundLens;
  readonly today: Day;
  readonly readOnly: boolean;
}

function Group({ group, lens, today, readOnly }: GroupProps) {
  const title = `rack-${group.id ?? 'none'}`;
  return (
    <section class="round-group" aria-labelledby={title} style={{ containIntrinsicSize: sizeOf(group) }}>
      <header class="group-head">
        <h3 id={title}>
          {group.id === null ? (
            group.name
          ) : (
            <a class="group-link" href={`/place/${group.id}`}>
              {group.name}
            </a>
          )}
          <span class="group-left">{sayLeft(group, lens)}</span>
        </h3>
        {!readOnly && group.id !== null && <StartRound place={group.id} name={group.name} task="feeding" />}
      </header>
      <ol class="round-lines">
        {group.lines.map((line) => (
          <RoundRow key={line.due.animal.id} line={line} today={today} readOnly={readOnly} />
        ))}
      </ol>
    </section>
  );
}

function sayLeft({ lines }: RoundGroup, lens: RoundLens): string {
  if (lens === 'held') return `${lines.length} held`;
  const left = lines.filter(isStillToFeed).length;
  return left === 0 ? 'none left to feed' : `${left} left to feed`;
}

const HEAD_PX = 56;
const LINE_PX = 84;

function sizeOf(group: RoundGroup): string {
  return `auto 300px auto ${HEAD_PX + LINE_PX * group.lines.length}px`;
}
