import type { AnimalRecord, SeasonMark } from '../animal/index.ts';
import { type Day, daysBetween } from '../days.ts';

/** A season runs from the first pairings to the laying; marks older than this are history. */
export const SEASON_DAYS = 240;
/** So long after a laying its season is over, and its marks make room for the next. */
export const SEASON_OVER_DAYS = 60;

/** The marks of the season that an animal is in on a day: those since the last laying that is over, and not older than a season. */
export function marksOfSeason(animal: AnimalRecord, on: Day): readonly SeasonMark[] {
  const over = animal.season.findLastIndex((mark) => isEnd(mark) && daysBetween(mark.day, on) > SEASON_OVER_DAYS);
  return animal.season.slice(over + 1).filter((mark) => mark.day <= on && daysBetween(mark.day, on) <= SEASON_DAYS);
}

/** The marks of each season that ended with eggs or young, oldest first. */
export function endedSeasons({ season }: AnimalRecord): readonly (readonly SeasonMark[])[] {
  const seasons: SeasonMark[][] = [];
  let open: SeasonMark[] = [];
  for (const mark of season) {
    const first = open[0];
    if (first !== undefined && daysBetween(first.day, mark.day) > SEASON_DAYS) open = [];
    open.push(mark);
    if (!isEnd(mark)) continue;
    seasons.push(open);
    open = [];
  }
  return seasons;
}

/** Whether a mark ends a season. */
export function isEnd({ kind }: SeasonMark): boolean {
  return kind === 'laid' || kind === 'born';
}
