import type { Payload } from '../src/core/index.ts';

type Range = readonly [low: number, high: number];

/** How a species lives in this house. Figures are common practice without a source, or our own choice. */
export interface Kind {
  readonly species: string;
  readonly maleG: Range;
  readonly femaleG: Range;
  readonly hatchlingG: Range;
  /** Above these masses it moves to a middle and to a large tub. */
  readonly middleFromG: number;
  readonly largeFromG: number;
  /** Days between sheds of an adult; the young shed twice as often. */
  readonly shedDays: number;
  readonly fussy: number;
  readonly hasTraits: boolean;
  /** The keeper's own plan, needed where core has none for the species. */
  readonly plan: Payload<'feed-plan-set'> | null;
  /** How many of each come in at the start. */
  readonly start: {
    readonly females: number;
    readonly males: number;
    readonly growers: number;
    readonly young: number;
  };
}

const NEVER = 1_000_000;

export const KINDS: readonly Kind[] = [
  {
    species: 'Python regius',
    maleG: [1150, 1700],
    femaleG: [1700, 2700],
    hatchlingG: [52, 82],
    middleFromG: 240,
    largeFromG: 1250,
    shedDays: 84,
    fussy: 0.09,
    hasTraits: true,
    plan: null,
    start: { females: 74, males: 22, growers: 86, young: 26 },
  },
  {
    species: 'Pantherophis guttatus',
    maleG: [380, 560],
    femaleG: [420, 700],
    hatchlingG: [6, 9],
    middleFromG: 110,
    largeFromG: NEVER,
    shedDays: 62,
    fussy: 0.03,
    hasTraits: true,
    plan: null,
    start: { females: 20, males: 10, growers: 22, young: 12 },
  },
  {
    species: 'Boa imperator',
    maleG: [2600, 4200],
    femaleG: [4200, 7800],
    hatchlingG: [45, 65],
    middleFromG: 320,
    largeFromG: 1800,
    shedDays: 95,
    fussy: 0.05,
    hasTraits: true,
    plan: null,
    start: { females: 8, males: 5, growers: 12, young: 0 },
  },
  {
    species: 'Heterodon nasicus',
    maleG: [70, 105],
    femaleG: [190, 360],
    hatchlingG: [5, 8],
    middleFromG: 150,
    largeFromG: NEVER,
    shedDays: 60,
    fussy: 0.07,
    hasTraits: true,
    plan: null,
    start: { females: 14, males: 7, growers: 16, young: 6 },
  },
  {
    species: 'Morelia spilota',
    maleG: [1400, 2100],
    femaleG: [1900, 3200],
    hatchlingG: [22, 30],
    middleFromG: 180,
    largeFromG: 1200,
    shedDays: 75,
    fussy: 0.06,
    hasTraits: false,
    plan: null,
    start: { females: 5, males: 3, growers: 8, young: 0 },
  },
  {
    species: 'Malayopython reticulatus',
    maleG: [12_000, 18_000],
    femaleG: [30_000, 46_000],
    hatchlingG: [110, 150],
    middleFromG: 400,
    largeFromG: 1500,
    shedDays: 85,
    fussy: 0.03,
    hasTraits: false,
    plan: null,
    start: { females: 1, males: 1, growers: 3, young: 0 },
  },
  {
    species: 'Xenopeltis unicolor',
    maleG: [380, 520],
    femaleG: [420, 640],
    hatchlingG: [14, 20],
    middleFromG: 120,
    largeFromG: NEVER,
    shedDays: 70,
    fussy: 0.1,
    hasTraits: false,
    plan: null,
    start: { females: 1, males: 1, growers: 1, young: 0 },
  },
  {
    species: 'Lampropeltis californiae',
    maleG: [450, 700],
    femaleG: [420, 650],
    hatchlingG: [9, 13],
    middleFromG: 110,
    largeFromG: NEVER,
    shedDays: 60,
    fussy: 0.02,
    hasTraits: false,
    plan: { percent: [7, 14], everyDays: [8, 14], note: 'Our own plan; not reviewed by a vet.' },
    start: { females: 3, males: 2, growers: 7, young: 0 },
  },
  {
    species: 'Epicrates cenchria',
    maleG: [1200, 1800],
    femaleG: [1600, 2400],
    hatchlingG: [28, 38],
    middleFromG: 250,
    largeFromG: 1100,
    shedDays: 80,
    fussy: 0.05,
    hasTraits: false,
    plan: { percent: [4, 9], everyDays: [12, 21], note: 'Our own plan; not reviewed by a vet.' },
    start: { females: 2, males: 2, growers: 3, young: 0 },
  },
];
