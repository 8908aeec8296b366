import { isAtPlace, type RoundLine, type RoundTask, sayHome } from '../../core/index.ts';
import type { DotState } from '../look/StateDot.tsx';

/** What a round is called at the head of a page. */
export const ROUND_TITLES: Readonly<Record<RoundTask, string>> = {
  feeding: 'Feeding round',
  water: 'Water round',
  spot: 'Spot cleaning',
  clean: 'Full cleaning',
  weigh: 'Weighing round',
  treat: 'Treatment round',
  look: 'Health look',
  'pool-part': 'Part-change of pools',
  'pool-filter': 'Filters of pools',
  'pool-drain': 'Pools to drain',
};

/** The same as a word in a list. */
export const TASK_NAMES: Readonly<Record<RoundTask, string>> = {
  feeding: 'Feeding',
  water: 'Water',
  spot: 'Spot clean',
  clean: 'Full clean',
  weigh: 'Weighing',
  treat: 'Treatment',
  look: 'Health look',
  'pool-part': 'Pool, part-change',
  'pool-filter': 'Pool, filter',
  'pool-drain': 'Pool, drain',
};

/** What the square at the end of a line says. */
export const DEED_NAMES: Readonly<Record<RoundTask, string>> = {
  feeding: 'Fed',
  water: 'Done',
  spot: 'Done',
  clean: 'Done',
  weigh: 'Weigh',
  treat: 'Dose',
  look: 'Look',
  'pool-part': 'Done',
  'pool-filter': 'Done',
  'pool-drain': 'Done',
};

/** What a scan does once all was done in one touch. */
export function sayExceptions(task: RoundTask): string {
  if (task === 'feeding') return 'Scan each one that refused; scanned again it is fed after all.';
  if (task === 'look') return 'Scan each one that is to be looked at again.';
  if (task === 'weigh') return 'Scan a card, put the animal on the scale, write what it shows.';
  if (task === 'treat') return 'Scan a card: its dose opens, and is confirmed by itself.';
  return 'Scan each one that was not done; scanned again it is done after all.';
}

/** The dot of a line. */
export function dotOf({ state }: Pick<RoundLine, 'state'>): DotState {
  if (state === 'done') return 'fed';
  if (state === 'held') return 'hold';
  return state === 'skipped' ? 'none' : state;
}

/** `3-14`, or a dash for an animal without a place. */
export function placeWord({ place }: Pick<RoundLine, 'place'>): string {
  return place?.name ?? '—';
}

/** Who is there: the animals of a home, or the one that the line is about. */
export function whoWord(line: RoundLine): string {
  return sayHome({ place: line.place ?? { name: '—' }, animals: line.animals } as Parameters<typeof sayHome>[0]);
}

/** Where a touch on a line's name leads: the place for what is done there, else the animal. */
export function pageOf(line: RoundLine): string {
  return isAtPlace(line.task) ? `/place/${line.of}` : `/animal/${line.of}`;
}
