import { type AnimalRecord, lastWeight } from '../animal/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { type EventKind, minutesSince, type Payload } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { PREY_CLASSES, preyClass } from '../stock/index.ts';
import { WEIGHT_LIMITS_G } from '../units.ts';
import { lessBox, sayLessBox } from './box.ts';
import { nextFeedDue } from './due.ts';
import { plannedMeal } from './planned.ts';
import { checkWeighing } from './weight.ts';

/** An event before it gets its id, time, keeper, device and clock. */
export type EventDraft = {
  [K in EventKind]: {
    readonly kind: K;
    readonly subjects: readonly Id[];
    readonly payload: Payload<K>;
    readonly day: Day;
    /** Only where another draft of the same batch names this one. */
    readonly id?: EventId;
    /** The instant, RFC 3339 in UTC, only where the keeper said when; else it is the instant of writing, or noon of another day. */
    readonly at?: string;
  };
}[EventKind];

/** What a keeper can put on an animal, as a stamp or by touch. */
export type Action =
  | { readonly do: 'fed-as-planned' }
  | { readonly do: 'refused' }
  | {
      readonly do: 'fed';
      readonly prey: string;
      readonly count: number;
      readonly totalG?: number;
      readonly taken: boolean;
    }
  /** What the scale shows, and the box that comes off it. */
  | { readonly do: 'weighed'; readonly weightG: number; readonly boxG?: number }
  | { readonly do: 'opaque' }
  | { readonly do: 'shed'; readonly whole: boolean }
  | { readonly do: 'regurgitated'; readonly note?: string }
  | { readonly do: 'cleaned'; readonly how: 'spot' | 'full' }
  | { readonly do: 'water' }
  | {
      readonly do: 'moved';
      readonly to: Id;
      readonly toName: string;
      readonly livesThere: string | null;
      /** What is to be asked because of a quarantine; the move is made by whoever knows the places. */
      readonly quarantine?: Problem;
    }
  | { readonly do: 'vet-cleared'; readonly by: string; readonly words?: string }
  | { readonly do: 'note'; readonly words: string };

/** The answer to an action: written, to be asked about, or refused. Nothing is half done: the drafts go in together. */
export type Decision =
  | { readonly kind: 'accepted'; readonly drafts: readonly EventDraft[]; readonly said: string }
  | { readonly kind: 'asks'; readonly problem: Problem; readonly drafts: readonly EventDraft[]; readonly said: string }
  | { readonly kind: 'refused'; readonly problem: Problem };

/** When it is: the day of the event, today, and the milliseconds since 1970 for “again?”. */
export interface Moment {
  readonly day: Day;
  readonly today: Day;
  readonly nowMs: number;
}

/** Rule CARE-AGAIN: the same event on the same animal within 10 minutes is asked about. */
export const AGAIN_MINUTES = 10;

/** Decides what an action on an animal writes. Errors come as refusals or questions, each with its words. */
export function decide(animal: AnimalRecord, action: Action, moment: Moment): Decision {
  const wrongDay = dayFault(animal, moment);
  if (wrongDay !== null) return { kind: 'refused', problem: wrongDay };
  const decision = draftFor(animal, action, moment);
  if (decision.kind === 'refused') return decision;
  // That the card hangs on a wrong tub matters more than any other question.
  if (animal.left !== null)
    return asks(decision, problem('animal-gone', { day: sayDayShort(animal.left.day), how: animal.left.how }));
  if (decision.kind === 'asks') return decision;
  const doubt = again(animal, decision.drafts, moment);
  return doubt === null ? decision : asks(decision, doubt);
}

function asks({ drafts, said }: Exclude<Decision, { kind: 'refused' }>, doubt: Problem): Decision {
  return { kind: 'asks', problem: doubt, drafts, said };
}

function draftFor(animal: AnimalRecord, action: Action, moment: Moment): Decision {
  switch (action.do) {
    case 'fed-as-planned':
      return asPlanned(animal, moment, 'taken');
    case 'refused':
      return asPlanned(animal, moment, 'refused');
    case 'fed':
      return fed(animal, action, moment);
    case 'weighed':
      return weighed(animal, action, moment);
    case 'opaque':
      return accept([draft('opaque-seen', animal, moment, {})], 'opaque');
    case 'shed':
      return accept(
        [draft('shed-seen', animal, moment, { whole: action.whole })],
        action.whole ? 'shed' : 'shed, in pieces',
      );
    case 'regurgitated':
      return accept(
        [draft('regurgitation-seen', animal, moment, action.note ? { note: action.note } : {})],
        'regurgitated',
      );
    case 'cleaned':
      return atPlace(
        animal,
        { kind: 'place-cleaned', payload: { how: action.how } },
        moment,
        action.how === 'full' ? 'cleaned in full' : 'spot cleaned',
      );
    case 'water':
      return atPlace(animal, { kind: 'water-changed', payload: {} }, moment, 'water changed');
    case 'moved':
      return moved(animal, action, moment);
    case 'vet-cleared':
      return vetCleared(animal, action, moment);
    case 'note':
      return action.words.trim() === ''
        ? { kind: 'refused', problem: problem('note-empty') }
        : accept([draft('note-made', animal, moment, { words: action.words.trim() })], 'noted');
    default:
      action satisfies never;
      return { kind: 'refused', problem: problem('note-empty') };
  }
}

function asPlanned(animal: AnimalRecord, moment: Moment, outcome: 'taken' | 'refused'): Decision {
  const due = nextFeedDue(animal, moment.day);
  if (!due.ok) return { kind: 'refused', problem: due.problem };
  if (due.value.state === 'vet')
    return { kind: 'refused', problem: problem('vet-word-needed', { reason: due.value.hold?.reason ?? '' }) };
  const meal = plannedMeal(animal, moment.day);
  if (!meal.ok) return { kind: 'refused', problem: meal.problem };
  const { prey, count, eachG } = meal.value;
  const totalG = (count * (eachG[0] + eachG[1])) / 2;
  const decision = accept(
    [draft('prey-offered', animal, moment, { prey, count, totalG, outcome, asPlanned: true })],
    outcome === 'taken' ? 'fed as planned' : 'refused',
  );
  return held(decision, due.value.hold?.reason);
}

function fed(animal: AnimalRecord, action: Extract<Action, { do: 'fed' }>, moment: Moment): Decision {
  const found = preyClass(action.prey);
  const known = PREY_CLASSES.map((one) => one.id).join(', ');
  if (found === undefined) return { kind: 'refused', problem: problem('prey-unknown', { prey: action.prey, known }) };
  if (!Number.isInteger(action.count) || action.count < 1)
    return { kind: 'refused', problem: problem('not-positive', { what: 'count' }) };
  const wrong = action.totalG === undefined ? null : whatIsWrongWithGrams(action.totalG);
  if (wrong !== null) return { kind: 'refused', problem: wrong };
  const totalG = action.totalG ?? (action.count * (found.eachG[0] + found.eachG[1])) / 2;
  const outcome = action.taken ? 'taken' : 'refused';
  const decision = accept(
    [draft('prey-offered', animal, moment, { prey: action.prey, count: action.count, totalG, outcome })],
    `${outcome}: ${action.count} × ${found.name}`,
  );
  const due = nextFeedDue(animal, moment.day);
  return due.ok ? held(decision, due.value.hold?.reason) : decision;
}

function whatIsWrongWithGrams(totalG: number): Problem | null {
  if (!Number.isFinite(totalG)) return problem('not-finite', { what: 'weight of the prey' });
  if (totalG <= 0) return problem('not-positive', { what: 'weight of the prey' });
  return totalG > WEIGHT_LIMITS_G.most ? problem('prey-impossible', { totalG }) : null;
}

/** What did happen must be loggable, so a hold is a question; that the vet's word is missing is told in stronger words. */
function held(decision: Decision, reason: string | undefined): Decision {
  if (reason === undefined || decision.kind !== 'accepted') return decision;
  return asks(decision, problem('feed-on-hold', { reason }));
}

function weighed(animal: AnimalRecord, action: Extract<Action, { do: 'weighed' }>, moment: Moment): Decision {
  const possible = lessBox(action.weightG, action.boxG ?? null);
  if (!possible.ok) return { kind: 'refused', problem: possible.problem };
  const doubt = checkWeighing(animal, possible.value, moment.day);
  const shown = action.boxG === undefined ? `${possible.value} g` : sayLessBox(action.weightG, action.boxG);
  const said = `${lastWeight(animal) === null ? 'first weight' : 'weighed'} ${shown}`;
  if (doubt === null) return accept([draft('animal-weighed', animal, moment, { weightG: possible.value })], said);
  return {
    kind: 'asks',
    problem: doubt,
    drafts: [draft('animal-weighed', animal, moment, { weightG: possible.value, confirmed: true })],
    said,
  };
}

function moved(animal: AnimalRecord, action: Extract<Action, { do: 'moved' }>, moment: Moment): Decision {
  if (animal.place === action.to)
    return { kind: 'refused', problem: problem('moved-nowhere', { place: action.toName }) };
  const subjects = [animal.id, action.to];
  const move: EventDraft = { kind: 'animal-moved', subjects, payload: { to: action.to }, day: moment.day };
  const said = `moved to ${action.toName}`;
  const { livesThere, toName, quarantine } = action;
  const taken = livesThere === null ? null : problem('place-taken', { place: toName, animal: livesThere });
  const doubts = [quarantine ?? null, taken].filter((doubt) => doubt !== null);
  const [first] = doubts;
  if (first === undefined) return accept([move], said);
  return { kind: 'asks', problem: askedTogether(first, doubts.slice(1)), drafts: [move], said };
}

function vetCleared(animal: AnimalRecord, action: Extract<Action, { do: 'vet-cleared' }>, moment: Moment): Decision {
  const by = action.by.trim();
  if (by === '') return { kind: 'refused', problem: problem('vet-unnamed') };
  return accept(
    [draft('vet-cleared', animal, moment, action.words ? { by, words: action.words } : { by })],
    `cleared by ${by}`,
  );
}

/** Several doubts as one question, so that one answer is about all of them. */
export function askedTogether(first: Problem, more: readonly Problem[]): Problem {
  const all = [first, ...more];
  return { ...first, message: all.map((one) => one.message).join(' '), remedy: all.map((one) => one.remedy).join(' ') };
}

type AtPlace =
  | { readonly kind: 'place-cleaned'; readonly payload: Payload<'place-cleaned'> }
  | { readonly kind: 'water-changed'; readonly payload: Payload<'water-changed'> };

function atPlace(animal: AnimalRecord, what: AtPlace, moment: Moment, said: string): Decision {
  if (animal.place === null) return { kind: 'refused', problem: problem('place-missing') };
  const subjects = [animal.place, animal.id];
  return accept([{ ...what, subjects, day: moment.day } as EventDraft], said);
}

/** What is wrong with a day for an animal: it lies ahead, or before the animal was there. */
export function dayFault(animal: AnimalRecord, moment: Moment): Problem | null {
  if (moment.day > moment.today) return problem('date-future', { day: sayDayShort(moment.day) });
  const since = [animal.hatchedOn, animal.acquiredOn].filter((day) => day !== null).sort()[0];
  return since !== undefined && moment.day < since
    ? problem('date-before-life', { day: sayDayShort(moment.day), since: sayDayShort(since) })
    : null;
}

function again(animal: AnimalRecord, drafts: readonly EventDraft[], moment: Moment): Problem | null {
  for (const one of drafts) {
    const since = minutesSince(animal.lastWritten, one.kind, moment.nowMs);
    if (one.kind !== 'note-made' && one.kind !== 'animal-moved' && Math.abs(since) < AGAIN_MINUTES)
      return problem('again-so-soon', { minutes: Math.max(1, Math.round(since)) });
  }
  return null;
}

function accept(drafts: readonly EventDraft[], said: string): Decision {
  return { kind: 'accepted', drafts, said };
}

function draft<K extends EventKind>(kind: K, animal: AnimalRecord, moment: Moment, payload: Payload<K>): EventDraft {
  return { kind, subjects: [animal.id], payload, day: moment.day } as EventDraft;
}
