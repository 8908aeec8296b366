import { breedingOf, type Facility, sayDayShort } from '../../core/index.ts';
import { broodOf } from '../pairing/brood.ts';

/** From so many clutches on the site's own mean counts more than a book's. */
export const OWN_CLUTCHES = 3;

/** How many eggs (or young) a clutch is taken to have, and on what ground. */
export interface UsualClutch {
  readonly eggs: number;
  readonly basis: string;
}

/** The mean of the site's own clutches of a species where there are enough, else the calendar's figure. */
export function usualClutch(facility: Facility, species: string): UsualClutch {
  const own = [...facility.clutches.values()].filter((clutch) => facility.animals.get(clutch.dam)?.species === species);
  if (own.length >= OWN_CLUTCHES) {
    const mean = own.reduce((sum, clutch) => sum + clutch.eggs, 0) / own.length;
    const days = own.map(({ laidOn }) => laidOn).sort();
    const since = days[0] === undefined ? '' : ` since ${sayDayShort(days[0])}`;
    return {
      eggs: Math.round(mean * 100) / 100,
      basis: `the mean of this site’s own ${own.length} clutches${since}, slugs not counted`,
    };
  }
  const known = breedingOf(species)?.clutch;
  if (known) {
    const [low, high] = known.range;
    const middle = `the middle of ${low}–${high}`;
    const says = known.mean === null ? middle : `mean of ${low}–${high}`;
    return { eggs: known.mean ?? (low + high) / 2, basis: `${says}, ${known.mark}: ${known.source} (BREED-CALENDAR)` };
  }
  const { mean, basis } = broodOf(species);
  return { eggs: mean, basis };
}
