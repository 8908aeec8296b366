import {
  type AnimalRecord,
  animalsInWalkingOrder,
  type Day,
  type DueLine,
  dueLine,
  type Facility,
  type Id,
  isToFeed,
  type Skip,
  sayPlace,
} from '../../core/index.ts';
import type { DotState } from '../look/StateDot.tsx';

/** Through which lens the round is looked at. */
export type RoundLens = 'feed' | 'overdue' | 'held' | 'all';

/** One line of the round: what is due, and what was already done on that day. */
export interface RoundLine {
  readonly due: DueLine;
  readonly done: 'fed' | 'refused' | null;
  /** That it was passed over on that day, unless it was fed all the same. */
  readonly skip: Skip | null;
  readonly dot: DotState;
}

/** The lines that stand in one rack, exhibit or room, in walking order. */
export interface RoundGroup {
  readonly id: Id | null;
  readonly name: string;
  readonly lines: readonly RoundLine[];
}

/** How many animals of the day are in each state; `done` are those offered food on that day. */
export interface RoundCounts {
  readonly feed: number;
  readonly done: number;
  readonly overdue: number;
  readonly held: number;
  readonly vet: number;
  readonly skipped: number;
  readonly all: number;
}

/** The day's lines of every animal that is here, in walking order. */
export function roundLines(facility: Facility, day: Day): readonly RoundLine[] {
  return animalsInWalkingOrder(facility).map((animal) => {
    const due = { ...knownLine(facility, animal, day), place: sayPlace(facility, animal.place) };
    const done = doneOn(due, day);
    const skip = done === null ? (animal.skipped['feeding']?.find((one) => one.day === day) ?? null) : null;
    return { due, done, skip, dot: done === null ? (skip === null ? (due.due?.state ?? 'none') : 'none') : 'fed' };
  });
}

/** A record is replaced when it changes, so a line holds as long as its record; each touch then works out one line only. */
const known = new WeakMap<AnimalRecord, { readonly day: Day; readonly line: DueLine }>();

function knownLine(facility: Facility, animal: AnimalRecord, day: Day): DueLine {
  const kept = known.get(animal);
  if (kept !== undefined && kept.day === day) return kept.line;
  const line = dueLine(facility, animal, day);
  known.set(animal, { day, line });
  return line;
}

/** True for an animal that the round still has to feed. */
export function isStillToFeed({ due, done, skip }: RoundLine): boolean {
  return done === null && skip === null && isToFeed(due);
}

export function countLines(lines: readonly RoundLine[]): RoundCounts {
  const count = (of: (line: RoundLine) => boolean): number => lines.filter(of).length;
  return {
    feed: count(isStillToFeed),
    done: count(({ done }) => done !== null),
    overdue: count((line) => isStillToFeed(line) && line.due.due?.state === 'overdue'),
    held: count(({ due }) => due.due?.state === 'hold'),
    vet: count(({ due }) => due.due?.state === 'vet'),
    skipped: count(({ skip }) => skip !== null),
    all: lines.length,
  };
}

/** The lines that a lens shows, by rack. What was done today stays where it was, so that nobody loses their place. */
export function groupLines(facility: Facility, lines: readonly RoundLine[], lens: RoundLens): readonly RoundGroup[] {
  const groups = new Map<Id | null, RoundLine[]>();
  for (const line of lines) {
    if (!isShown(line, lens)) continue;
    const rack = rackOf(facility, line.due.animal.place);
    const group = groups.get(rack);
    if (group === undefined) groups.set(rack, [line]);
    else group.push(line);
  }
  return [...groups].map(([id, shown]) => ({ id, name: groupName(facility, id), lines: shown }));
}

function isShown({ due, done }: RoundLine, lens: RoundLens): boolean {
  switch (lens) {
    case 'feed':
      return done !== null || isToFeed(due);
    case 'overdue':
      return due.due?.state === 'overdue';
    case 'held':
      return due.due?.state === 'hold' || due.due?.state === 'vet';
    case 'all':
      return true;
    default:
      return lens satisfies never;
  }
}

function doneOn({ animal }: DueLine, day: Day): RoundLine['done'] {
  const last = animal.offers.at(-1);
  if (last === undefined || last.day !== day) return null;
  return last.taken ? 'fed' : 'refused';
}

/** What a place stands in; a place that stands in nothing is its own group. */
function rackOf(facility: Facility, place: Id | null): Id | null {
  const found = place === null ? undefined : facility.places.get(place);
  if (found === undefined) return null;
  return found.parent !== null && facility.places.has(found.parent) ? found.parent : found.id;
}

function groupName(facility: Facility, id: Id | null): string {
  return (id === null ? undefined : facility.places.get(id)?.name) ?? 'Without a place';
}
