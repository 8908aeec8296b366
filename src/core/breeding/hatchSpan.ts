import { type Day, daysBetween } from '../days.ts';
import type { ClutchRecord, Facility } from '../facility/index.ts';

/**
 * Rule BREED-HATCH: the young of a clutch come out over some days; the first of them counts for windows and history.
 * What is left is waited for so many days after the last one came out, then it is only counted as not accounted for.
 */
export const HATCH_SPAN = {
  /** Common practice, no source: the last young usually follows the first within so many days. */
  usualDays: [1, 3],
  /** Our own choice: longer nobody waits. */
  waitDays: 14,
} as const;

/** The eggs that nobody has seen fail: as laid, less those candled as slug or lost. */
export function eggsLeft(clutch: ClutchRecord): number {
  const failed = Object.values(clutch.eggStates).filter((one) => one.state !== 'good').length;
  return Math.max(0, clutch.eggs - failed);
}

/** The eggs that have neither failed nor hatched by what is written, whether or not anybody still waits for them. */
export function eggsOpen(clutch: ClutchRecord): number {
  if (clutch.bears === 'live young' || clutch.isOver) return 0;
  return Math.max(0, eggsLeft(clutch) - (clutch.hatched ?? 0));
}

/** The eggs that are still expected to hatch on a day. */
export function stillToCome(clutch: ClutchRecord, on: Day): number {
  const last = clutch.hatchings.at(-1)?.day ?? null;
  const isPast = last !== null && daysBetween(last, on) > HATCH_SPAN.waitDays;
  return isPast ? 0 : eggsOpen(clutch);
}

/** Whether a clutch’s eggs still lie on a day: none is out yet, or some are still to come. */
export function stillLies(clutch: ClutchRecord, on: Day): boolean {
  return clutch.bears === 'eggs' && (clutch.hatchedOn === null || stillToCome(clutch, on) > 0);
}

/** How many days the site’s own clutches of a species took from the first young to the last, where they were written in parts. */
export function ownHatchSpans(facility: Facility, species: string): readonly number[] {
  return [...facility.clutches.values()].flatMap((clutch) => {
    const [first, last] = [clutch.hatchings[0], clutch.hatchings.at(-1)];
    const isOfSpecies = facility.animals.get(clutch.dam)?.species === species;
    if (!isOfSpecies || first === undefined || last === undefined || first === last || eggsOpen(clutch) > 0) return [];
    return [daysBetween(first.day, last.day)];
  });
}
