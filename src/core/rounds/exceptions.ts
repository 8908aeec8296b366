import { type AnimalRecord, sayAnimal, sayTask } from '../animal/index.ts';
import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import { standing } from '../events/effective.ts';
import type { EventOf, LogEvent, RoundTask, SiteEvent } from '../events/index.ts';
import { type Facility, taskOf } from '../facility/index.ts';
import type { EventId, Id } from '../ids.ts';
import { problem } from '../problems.ts';
import { deedDrafts, type PlaceTask, saysMore } from './deeds.ts';
import { groupOf } from './homes.ts';
import type { RoundLine } from './line.ts';
import { isAtPlace } from './placeLines.ts';

/** A line and its own history, which holds the events that are taken back. */
export interface LinePast {
  readonly line: RoundLine;
  /** The history of what is scanned for the line: its home, or its animal. */
  readonly history: readonly LogEvent[];
}

/**
 * Rule CARE-ROUND: one that was not done after all. A deed is taken back by a slip, written again without this home where it
 * was one for many, and the task counts as skipped; a meal is amended to refused, so that one meal stays one line.
 * Refused: `round-not-done` where nothing was done on that day.
 */
export function notDone(facility: Facility, past: LinePast, moment: Moment): Decision {
  const { line } = past;
  if (line.task === 'feeding') return offerTurned(past, 'refused', moment);
  const back = takenBack(facility, past, moment);
  if (back.length === 0) return nothingDone(line, moment);
  return { kind: 'accepted', drafts: [...back, skipDraft(line, '', moment)], said: `not done: ${sayTask(line.task)}` };
}

/** Done, or done after all: the skip is taken back and the deed written; a refused meal becomes a taken one again. */
export function doneAfterAll(past: LinePast, moment: Moment): Decision {
  const { line, history } = past;
  if (line.task === 'feeding' && line.skip === null) return offerTurned(past, 'taken', moment);
  if (!isAtPlace(line.task)) return nothingDone(line, moment);
  const slips = skipsOf(history, line, moment).map((skip) => undone(skip, moment));
  const deeds = deedDrafts([line], line.task as PlaceTask, moment.day);
  const said = slips.length === 0 ? `${sayTask(line.task)} done` : `done after all: ${sayTask(line.task)}`;
  return { kind: 'accepted', drafts: [...slips, ...deeds], said };
}

/** What a line that is passed over on purpose writes; one that was skipped already gets the reason added. */
export function skipLine({ line, history }: LinePast, why: string, moment: Moment): Decision {
  const before = skipsOf(history, line, moment).at(-1);
  const said = `skipped: ${sayTask(line.task)}${why.trim() === '' ? '' : ` (${why.trim()})`}`;
  if (moment.day > moment.today)
    return { kind: 'refused', problem: problem('date-future', { day: sayDayShort(moment.day) }) };
  const drafts = [before === undefined ? skipDraft(line, why, moment) : reasonAdded(before, why, moment)];
  return { kind: 'accepted', drafts, said };
}

/** The skip of a day taken back, so that the line is open again; nothing where none stands. */
export function skipTakenBack({ line, history }: LinePast, moment: Moment): readonly EventDraft[] {
  return skipsOf(history, line, moment).map((skip) => undone(skip, moment));
}

/** What somebody saw of an animal. */
export interface Seen {
  readonly animal: AnimalRecord;
  readonly well: boolean;
  readonly words: string;
}

/**
 * Rule CARE-LOOK: a look at one animal: well, or to be looked at again with words; its home is taken out of the day’s look
 * at many. Refused: `look-words` without words.
 */
export function lookedAt(facility: Facility, past: LinePast, { animal, well, words }: Seen, moment: Moment): Decision {
  const said = words.trim().slice(0, 2000);
  if (!well && said === '')
    return { kind: 'refused', problem: problem('look-words', { animal: sayAnimal(animal) }, 'words') };
  const place = past.line.place === null ? [] : [past.line.place.id];
  const payload = { well, ...(said !== '' && { words: said }) };
  const look: EventDraft = { kind: 'health-looked', subjects: [animal.id, ...place], payload, day: moment.day };
  const back = well ? [] : takenBack(facility, past, moment);
  return { kind: 'accepted', drafts: [...back, look], said: well ? 'looked well' : `look again: ${said}` };
}

/** An offer of the round that turns out otherwise: the offer itself is amended, so that one meal stays one line. */
export function offerAmended(
  animal: AnimalRecord,
  offer: { readonly id: EventId; readonly payload: object },
  outcome: 'taken' | 'refused',
  { day }: Pick<Moment, 'day'>,
): EventDraft {
  const payload = { ...offer.payload, outcome };
  return { kind: 'slip-made', subjects: [animal.id], payload: { corrects: offer.id, how: 'amend', payload }, day };
}

function offerTurned({ line, history }: LinePast, outcome: 'taken' | 'refused', moment: Moment): Decision {
  const [animal] = line.animals;
  const offer = standing(history).findLast(
    (event): event is EventOf<'prey-offered'> => event.kind === 'prey-offered' && event.day === moment.day,
  );
  if (animal === undefined || offer === undefined) return nothingDone(line, moment);
  return { kind: 'accepted', drafts: [offerAmended(animal, offer, outcome, moment)], said: `${outcome} instead` };
}

/** The day's deeds of the task taken back at this home, and written again for the others that they were about. */
function takenBack(facility: Facility, { line, history }: LinePast, moment: Moment): readonly EventDraft[] {
  const home = line.place?.id ?? line.of;
  const gone = new Set<Id>([home, ...line.animals.map((animal) => animal.id)]);
  const group = groupOf(facility, home);
  return deedsOf(history, home, line.task, moment).flatMap((deed) => {
    const rest = deed.subjects.filter((id) => !gone.has(id));
    const again = { kind: deed.kind, subjects: rest, payload: deed.payload, day: deed.day } as EventDraft;
    return [undone(deed, moment), ...(saysMore(facility, rest, group) ? [again] : [])];
  });
}

function deedsOf(history: readonly LogEvent[], home: Id, task: RoundTask, { day }: Moment): readonly SiteEvent[] {
  return standing(history).filter(
    (event) => event.day === day && event.subjects.includes(home) && taskOf(event) === task,
  );
}

function skipsOf(history: readonly LogEvent[], line: RoundLine, { day }: Moment): readonly EventOf<'task-skipped'>[] {
  return standing(history).filter(
    (event): event is EventOf<'task-skipped'> =>
      event.kind === 'task-skipped' && event.day === day && event.payload.task === line.task,
  );
}

function skipDraft({ task, of }: RoundLine, why: string, { day }: Moment): EventDraft {
  const words = why.trim().slice(0, 200);
  return { kind: 'task-skipped', subjects: [of], payload: { task, ...(words !== '' && { why: words }) }, day };
}

function reasonAdded(skip: EventOf<'task-skipped'>, why: string, { day }: Moment): EventDraft {
  const words = why.trim().slice(0, 200);
  const payload = { task: skip.payload.task, ...(words !== '' && { why: words }) };
  return { kind: 'slip-made', subjects: skip.subjects, payload: { corrects: skip.id, how: 'amend', payload }, day };
}

function undone({ id, subjects }: SiteEvent, { day }: Moment): EventDraft {
  return { kind: 'slip-made', subjects, payload: { corrects: id, how: 'undo' }, day };
}

function nothingDone(line: RoundLine, { day }: Moment): Decision {
  const [animal] = line.animals;
  const what = line.place?.name ?? (animal === undefined ? line.of : sayAnimal(animal));
  return {
    kind: 'refused',
    problem: problem('round-not-done', { what, task: sayTask(line.task), day: sayDayShort(day) }),
  };
}
