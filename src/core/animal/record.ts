import type { Day } from '../days.ts';
import type { LastWritten, Payload } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import type { PrescriptionRecord } from './prescriptions.ts';

/** One offer of prey. `totalG` is null where nobody wrote grams and the prey is not in the list. */
export interface Offer {
  readonly day: Day;
  readonly prey: string;
  readonly count: number;
  readonly totalG: number | null;
  readonly taken: boolean;
}

/** One weighing. */
export interface Weighing {
  readonly day: Day;
  readonly weightG: number;
  /** True where the entry check asked about it and it was written all the same: nobody has weighed again since. */
  readonly doubted?: boolean;
}

/** A hold that a person placed and nobody has lifted. */
export interface PlacedHold {
  readonly reason: Payload<'hold-placed'>['reason'];
  readonly since: Day;
  readonly until: Day | null;
  readonly words: string | null;
}

/** A mark of the season: what people once ticked on the card. */
export interface SeasonMark {
  readonly kind: 'paired' | 'lock' | 'follicles' | 'ovulation' | 'pre-lay shed' | 'laid' | 'born';
  readonly day: Day;
  readonly with: Id | null;
  /** The largest follicle, where follicles were measured. */
  readonly largestMm?: number;
}

/** An animal that shares the tub for breeding since a day. */
export interface Together {
  readonly with: Id;
  readonly since: Day;
}

/** A length as last measured, per kind. */
export interface Measured {
  readonly day: Day;
  readonly lengthMm: number;
  readonly of: Payload<'animal-measured'>['of'];
  readonly guessed: boolean;
}

/** A look at the animal's health. */
export interface Look {
  readonly day: Day;
  readonly well: boolean;
  readonly words: string | null;
}

/** A paper that was photographed; its picture stays in the log, under this event. */
export interface KeptPaper {
  readonly id: EventId;
  readonly day: Day;
  /** The event that it belongs to, such as a prescription. */
  readonly of: EventId | null;
  readonly words: string | null;
}

/** A task that was passed over on purpose on a day. */
export interface Skip {
  readonly day: Day;
  readonly keeper: string;
  readonly why: string | null;
}

/** So many skips of a task are kept: rounds of past days are looked at, those of last year are not. */
const KEPT_SKIPS = 60;

/** Skips in the order of their days, one a day, with one more that happened after them. */
export function withSkip(skips: readonly Skip[] = [], skip: Skip): readonly Skip[] {
  const others = skips.at(-1)?.day === skip.day ? skips.slice(0, -1) : skips;
  return [...others, skip].slice(-KEPT_SKIPS);
}

/** The keeper's own plan; what it leaves out comes from the species. */
export type OwnPlan = Payload<'feed-plan-set'>;

/** What the log says of one animal. Plain JSON, so that a snapshot can hold it; nothing in it depends on today. */
export interface AnimalRecord {
  readonly id: Id;
  readonly addedOn: Day;
  readonly species: string;
  readonly name: string | null;
  readonly number: string | null;
  readonly sex: Payload<'animal-sexed'>['sex'];
  readonly hatchedOn: Day | null;
  readonly acquiredOn: Day | null;
  readonly source: string | null;
  /** The supplier's licence, and the papers that came with the animal. */
  readonly licence: string | null;
  readonly originPapers: string | null;
  readonly microchip: string | null;
  readonly sire: Id | null;
  readonly dam: Id | null;
  /** The clutch or litter that it comes from. */
  readonly clutch: Id | null;
  readonly traits: { readonly code: string; readonly words: string | null } | null;
  readonly flags: Payload<'animal-flagged'>['flags'];
  readonly place: Id | null;
  readonly movedOn: Day | null;
  readonly left: {
    readonly day: Day;
    readonly how: Payload<'animal-left'>['how'];
    readonly to: string | null;
    readonly cause: string | null;
  } | null;
  /** The latest length of each kind. */
  readonly lengths: readonly Measured[];
  readonly lastLook: Look | null;
  /** By task, the last time that it was passed over. */
  readonly skipped: Readonly<Record<string, readonly Skip[]>>;
  readonly papers: readonly KeptPaper[];
  readonly plan: OwnPlan | null;
  /** The latest offers, oldest first, at most {@link KEPT_OFFERS}. */
  readonly offers: readonly Offer[];
  readonly lastTaken: Offer | null;
  readonly mealsTaken: number;
  /** The latest weighings, oldest first, at most {@link KEPT_WEIGHTS}. */
  readonly weights: readonly Weighing[];
  /** Since this day weights are compared with each other: the first one, or the last laying. */
  readonly resetOn: Day | null;
  readonly peak: Weighing | null;
  readonly regurgitations: readonly Day[];
  readonly vetClearedOn: Day | null;
  /** How many of the regurgitations a vet has spoken of; counted, because both may happen on one day. */
  readonly regurgitationsCleared: number;
  readonly opaqueOn: Day | null;
  /** When a shed ended an opaque spell, so that a meal put off by it is due and not overdue. */
  readonly opaqueEndedOn: Day | null;
  readonly firstShedOn: Day | null;
  readonly lastShedOn: Day | null;
  readonly sheds: number;
  readonly holds: readonly PlacedHold[];
  readonly prescriptions: readonly PrescriptionRecord[];
  readonly cooling: { readonly from: Day; readonly to: Day | null } | null;
  readonly season: readonly SeasonMark[];
  readonly together: readonly Together[];
  /** The last day on which a pairing ended: a male rests from then. */
  readonly apartOn: Day | null;
  readonly gravidSince: Day | null;
  readonly laidOn: Day | null;
  /** On offer since a day, at the last price, in the smallest unit of the site's currency. */
  readonly offer: { readonly since: Day; readonly priceMinor: number; readonly words: string | null } | null;
  readonly saleTag: { readonly revision: string; readonly day: Day } | null;
  readonly printed: { readonly revision: string; readonly day: Day } | null;
  /** To ask “again?”. */
  readonly lastWritten: LastWritten;
}

/** Enough offers for every rule: a fast, two small meals and their neighbours. */
export const KEPT_OFFERS = 16;
/** Two years of monthly weighings. */
export const KEPT_WEIGHTS = 24;

/** The last weighing, or null. */
export function lastWeight(animal: AnimalRecord): Weighing | null {
  return animal.weights.at(-1) ?? null;
}

/** What people call the animal: name, else number, else id. */
export function sayAnimal(animal: AnimalRecord): string {
  return animal.name ?? animal.number ?? `${animal.id.slice(0, 4)}-${animal.id.slice(4)}`;
}

/** `1.0`, `0.1`, `0.0.1`: males.females.unsexed, as the trade counts. */
export function saySex(sex: AnimalRecord['sex']): string {
  return { male: '1.0', female: '0.1', unsexed: '0.0.1' }[sex];
}
