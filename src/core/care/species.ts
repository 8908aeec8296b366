import type { Mark } from '../stock/index.ts';

/** One band of a species' feed plan: below this mass, so much of the body mass every so many days. */
export interface FeedBand {
  /** The band ends below this mass; null is the last one. */
  readonly belowG: number | null;
  readonly percent: readonly [number, number];
  readonly everyDays: readonly [number, number];
  readonly mark: Mark;
  readonly source: string;
}

/** What the tool knows of a species. Every figure is a prior that the site may change. */
export interface Species {
  readonly name: string;
  readonly tradeName: string;
  readonly shortName: string;
  readonly preyKind: 'mouse' | 'rat';
  /** Below this mass an animal is young: weighed more often, fed larger shares. */
  readonly adultFromG: number;
  readonly bands: readonly FeedBand[];
  /** Expected loss in percent a day of an adult that fasts, where it was measured. */
  readonly fastingLossPercentPerDay: { readonly adult: number; readonly source: string } | null;
}

const PRACTICE = 'common practice, no source';
const MCCUE = 'McCue 2007, Zoology: 18.3 % in 168 days';

/** Rule CARE-PLAN: feed plans by species. A species that is not here has no default: the keeper's own plan is asked for. */
export const SPECIES: readonly Species[] = [
  {
    name: 'Python regius',
    tradeName: 'ball python',
    shortName: 'P. regius',
    preyKind: 'rat',
    adultFromG: 1000,
    bands: [
      band(200, [10, 15], [5, 7]),
      band(500, [8, 15], [7, 10]),
      band(1000, [7, 12], [7, 14]),
      band(null, [5, 10], [14, 30]),
    ],
    fastingLossPercentPerDay: { adult: 0.12, source: MCCUE },
  },
  {
    name: 'Pantherophis guttatus',
    tradeName: 'corn snake',
    shortName: 'P. guttatus',
    preyKind: 'mouse',
    adultFromG: 150,
    bands: [
      {
        ...band(30, [15, 40], [5, 7]),
        mark: 'S',
        source: 'Penning 2012: 20–40 % without growth penalty; lower end common practice',
      },
      band(150, [10, 20], [7, 8]),
      band(null, [5, 10], [10, 21]),
    ],
    fastingLossPercentPerDay: null,
  },
  {
    name: 'Boa imperator',
    tradeName: 'boa',
    shortName: 'B. imperator',
    preyKind: 'rat',
    adultFromG: 2000,
    bands: [band(300, [7, 12], [10, 14]), band(2000, [5, 10], [14, 21]), band(null, [3, 7], [21, 45])],
    fastingLossPercentPerDay: null,
  },
  {
    name: 'Heterodon nasicus',
    tradeName: 'western hognose',
    shortName: 'H. nasicus',
    preyKind: 'mouse',
    adultFromG: 30,
    bands: [band(30, [10, 25], [5, 7]), band(null, [8, 15], [7, 14])],
    fastingLossPercentPerDay: null,
  },
  {
    name: 'Morelia spilota',
    tradeName: 'carpet python',
    shortName: 'M. spilota',
    preyKind: 'rat',
    adultFromG: 200,
    bands: [band(200, [10, 15], [7, 10]), band(null, [5, 10], [14, 28])],
    fastingLossPercentPerDay: null,
  },
  {
    name: 'Malayopython reticulatus',
    tradeName: 'reticulated python',
    shortName: 'M. reticulatus',
    preyKind: 'rat',
    adultFromG: 1000,
    bands: [band(1000, [8, 15], [7, 10]), band(null, [3, 10], [14, 45])],
    fastingLossPercentPerDay: null,
  },
  {
    name: 'Xenopeltis unicolor',
    tradeName: 'sunbeam snake',
    shortName: 'X. unicolor',
    preyKind: 'mouse',
    adultFromG: 150,
    bands: [{ ...band(null, [5, 10], [7, 14]), source: `${PRACTICE}, weak` }],
    fastingLossPercentPerDay: null,
  },
];

const BY_NAME = new Map(SPECIES.map((one) => [one.name.toLowerCase(), one]));

/** The species of that scientific name (case does not matter), or undefined. */
export function speciesOf(name: string): Species | undefined {
  return BY_NAME.get(name.trim().toLowerCase());
}

/** The band that a mass falls into. */
export function bandFor(species: Species, massG: number): FeedBand | undefined {
  return species.bands.find((one) => one.belowG === null || massG < one.belowG);
}

/** Rule CARE-WEIGH: how often an animal is weighed, in days: hatchlings 14, growers 30, adults 90 (common practice, no source). */
export function weighEveryDays(species: Species | undefined, massG: number): number {
  if (species === undefined) return 30;
  if (massG >= species.adultFromG) return 90;
  return massG < (species.bands[0]?.belowG ?? 0) ? 14 : 30;
}

function band(
  belowG: number | null,
  percent: readonly [number, number],
  everyDays: readonly [number, number],
): FeedBand {
  return { belowG, percent, everyDays, mark: 'C', source: PRACTICE };
}
