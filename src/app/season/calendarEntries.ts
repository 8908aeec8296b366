import {
  type CalendarEntry,
  type FemaleSeason,
  type SeasonTask,
  sayAnimal,
  sayId,
  sayWindow,
  type Window,
} from '../../core/index.ts';
import { sayMilestone, sayStage, spoken } from './words.ts';

/** Where the figures of the calendar come from, beside every window. */
export function whyOf(window: Window): readonly string[] {
  const { step } = window;
  return [
    `${sayMilestone(step.to)} after ${sayMilestone(step.from).toLowerCase()}: ${sayWindow(window)}.`,
    `${step.mark}: ${step.source} (BREED-CALENDAR, BREED-WINDOW).`,
  ];
}

/** Whether a task is about the clutch and not about the female. */
export function isOfClutch({ window, clutch }: Pick<SeasonTask, 'window' | 'clutch'>): boolean {
  return clutch !== null && (window.step.to === 'hatched' || window.step.to === 'first shed');
}

/** The page to go to for a task: the clutch's where there is one to look at, else the female's record. */
export function addressOf(task: Pick<SeasonTask, 'female' | 'window' | 'clutch'>): string {
  return isOfClutch(task) ? `/clutch/${task.clutch?.id}` : `/animal/${task.female.id}`;
}

/**
 * An entry for each window that the board waits for. Its uid stays the same while the window moves, so that a calendar
 * that reads the file again moves the entry instead of doubling it: it names the clutch, or the female with the count of
 * layings and births before this one.
 */
export function entriesOf(board: readonly FemaleSeason[]): readonly CalendarEntry[] {
  return board.flatMap(({ animal, stage, clutch, next }) =>
    next.map((window): CalendarEntry => {
      const before = animal.season.filter(({ kind }) => kind === 'laid' || kind === 'born').length;
      const isClutch = isOfClutch({ window, clutch });
      const what = window.step.to.replaceAll(' ', '-');
      return {
        uid: isClutch ? `tubwright-${what}-${clutch?.id}` : `tubwright-${what}-${animal.id}-${before + 1}`,
        from: window.from,
        to: window.to,
        summary: `${sayMilestone(window.step.to)}: ${sayAnimal(animal)}`,
        description: spoken(
          [`${sayAnimal(animal)} (${sayId(animal.id)}), ${sayStage(stage)}.`, ...whyOf(window)].join('\n'),
        ),
      };
    }),
  );
}

/** `20261125T080000Z` of an instant in ISO text. */
export function stampOfInstant(instant: string): string {
  return `${instant.slice(0, 19).replace(/[-:]/g, '')}Z`;
}

/** The file's name depends on the site alone, so that it replaces the one before it. */
export function calendarName(site: string): string {
  const plain = site
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `season-${plain || 'site'}.ics`;
}
