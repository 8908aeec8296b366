import { sayEvent, sayTask } from '../animal/index.ts';
import { sayKindOf } from '../care/index.ts';
import type { EventOf, SiteEvent } from '../events/index.ts';
import { type Facility, nameOf } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import type { PackLength, PackLook, PackNote, PackPaper, PackSkip } from './pack.ts';
import type { AtPlace } from './places.ts';
import { ofKind, placeWords } from './rows.ts';

/** Every length, measured or guessed. */
export function lengthsOf(events: readonly SiteEvent[]): readonly PackLength[] {
  return ofKind(events, 'animal-measured').map(({ day, keeper, payload: { lengthMm, of, guessed } }) => ({
    day,
    by: keeper,
    lengthMm,
    of: sayKindOf(of),
    guessed: guessed ?? false,
  }));
}

/** Every note of a keeper. */
export function notesOf(events: readonly SiteEvent[]): readonly PackNote[] {
  return ofKind(events, 'note-made').map(({ day, keeper, payload: { words } }) => ({ day, by: keeper, words }));
}

/** Every look at its health: one at the animal, or one round of looks along the tubs. */
export function looksOf(found: readonly AtPlace<EventOf<'health-looked'>>[]): readonly PackLook[] {
  return found.map(({ event: { day, keeper, payload } }) => ({
    day,
    by: keeper,
    well: payload.well,
    words: payload.words ?? '',
  }));
}

/** Tasks that somebody passed over on purpose. */
export function skippedOf(facility: Facility, found: readonly AtPlace<EventOf<'task-skipped'>>[]): readonly PackSkip[] {
  return found.map(({ event: { day, keeper, payload }, where }) => ({
    day,
    by: keeper,
    task: sayTask(payload.task),
    why: payload.why ?? '',
    where: facility.animals.has(where) ? 'this animal' : placeWords(facility, where),
  }));
}

/** The papers that were photographed: their days and words, and what they belong to; the pictures stay in the log. */
export function papersOf(facility: Facility, events: readonly SiteEvent[], about: Id): readonly PackPaper[] {
  const name = (id: Id): string => nameOf(facility, id);
  return ofKind(events, 'paper-kept').map(({ day, keeper, payload }) => {
    const of = payload.of === undefined ? undefined : events.find((one) => one.id === payload.of);
    const words = of === undefined ? '' : sayEvent(of, name, about);
    return {
      day,
      by: keeper,
      of: payload.of !== undefined && of === undefined ? 'an entry that was taken back' : words,
      words: payload.words ?? '',
    };
  });
}
