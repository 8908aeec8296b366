import type { Mark } from '../stock/index.ts';

/** What a season's days are counted between. */
export type Milestone = 'lock' | 'ovulation' | 'pre-lay shed' | 'laid' | 'hatched' | 'born' | 'first shed';

/** Rule BREED-CALENDAR: how long one milestone comes after another in a species; a prior, and the site’s own dates narrow it. */
export interface Step {
  readonly from: Milestone;
  readonly to: Milestone;
  readonly days: readonly [number, number];
  readonly mark: Mark;
  readonly source: string;
  /** True where even the source is not sure of it. */
  readonly weak: boolean;
}

/** A figure of a clutch with its source. */
export interface Figure {
  readonly range: readonly [number, number];
  readonly mean: number | null;
  readonly mark: Mark;
  readonly source: string;
}

/** What is known of a species' breeding. */
export interface BreedingSpecies {
  readonly name: string;
  readonly bears: 'eggs' | 'live young';
  readonly steps: readonly Step[];
  /** Eggs of a clutch, or young of a litter. */
  readonly clutch: Figure | null;
  readonly hatchlingG: Figure | null;
  /** The months in which males and females are put together, 1 to 12; null where nobody says. */
  readonly pairing: { readonly from: number; readonly to: number; readonly mark: Mark; readonly source: string } | null;
}

const PRACTICE = 'common practice, no source';
const SHEETS = 'zoo and agency sheets (seen)';
const ELLIS = 'Ellis & Chappell 1987 (figures seen)';
const GORZULA = 'Gorzula 1997 (figures seen)';

/** Follicles from this diameter on are large (published, seen as a figure): ovulation is near. */
export const LARGE_FOLLICLE_MM = 20;

/** The young shed for the first time so many days after they hatch. */
const FIRST_SHED: Omit<Step, 'from'> = {
  to: 'first shed',
  days: [7, 14],
  mark: 'C',
  source: PRACTICE,
  weak: false,
};

/** The species whose calendar is known; any other one is followed without windows until the site has dates of its own. */
export const BREEDING: readonly BreedingSpecies[] = [
  {
    name: 'Python regius',
    bears: 'eggs',
    steps: [
      step('ovulation', 'pre-lay shed', [14, 22], PRACTICE, true),
      step('pre-lay shed', 'laid', [28, 32], `${PRACTICE}; elsewhere 30–50`, true),
      { from: 'laid', to: 'hatched', days: [58, 70], mark: 'S', source: ELLIS, weak: false },
      { ...FIRST_SHED, from: 'hatched' },
    ],
    clutch: { range: [4, 15], mean: 8.1, mark: 'S', source: ELLIS },
    hatchlingG: { range: [25, 90], mean: null, mark: 'S', source: GORZULA },
    pairing: { from: 11, to: 3, mark: 'C', source: PRACTICE },
  },
  {
    name: 'Pantherophis guttatus',
    bears: 'eggs',
    steps: [
      { from: 'lock', to: 'laid', days: [35, 45], mark: 'S', source: `${SHEETS}: about 40 days`, weak: false },
      { from: 'laid', to: 'hatched', days: [60, 65], mark: 'S', source: SHEETS, weak: false },
      { ...FIRST_SHED, from: 'hatched' },
    ],
    clutch: { range: [10, 30], mean: null, mark: 'S', source: SHEETS },
    hatchlingG: null,
    pairing: null,
  },
  {
    name: 'Heterodon nasicus',
    bears: 'eggs',
    steps: [
      { from: 'laid', to: 'hatched', days: [52, 64], mark: 'S', source: SHEETS, weak: false },
      { ...FIRST_SHED, from: 'hatched' },
    ],
    clutch: { range: [4, 23], mean: null, mark: 'S', source: SHEETS },
    hatchlingG: null,
    pairing: null,
  },
  boa('Boa imperator'),
  boa('Boa constrictor'),
];

/** What is known of a species' breeding; undefined for one that is not in the list. */
export function breedingOf(species: string): BreedingSpecies | undefined {
  return BREEDING.find((one) => one.name === species);
}

function boa(name: string): BreedingSpecies {
  return {
    name,
    bears: 'live young',
    steps: [
      step('ovulation', 'pre-lay shed', [14, 21], PRACTICE, false),
      step('ovulation', 'born', [100, 120], PRACTICE, false),
      { ...FIRST_SHED, from: 'born' },
    ],
    clutch: null,
    hatchlingG: null,
    pairing: null,
  };
}

function step(from: Milestone, to: Milestone, days: readonly [number, number], source: string, weak: boolean): Step {
  return { from, to, days, mark: 'C', source, weak };
}
