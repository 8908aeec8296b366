import type { EventDraft } from '../care/index.ts';
import type { Day } from '../days.ts';
import type { RoundTask } from '../events/index.ts';
import type { Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { RoundLine } from './line.ts';

/** A line of a task that is done at the place. */
export type PlaceTask = Exclude<RoundTask, 'feeding' | 'weigh' | 'treat'>;

/** What is done to many homes in one go is one event, so that a daily look at 500 tubs does not fill the log. */
const TOGETHER: ReadonlySet<RoundTask> = new Set(['water', 'spot', 'look']);
/** An event holds at most 500 subjects; those of one are kept below it. */
const MOST_HOMES = 400;

/** The events that say that a task was done at these homes: one for all of a rack, or one a home where it is rarer. */
export function deedDrafts(lines: readonly RoundLine[], task: PlaceTask, day: Day): readonly EventDraft[] {
  if (!TOGETHER.has(task)) return lines.map((line) => deedDraft(task, [line.of, ...residents(line, task)], day));
  const byGroup = new Map<Id | null, Id[]>();
  for (const { group, of } of lines) byGroup.set(group, [...(byGroup.get(group) ?? []), of]);
  return [...byGroup.values()].flatMap((homes) => chunks(homes, MOST_HOMES).map((some) => deedDraft(task, some, day)));
}

/** A full clean stands in the ledger of whoever lives there; water and looks would fill it. */
function residents({ animals }: RoundLine, task: PlaceTask): readonly Id[] {
  return task === 'clean' ? animals.map((animal) => animal.id) : [];
}

/** One event of a task at a place; `percent`: how much of a pool was changed. */
export function deedDraft(task: PlaceTask, subjects: readonly Id[], day: Day, percent?: number): EventDraft {
  switch (task) {
    case 'water':
      return { kind: 'water-changed', subjects, payload: {}, day };
    case 'spot':
      return { kind: 'place-cleaned', subjects, payload: { how: 'spot' }, day };
    case 'clean':
      return { kind: 'place-cleaned', subjects, payload: { how: 'full' }, day };
    case 'look':
      return { kind: 'health-looked', subjects, payload: { well: true }, day };
    case 'pool-part': {
      const payload = { work: 'part' as const, ...(percent !== undefined && { percent }) };
      return { kind: 'pool-served', subjects, payload, day };
    }
    case 'pool-filter':
      return { kind: 'pool-served', subjects, payload: { work: 'filter' }, day };
    case 'pool-drain':
      return { kind: 'pool-served', subjects, payload: { work: 'drain' }, day };
    default:
      return task satisfies never;
  }
}

/** True for subjects that still say something once a home is taken out: another home, and not only the rack around it. */
export function saysMore({ places }: Facility, rest: readonly Id[], group: Id): boolean {
  return rest.some((id) => places.has(id) && id !== group);
}

function chunks<T>(list: readonly T[], most: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / most) }, (_, at) => list.slice(at * most, (at + 1) * most));
}
