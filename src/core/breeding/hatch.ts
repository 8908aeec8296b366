import type { AnimalRecord } from '../animal/index.ts';
import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import type { ClutchRecord, Facility } from '../facility/index.ts';
import {
  type LocusTable,
  outcomesOf,
  printTraits,
  sayTrade,
  type Traits,
  traitsOfYoung,
  type YoungLook,
  youngLooks,
} from '../genetics/index.ts';
import type { Id } from '../ids.ts';
import { lociFor, type PlannedPairing, planPairing } from '../lineage/index.ts';
import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { decideClutch } from './decideClutch.ts';
import { youngOf } from './observed.ts';

/** What a clutch can hold by its parents' records. */
export interface ClutchForecast {
  readonly pairing: PlannedPairing;
  readonly looks: readonly YoungLook[];
  /** How many looks there are in all. */
  readonly count: bigint;
}

/** Looks that are offered to pick from at hatching; rarer ones are typed. */
export const MOST_LOOKS = 60;

/** The looks that a clutch’s young can have. Errors: `clutch-sire-unknown` and those of a pairing. */
export function forecastOf(facility: Facility, clutch: ClutchRecord): Result<ClutchForecast> {
  if (clutch.sire === null) return refuse('clutch-sire-unknown', {});
  const pairing = planPairing(facility, clutch.sire, clutch.dam);
  if (!pairing.ok) return pairing;
  const { looks, count } = youngLooks(outcomesOf(pairing.value.cross), pairing.value.loci, MOST_LOOKS);
  return ok({ pairing: pairing.value, looks, count });
}

/** Young of one look as they are entered at hatching: a predicted look, or traits that were typed. */
export type Hatchlings =
  | { readonly count: number; readonly look: YoungLook }
  | { readonly count: number; readonly typed: Traits };

/** A hatch-out: the young with their records, and how many that could not be predicted. */
export interface HatchOut {
  readonly decision: Decision;
  /** The new records’ ids, in the order of the groups. */
  readonly young: readonly Id[];
}

/** What a hatch-out needs besides its groups. */
export interface HatchSetting {
  readonly moment: Moment;
  /** No more will come of the clutch. */
  readonly last?: boolean;
  /** Gives each young an id of its own. */
  mint(): Id;
}

/**
 * Hatches a clutch, or a part of it, in one step: its count, and for each young a record with its day, parents, clutch, number, and traits
 * with their conditional chances. A look that the parents cannot have given is kept as it was seen, with a note on
 * the young and on the clutch. All drafts go in together. The young of a litter, whose birth is written already, get their
 * records only; more than were born are refused (`litter-too-many`). Refused or asked about as {@link decideClutch} does; errors of
 * the trait code.
 */
export function hatchOut(
  facility: Facility,
  clutch: ClutchRecord,
  groups: readonly Hatchlings[],
  { moment, last = false, mint }: HatchSetting,
): Result<HatchOut> {
  const dam = facility.animals.get(clutch.dam);
  if (dam === undefined) return refuse('unknown-id', { id: clutch.dam });
  const hatched = groups.reduce((sum, one) => sum + one.count, 0);
  const decision =
    clutch.bears === 'eggs'
      ? decideClutch(facility, clutch, { do: 'hatched', hatched, last }, moment)
      : litterDecision(facility, clutch, hatched, moment);
  if (decision.kind === 'refused') return ok({ decision, young: [] });
  const { loci } = lociFor(facility, dam.species);
  const numbers = numbersFrom(facility, moment.day.slice(2, 4));
  const [drafts, young]: [EventDraft[], Id[]] = [[...decision.drafts, ...siredDraft(facility, clutch, moment)], []];
  for (const group of groups) {
    const read = 'typed' in group ? ok({ traits: group.typed, unsaid: [] }) : traitsOfYoung(group.look, loci, null);
    if (!read.ok) return read;
    for (let nth = 0; nth < group.count; nth++) {
      const id = mint();
      young.push(id);
      drafts.push(...youngDrafts({ id, clutch, dam, traits: read.value.traits, loci }, numbers(), moment));
      drafts.push(...noteDrafts(id, clutch, 'typed' in group, read.value.unsaid, moment));
    }
  }
  return ok({ decision: { ...decision, drafts }, young });
}

/** The birth is written; what is decided is whether so many young can still get a record. */
function litterDecision(facility: Facility, clutch: ClutchRecord, young: number, { day, today }: Moment): Decision {
  const refused = (why: Problem): Decision => ({ kind: 'refused', problem: why });
  if (day > today) return refused(problem('date-future', { day: sayDayShort(day) }));
  if (!Number.isInteger(young) || young < 0) return refused(problem('count-whole', {}));
  if (day < clutch.laidOn)
    return refused(problem('before-laying', { what: 'this', day: sayDayShort(day), laid: sayDayShort(clutch.laidOn) }));
  const born = clutch.hatched ?? 0;
  const entered = youngOf(facility, clutch).length;
  if (young + entered > born) return refused(problem('litter-too-many', { young, born, entered }));
  return { kind: 'accepted', drafts: [], said: `${young} young entered` };
}

/** A sire that was chosen at hatching is the clutch’s from then on, not only the young’s. */
function siredDraft({ clutches }: Facility, { id, sire }: ClutchRecord, { day }: Moment): readonly EventDraft[] {
  const known = clutches.get(id);
  if (known === undefined || known.sire === sire) return [];
  const payload = sire === null ? {} : { sire };
  return [{ kind: 'clutch-sired', subjects: [id], payload, day }];
}

interface OneYoung {
  readonly id: Id;
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord;
  readonly traits: Traits;
  readonly loci: LocusTable;
}

function youngDrafts(young: OneYoung, number: string | null, { day }: Moment): readonly EventDraft[] {
  const { id, clutch, dam, traits, loci } = young;
  const payload = {
    species: dam.species,
    sex: 'unsexed' as const,
    hatchedOn: day,
    dam: clutch.dam,
    clutch: clutch.id,
    ...(clutch.sire !== null && { sire: clutch.sire }),
    ...(number !== null && { number }),
  };
  const code = printTraits(traits);
  return [
    { kind: 'animal-added', subjects: [id], payload, day },
    { kind: 'traits-set', subjects: [id], payload: { code, words: sayTrade(traits, loci).long }, day },
  ];
}

function noteDrafts(
  id: Id,
  clutch: ClutchRecord,
  isTyped: boolean,
  unsaid: readonly string[],
  { day }: Moment,
): readonly EventDraft[] {
  const notes: EventDraft[] = [];
  const note = (words: string): void => {
    notes.push({ kind: 'note-made', subjects: [id, clutch.id], payload: { words }, day });
  };
  if (isTyped) note('Look entered by hand: it was not picked from those that the parents’ records can give.');
  if (unsaid.length > 0) note(`The trait code cannot write what is possible at ${unsaid.join(', ')}.`);
  return notes;
}

/** The next numbers of the year, where the site numbers its animals as `26-041`; else none. */
function numbersFrom({ animals }: Facility, year: string): () => string | null {
  const pattern = /^(\d\d)-(\d+)$/;
  let last = 0;
  let width = 0;
  for (const { number } of animals.values()) {
    const found = pattern.exec(number ?? '');
    if (found === null) continue;
    width = Math.max(width, found[2]?.length ?? 0);
    if (found[1] === year) last = Math.max(last, Number(found[2]));
  }
  return () => (width === 0 ? null : `${year}-${String(++last).padStart(width, '0')}`);
}
