import { sayTask } from '../animal/index.ts';
import type { Decision, Moment } from '../care/index.ts';
import type { Facility } from '../facility/index.ts';
import { isLeft, type RoundLine } from './line.ts';
import { looksAgain } from './placeLines.ts';
import { linesAt, type RoundAt } from './sweep.ts';

/** What a round came to, worked out from the records of the day: what others did meanwhile is in it. */
export interface RoundSummary {
  /** Done; of a feeding round the meals that were taken. */
  readonly done: number;
  /** Animals that refused their meal. */
  readonly refused: readonly RoundLine[];
  /** Animals that were seen on that day and are to be looked at again. */
  readonly again: readonly RoundLine[];
  readonly skipped: readonly RoundLine[];
  /** Due and not done, and due homes that were left out. */
  readonly left: readonly RoundLine[];
  /** Prey that was offered, refused or not: refused thawed prey is not frozen again. */
  readonly used: readonly (readonly [prey: string, count: number])[];
}

/** What a round at a place came to so far. */
export function summaryOf(facility: Facility, { place, task }: RoundAt, { day }: Pick<Moment, 'day'>): RoundSummary {
  const lines = linesAt(facility, { place, task }, day);
  const done = lines.filter((line) => line.state === 'done');
  const refused = done.filter((line) => line.task === 'feeding' && line.words === 'refused');
  return {
    done: done.length - refused.length,
    refused,
    again:
      task === 'look'
        ? lines.filter(({ animals }) => looksAgain(animals).some((one) => one.lastLook?.day === day))
        : [],
    skipped: lines.filter((line) => line.state === 'skipped'),
    left: lines.filter(isLeft),
    used: task === 'feeding' ? preyOffered(lines, day) : [],
  };
}

/** Ends a round as its summary was confirmed. */
export function endRound(
  at: RoundAt & { readonly second: string | null },
  summary: RoundSummary,
  { day }: Pick<Moment, 'day'>,
): Decision {
  const { done, refused, skipped, left, used } = summary;
  const payload = {
    ...{ task: at.task, done, skipped: skipped.length, left: left.length },
    ...(at.task === 'feeding' && { refused: refused.length }),
    ...(at.second !== null && { second: at.second }),
    ...(used.length > 0 && { used: used.map(([prey, count]) => ({ prey, count })) }),
  };
  const said = `round ended: ${sayTask(at.task)}, ${done} done`;
  return { kind: 'accepted', drafts: [{ kind: 'round-ended', subjects: [at.place], payload, day }], said };
}

/** What these lines offered on a day, by prey. */
function preyOffered(lines: readonly RoundLine[], day: Moment['day']): RoundSummary['used'] {
  const used = new Map<string, number>();
  for (const offer of lines.flatMap(({ animals }) => animals.flatMap((animal) => animal.offers)))
    if (offer.day === day) used.set(offer.prey, (used.get(offer.prey) ?? 0) + offer.count);
  return [...used].sort(([a], [b]) => (a < b ? -1 : 1));
}
