import type { Spot, Tree, Way } from './layout.ts';

/** A step in the drawing: up to the parents, down to the young, or to the neighbour in the same generation. */
export type Step = 'parents' | 'young' | 'before' | 'after' | 'start';

/** Where a step leads from a spot; the spot itself where there is nothing. */
export function stepFrom({ spots }: Tree, way: Way, step: Step): Way {
  // Nobody can be met at an unknown end, so no step leads there.
  const known = spots.filter((spot) => spot.id !== null);
  const at = (wanted: Way): Spot | undefined => known.find((spot) => spot.way === wanted);
  switch (step) {
    case 'parents':
      return (at(`${way}S`) ?? at(`${way}D`))?.way ?? way;
    case 'young':
      return way.slice(0, -1);
    case 'start':
      return '';
    case 'before':
    case 'after': {
      const level = known.filter((spot) => spot.column === way.length);
      const here = level.findIndex((spot) => spot.way === way);
      return level[here + (step === 'after' ? 1 : -1)]?.way ?? way;
    }
    default:
      return step satisfies never;
  }
}

const KEYS: Readonly<Record<string, Step>> = {
  ArrowRight: 'parents',
  ArrowLeft: 'young',
  ArrowUp: 'before',
  ArrowDown: 'after',
  Home: 'start',
};

/** The step that a key asks for; null for other keys. */
export function stepOfKey(key: string): Step | null {
  return KEYS[key] ?? null;
}

/** The place of an animal where its ancestors are drawn. */
export function placeOf({ spots }: Tree, id: string): Way | null {
  return spots.find((spot) => spot.id === id && spot.is === 'drawn')?.way ?? null;
}

const ROLES = ['parent', 'grandparent', 'great-grandparent'];

/** `sire`, `dam’s sire`, `sire’s sire’s dam`: who stands on a way, seen from the animal that is drawn. */
export function sayWay(way: Way): string {
  return way === '' ? 'the animal itself' : [...way].map((one) => (one === 'S' ? 'sire' : 'dam')).join('’s ');
}

/** `parents`, `grandparents`, `great-grandparents`, then counted: the head of a column. */
export function sayGeneration(column: number): string {
  if (column === 0) return 'the animal';
  return column <= ROLES.length ? `${ROLES[column - 1]}s` : `generation ${column}`;
}
