import type { Facility, Id, LogEvent, Moment, RoundLine, RoundTask } from '../../../src/core/index.ts';
import { type EventDraft, foldFacility, lineFor, parseEvent } from '../../../src/core/index.ts';
import { added, data, day, id, type Line, log, value } from '../log.ts';

/** A small house: a rack of three tubs and two exhibits in a hall, with one animal in each. */
export const ROOM = id(60);
export const RACK = id(61);
export const TUBS = [id(62), id(63), id(64)] as const;
export const HALL = id(65);
export const EXHIBITS = [id(66), id(67)] as const;
export const HOMES: readonly Id[] = [...TUBS, ...EXHIBITS];
export const MOSS = id(70);
export const FERN = id(71);
export const TANSY = id(72);
export const HERON = id(73);
export const TEAL = id(74);
export const ANIMALS: readonly Id[] = [MOSS, FERN, TANSY, HERON, TEAL];
const NAMES = ['Moss', 'Fern', 'Tansy', 'Heron', 'Teal'];

/** The day on which the house is looked at. */
export const ON = day('2026-03-20');
export const AT: Moment = { day: ON, today: ON, nowMs: Date.parse(`${ON}T18:00:00Z`) };

type PlaceKind = 'room' | 'rack' | 'tub' | 'exhibit';
const place = (at: Id, placeKind: PlaceKind, name: string, parent?: Id, walk = 1): Line => [
  '2025-01-01',
  'place-added',
  { placeKind, name, walk, ...(parent !== undefined && { parent }) },
  { subjects: [at] },
];

/** Places, animals in them since 2 January 2025, each weighed on 1 March 2026. */
export const HOUSE: readonly Line[] = [
  place(ROOM, 'room', 'Long Room', undefined, 1),
  place(RACK, 'rack', 'Rack 1', ROOM, 1),
  ...TUBS.map((tub, at) => place(tub, 'tub', `1-0${at + 1}`, RACK, at + 1)),
  place(HALL, 'room', 'Hall', undefined, 2),
  ...EXHIBITS.map((one, at) => place(one, 'exhibit', `Exhibit ${at + 1}`, HALL, at + 1)),
  ...ANIMALS.flatMap((animal, at): Line[] => [
    added({ name: NAMES[at] ?? '' }, { subjects: [animal] }),
    ['2025-01-02', 'animal-moved', { to: HOMES[at] ?? '' }, { subjects: [animal] }],
    ['2026-03-01', 'animal-weighed', { weightG: 300 }, { subjects: [animal] }],
  ]),
];

/** Water changed at these places on a day. */
export const water = (on: string, ...subjects: readonly Id[]): Line => [on, 'water-changed', {}, { subjects }];
/** A full clean of a place on a day. */
export const clean = (on: string, ...subjects: readonly Id[]): Line => [
  on,
  'place-cleaned',
  { how: 'full' },
  { subjects },
];
/** A look at places that found all well. */
export const looked = (on: string, ...subjects: readonly Id[]): Line => [
  on,
  'health-looked',
  { well: true },
  { subjects },
];

/** The events of the house and of what happened in it; the n of each event is its place in the list. */
export function eventsOf(...lines: readonly Line[]): LogEvent[] {
  return log(...HOUSE, ...lines);
}

export function houseOf(...lines: readonly Line[]): Facility {
  return foldFacility(eventsOf(...lines));
}

/** What the log becomes when these drafts are written. */
export function written(events: readonly LogEvent[], drafts: readonly EventDraft[]): LogEvent[] {
  const more = drafts.map((draft, at) => {
    const n = events.length + at;
    const line = [draft.day, draft.kind, draft.payload, { subjects: draft.subjects, n }] as unknown as Line;
    return value(parseEvent(data(line, n)));
  });
  return [...events, ...more];
}

/** All events that are about a subject, with the slips that correct them, as a device keeps them. */
export function historyOf(events: readonly LogEvent[], subject: Id): readonly LogEvent[] {
  return events.filter((event) => event.subjects.includes(subject));
}

/** The line that is there; a test that asks for one that is not fails. */
export function lineOn(facility: Facility, task: RoundTask, scanned: Id, on = ON): RoundLine {
  const line = lineFor(facility, scanned, { task, on });
  if (line === null) throw new Error(`no line for ${task} of ${scanned}`);
  return line;
}
