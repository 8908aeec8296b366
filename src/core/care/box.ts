import { type Result, refuse } from '../problems.ts';
import { type Grams, roundTo, sayNumber, weightInRange } from '../units.ts';

/**
 * What is left for the animal when the box that it is weighed in comes off, all in grams; without a box what the scale
 * shows. Errors: `box-heavier`, and those of a weight.
 */
export function lessBox(shownG: number, boxG: number | null): Result<Grams> {
  if (boxG === null) return weightInRange(shownG);
  const shown = weightInRange(shownG);
  if (!shown.ok) return shown;
  if (shown.value <= boxG) return refuse('box-heavier', { box: sayExact(boxG), shown: sayExact(shown.value) });
  return weightInRange(shown.value - boxG);
}

/** `850.5 g (970.5 g less the box of 120 g)`: the weight with both figures that it comes from. */
export function sayLessBox(shownG: number, boxG: number): string {
  return `${sayExact(shownG - boxG)} (${sayExact(shownG)} less the box of ${sayExact(boxG)})`;
}

/** As the scale shows it: what is taken off must add up for whoever reads it. */
function sayExact(weightG: number): string {
  return `${sayNumber(roundTo(weightG, 2))} g`;
}
