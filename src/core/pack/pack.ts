import type { GrowthPlot } from '../care/index.ts';
import type { Day } from '../days.ts';
import type { Id } from '../ids.ts';
import type { Problem } from '../problems.ts';
import type { CountryProfile, PackField } from './profiles.ts';

/** One thing that is known, or not, of an animal. */
export interface PackFact {
  readonly field: PackField;
  readonly label: string;
  /** For people; “not recorded” where nobody wrote it. */
  readonly says: string;
  /** For programs: days as ISO 8601, otherwise as `says`. */
  readonly plain: string;
  /** False where nobody wrote it down. */
  readonly isKnown: boolean;
}

/** A row of a table; `by` is who wrote it. */
interface Written {
  readonly day: Day;
  readonly by: string;
}

/** A meal that was offered. */
export interface PackFeed extends Written {
  readonly prey: string;
  readonly count: number;
  readonly totalG: number | null;
  readonly taken: boolean;
}

/** A weighing; `doubted`: the entry check asked about it and it was confirmed. */
export interface PackWeight extends Written {
  readonly weightG: number;
  readonly doubted: boolean;
}

/** Something about its health, in short and in full. */
export interface PackTreatment extends Written {
  readonly what: string;
  readonly words: string;
}

/** Something that was cleaned where the animal lived. */
export interface PackCleaning extends Written {
  readonly what: string;
  readonly where: string;
}

/** A length, measured or guessed. */
export interface PackLength extends Written {
  readonly lengthMm: number;
  /** `whole length` or `snout to vent`. */
  readonly of: string;
  readonly guessed: boolean;
}

/** A look at its health. */
export interface PackLook extends Written {
  readonly well: boolean;
  readonly words: string;
}

/** Something that a keeper wrote. */
export interface PackNote extends Written {
  readonly words: string;
}

/** A task that was passed over on purpose, for the animal or where it lived. */
export interface PackSkip extends Written {
  readonly task: string;
  readonly why: string;
  readonly where: string;
}

/** A paper that was photographed; its picture stays in the log. */
export interface PackPaper extends Written {
  /** What it belongs to, in words; empty where it stands for itself. */
  readonly of: string;
  readonly words: string;
}

/** A move into a place, or off the site. */
export interface PackMove extends Written {
  readonly where: string;
}

/** One animal of the pack, every table oldest first. */
export interface PackAnimal {
  readonly id: Id;
  readonly display: string;
  readonly called: string;
  /** Every field once, in the order of the fields. */
  readonly facts: readonly PackFact[];
  readonly feeds: readonly PackFeed[];
  readonly weights: readonly PackWeight[];
  readonly lengths: readonly PackLength[];
  readonly treatments: readonly PackTreatment[];
  readonly looks: readonly PackLook[];
  readonly notes: readonly PackNote[];
  readonly papers: readonly PackPaper[];
  readonly skipped: readonly PackSkip[];
  readonly cleaning: readonly PackCleaning[];
  readonly moves: readonly PackMove[];
  readonly growth: GrowthPlot;
  /** A vet’s figures stand in its tables, so the caution has to stand by them. */
  readonly hasDoses: boolean;
}

/** Something that was asked for and is not in the pack, and why. */
export interface PackLeft {
  readonly id: string;
  readonly problem: Problem;
}

/** What an inspector gets: data only, read from the log and written nowhere. */
export interface Pack {
  readonly site: string;
  readonly profile: CountryProfile;
  /** The first and the last day that the tables tell of. */
  readonly from: Day;
  readonly on: Day;
  readonly animals: readonly PackAnimal[];
  readonly left: readonly PackLeft[];
  /** How many animals left the site before the first day, and are therefore not told of. */
  readonly gone: number;
}

/** Which animals: all that were here in those years, those of a place and what stands in it, or these. */
export type PackChoice =
  | { readonly of: 'all' }
  | { readonly of: 'place'; readonly place: Id }
  | { readonly of: 'only'; readonly ids: readonly Id[] };

/** What nobody wrote down is said, and not left open: a gap in a table looks like a fault of the printer. */
export const NOT_RECORDED = 'not recorded';
