import { type AnimalRecord, lastWeight, type SeasonMark } from '../animal/index.ts';
import { type Day, daysBetween, sayDayShort } from '../days.ts';
import type { ClutchRecord, Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { breedingOf, LARGE_FOLLICLE_MM, type Milestone, type Step } from './calendar.ts';
import { endedSeasons, isEnd, marksOfSeason } from './marks.ts';
import { MARK_OF, type Spans, spansOf } from './spans.ts';
import { type Window, windowOf } from './windows.ts';

/** How far a female is. `resting`: nothing of this season is logged. */
export type Stage =
  | 'resting'
  | 'paired'
  | 'locked'
  | 'follicles'
  | 'ovulated'
  | 'pre-lay shed'
  | 'laid'
  | 'born'
  | 'hatched';

/** A female's season on a day. */
export interface FemaleSeason {
  readonly animal: AnimalRecord;
  readonly stage: Stage;
  readonly since: Day | null;
  readonly marks: readonly SeasonMark[];
  /** Who she was paired with this season, the latest first. */
  readonly mates: readonly Id[];
  /** Who is with her now. */
  readonly with: readonly Id[];
  /** Her clutch of this season, where there is one. */
  readonly clutch: ClutchRecord | null;
  /** What is to be expected next, the nearest first. */
  readonly next: readonly Window[];
  /** What the stage asks of her keeper, in words with their rule. */
  readonly care: readonly string[];
}

/** How windows are found for a whole site without walking the log for each female again. */
export type SpansFor = (species: string, step: Step) => Spans;

/** The site's spans, each worked out once. */
export function siteSpans(facility: Facility): SpansFor {
  const known = new Map<string, Spans>();
  return (species, step) => {
    const key = `${species}\u0000${step.from}\u0000${step.to}`;
    const spans = known.get(key) ?? spansOf(facility, species, step);
    known.set(key, spans);
    return spans;
  };
}

/** A female's season: her stage, her windows, and what follows for her care. */
export function seasonOf(
  facility: Facility,
  animal: AnimalRecord,
  on: Day,
  spansFor: SpansFor = siteSpans(facility),
): FemaleSeason {
  const marks = marksOnBoard(facility, animal, on);
  const clutch = clutchOf(facility, animal, marks);
  const stage = stageOf(marks, clutch);
  const since = stage === 'hatched' ? (clutch?.hatchedOn ?? null) : (lastOf(marks, stage)?.day ?? null);
  const mates = [
    ...new Set(marks.toReversed().flatMap((mark) => (mark.with === null || isEnd(mark) ? [] : [mark.with]))),
  ];
  return {
    animal,
    stage,
    since,
    marks,
    mates,
    with: animal.together.map((one) => one.with),
    clutch,
    next: windowsOf(facility, { animal, marks, clutch }, spansFor),
    care: careOf(animal, stage, marks),
  };
}

/** Every female that has a season on a day, those whose next window is nearest first, resting ones after them. */
export function seasonBoard(facility: Facility, on: Day): readonly FemaleSeason[] {
  const spansFor = siteSpans(facility);
  const females = [...facility.animals.values()].filter((one) => one.sex === 'female' && one.left === null);
  const all = females.map((one) => seasonOf(facility, one, on, spansFor)).filter((one) => one.stage !== 'resting');
  const key = (one: FemaleSeason): string => one.next[0]?.from ?? `9${one.since ?? ''}`;
  return all.sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : a.animal.id < b.animal.id ? -1 : 1));
}

/** What falls into a span of days, or should have come before it and has not. */
export interface SeasonTask {
  readonly female: AnimalRecord;
  readonly clutch: ClutchRecord | null;
  readonly window: Window;
  /** Days since the window ended; 0 while it is open. */
  readonly lateDays: number;
}

/** What to look for in the days from `on` to `until`, late ones first. */
export function seasonTasks(board: readonly FemaleSeason[], on: Day, until: Day): readonly SeasonTask[] {
  return board
    .flatMap(({ animal, clutch, next }) =>
      next
        .filter((window) => window.from <= until)
        .map((window) => ({ female: animal, clutch, window, lateDays: Math.max(0, daysBetween(window.to, on)) })),
    )
    .sort((a, b) => b.lateDays - a.lateDays || (a.window.from < b.window.from ? -1 : 1));
}

/** So long after the hatching a clutch stays on the board: its young shed and begin to feed. */
const AFTER_HATCH_DAYS = 30;
/** An incubation that lasts longer than this was not ended in the log. */
const LONGEST_INCUBATION_DAYS = 150;

/** A clutch in the incubator keeps its season on the board although the card has room for the next one. */
function marksOnBoard(facility: Facility, animal: AnimalRecord, on: Day): readonly SeasonMark[] {
  const current = marksOfSeason(animal, on);
  if (current.length > 0) return current;
  const last = endedSeasons(animal).at(-1) ?? [];
  const clutch = clutchOf(facility, animal, last);
  if (clutch === null || clutch.laidOn > on) return [];
  const isOpen =
    clutch.hatchedOn === null
      ? daysBetween(clutch.laidOn, on) <= LONGEST_INCUBATION_DAYS
      : daysBetween(clutch.hatchedOn, on) <= AFTER_HATCH_DAYS;
  return isOpen ? last : [];
}

function clutchOf(facility: Facility, animal: AnimalRecord, marks: readonly SeasonMark[]): ClutchRecord | null {
  const end = marks.findLast(isEnd);
  if (end === undefined) return null;
  return [...facility.clutches.values()].find((one) => one.dam === animal.id && one.laidOn === end.day) ?? null;
}

const STAGE_OF: Readonly<Record<SeasonMark['kind'], Stage>> = {
  paired: 'paired',
  lock: 'locked',
  follicles: 'follicles',
  ovulation: 'ovulated',
  'pre-lay shed': 'pre-lay shed',
  laid: 'laid',
  born: 'born',
};
/** The later of these is what she is: a pairing after the ovulation does not take her back. */
const ORDER: readonly Stage[] = ['paired', 'locked', 'follicles', 'ovulated', 'pre-lay shed', 'laid', 'born'];

function stageOf(marks: readonly SeasonMark[], clutch: ClutchRecord | null): Stage {
  if (clutch !== null && clutch.bears === 'eggs' && clutch.hatchedOn !== null) return 'hatched';
  // Small follicles are no stage of their own: they only say that it is too early.
  const counting = marks.filter((mark) => mark.kind !== 'follicles' || (mark.largestMm ?? 0) >= LARGE_FOLLICLE_MM);
  const furthest = Math.max(-1, ...counting.map((mark) => ORDER.indexOf(STAGE_OF[mark.kind])));
  return ORDER[furthest] ?? 'resting';
}

function lastOf(marks: readonly SeasonMark[], stage: Stage): SeasonMark | undefined {
  return marks.findLast((mark) => STAGE_OF[mark.kind] === stage);
}

interface Followed {
  readonly animal: AnimalRecord;
  readonly marks: readonly SeasonMark[];
  readonly clutch: ClutchRecord | null;
}

function windowsOf(facility: Facility, followed: Followed, spansFor: SpansFor): readonly Window[] {
  const { animal } = followed;
  const steps = breedingOf(animal.species)?.steps ?? [];
  const windows = steps.flatMap((step) => {
    const began = dayOf(facility, followed, step.from);
    if (began === null || dayOf(facility, followed, step.to) !== null || isPassed(facility, followed, step)) return [];
    const spans = spansFor(animal.species, step);
    const others = [...spans].flatMap(([female, days]) => (female === animal.id ? [] : days));
    return [windowOf(step, began, others, spans.get(animal.id) ?? [])];
  });
  return windows.sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : 0));
}

/** A later milestone has come, so that nobody waits for this one any more. */
function isPassed(facility: Facility, followed: Followed, step: Step): boolean {
  const at = MILESTONES.indexOf(step.to);
  return MILESTONES.slice(at + 1).some((later) => dayOf(facility, followed, later) !== null);
}

const MILESTONES: readonly Milestone[] = ['lock', 'ovulation', 'pre-lay shed', 'laid', 'born', 'hatched', 'first shed'];

/** The day of a milestone in this season; the last one where it comes again, since a later lock counts. */
function dayOf(facility: Facility, { marks, clutch }: Followed, milestone: Milestone): Day | null {
  if (milestone === 'hatched') return clutch?.bears === 'eggs' ? (clutch.hatchedOn ?? null) : null;
  if (milestone === 'first shed') return firstShedOf(facility, clutch);
  return marks.findLast((mark) => mark.kind === MARK_OF[milestone])?.day ?? null;
}

/** The day on which the last of the living young has shed; null while one has not. */
function firstShedOf({ animals }: Facility, clutch: ClutchRecord | null): Day | null {
  if (clutch === null || clutch.hatchedOn === null) return null;
  const days = new Set(clutch.hatchings.map(({ day }) => day));
  const isOf = (one: AnimalRecord): boolean =>
    one.clutch === null
      ? one.dam === clutch.dam && one.hatchedOn !== null && days.has(one.hatchedOn)
      : one.clutch === clutch.id;
  const young = [...animals.values()].filter((one) => isOf(one) && one.left === null);
  const sheds = young.map((one) => one.firstShedOn);
  if (young.length === 0) return clutch.hatchedOn;
  return sheds.every((day) => day !== null) ? (sheds.reduce((a, b) => ((a ?? '') > (b ?? '') ? a : b)) ?? null) : null;
}

function careOf(animal: AnimalRecord, stage: Stage, marks: readonly SeasonMark[]): readonly string[] {
  const small = marks.findLast((mark) => mark.kind === 'follicles' && (mark.largestMm ?? 0) < LARGE_FOLLICLE_MM);
  switch (stage) {
    case 'ovulated':
    case 'pre-lay shed':
      return [
        'gravid: small meals or none, weigh weekly (CARE-GRAVID)',
        'leave her in peace; handle only if she must be',
      ];
    case 'laid':
    case 'born':
      return [
        `new weight baseline since ${stage === 'laid' ? 'laying' : 'the birth'}: no alarm of loss (CARE-LAYING)`,
        lastWeight(animal) === null ? 'weigh her empty now' : 'small meal within 1–7 days (CARE-LAYING)',
      ];
    case 'follicles':
      return [`follicles of ${LARGE_FOLLICLE_MM} mm and more: ovulation is near`];
    case 'paired':
    case 'locked':
      return small === undefined
        ? []
        : [`follicles were ${small.largestMm} mm on ${sayDayShort(small.day)}: still small`];
    case 'hatched':
    case 'resting':
      return [];
    default:
      return stage satisfies never;
  }
}
