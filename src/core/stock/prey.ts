/** Where a figure comes from: S a published source seen, C common practice without a source, D derived from an open log, M memory. */
export type Mark = 'S' | 'C' | 'D' | 'M';

/** A class of prey with its usual weight. Suppliers' sizes differ, so a lot may carry its own range. */
export interface PreyClass {
  readonly id: string;
  readonly name: string;
  readonly eachG: readonly [number, number];
  readonly mark: Mark;
  readonly source: string;
}

const NO_SOURCE = 'common practice, no source';
const HANDBOOK = 'laboratory-animal handbook figures of a breeding centre';
const CHART = 'university web chart';

/** Rule CARE-PREY: the prey classes, lightest first within each animal. */
export const PREY_CLASSES: readonly PreyClass[] = [
  prey('mouse-pinky', 1, 3, 'C', `${NO_SOURCE}; birth weight 1.5–2 g: ${HANDBOOK}`),
  prey('mouse-fuzzy', 3, 7, 'C', NO_SOURCE),
  prey('mouse-hopper', 7, 13, 'S', `${CHART}: 7.00–12.99 g at 14–19 days`),
  prey('mouse-weaned', 13, 18, 'S', `${CHART}: 13.00–17.99 g at 20–24 days`),
  prey('mouse-adult', 18, 35, 'C', `${NO_SOURCE}; adults 30–35 g: ${HANDBOOK}`),
  prey('mouse-jumbo', 35, 50, 'C', NO_SOURCE),
  prey('rat-pinky', 4, 10, 'C', `${NO_SOURCE}; birth weight 6–8 g: ${HANDBOOK}`),
  prey('rat-fuzzy', 10, 20, 'C', NO_SOURCE),
  prey('rat-pup', 20, 35, 'C', NO_SOURCE),
  prey('rat-weaned', 35, 60, 'C', `${NO_SOURCE}; weaning 40–60 g: ${HANDBOOK}`),
  prey('rat-small', 60, 100, 'C', NO_SOURCE),
  prey('rat-medium', 100, 175, 'C', NO_SOURCE),
  prey('rat-large', 175, 275, 'C', NO_SOURCE),
  prey('rat-jumbo', 275, 450, 'C', NO_SOURCE),
];

const BY_ID = new Map(PREY_CLASSES.map((one) => [one.id, one]));

/** The class of that id, or undefined. */
export function preyClass(id: string): PreyClass | undefined {
  return BY_ID.get(id);
}

/** Grams of so many items by the middle of their class; null for prey that is not in the list. */
export function gramsOfPrey(id: string, count: number): number | null {
  const found = BY_ID.get(id);
  return found ? (count * (found.eachG[0] + found.eachG[1])) / 2 : null;
}

/** `small rat`, `rat pup`: the class as people say it. */
export function sayPrey(id: string): string {
  return BY_ID.get(id)?.name ?? id.replaceAll('-', ' ');
}

function prey(id: string, low: number, high: number, mark: Mark, source: string): PreyClass {
  const [animal = '', size = ''] = id.split('-');
  const before = ['weaned', 'adult', 'jumbo', 'small', 'medium', 'large'].includes(size);
  return { id, name: before ? `${size} ${animal}` : `${animal} ${size}`, eachG: [low, high], mark, source };
}
