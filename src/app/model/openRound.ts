import { type Day, type Id, isDay, isId, ROUND_TASKS, type RoundTask } from '../../core/index.ts';

/** A round that was begun and not yet ended. What is done of it is read from the records, so that nothing here can be wrong about it. */
export interface OpenRound {
  readonly place: Id;
  readonly name: string;
  readonly task: RoundTask;
  readonly day: Day;
  /** Who is with the keeper; null where nobody is asked for. */
  readonly second: string | null;
  /** Homes that are left out, for they need more people. */
  readonly without: readonly Id[];
  /** Done in one go: a scan of one of these says that it was not. */
  readonly swept: readonly Id[];
}

/** Kept on the device so that a page closed in the middle of a rack loses nothing of the round. */
const KEY = 'open-round';

/** The round that was open when the page was closed; one of another day is over. */
export function keptRound(today: string): OpenRound | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as OpenRound | null;
    return kept !== null && kept.day === today && isSound(kept) ? kept : null;
  } catch {
    return null;
  }
}

export function keepRound(round: OpenRound | null): void {
  if (round === null) localStorage.removeItem(KEY);
  else localStorage.setItem(KEY, JSON.stringify(round));
}

/** What another version kept may have another form. */
function isSound({ place, name, task, day, without, swept }: OpenRound): boolean {
  const lists = [without, swept].every((list) => Array.isArray(list) && list.every((id) => isId(id)));
  return isId(place) && typeof name === 'string' && ROUND_TASKS.includes(task) && isDay(day) && lists;
}
