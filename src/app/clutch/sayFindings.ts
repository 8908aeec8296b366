import { type ClutchTest, compareFractions, type Fraction, fraction, sayFraction } from '../../core/index.ts';
import { sayPercent } from '../genetics/index.ts';

/** Below this chance the numbers are looked at again (common practice, no source); the Season page judges all clutches together. */
const SMALL = fraction(1n, 20n);

/** `about 1 in 32`: how rarely chance alone does it. */
export function sayOneIn({ top, bottom }: Fraction): string {
  if (top === 0n) return 'never';
  const times = (2n * bottom + top) / (2n * top);
  return `${bottom % top === 0n ? '' : 'about '}1 in ${times}`;
}

/** What the exact test says of the numbers, in words; only a small chance is a reason to look again. */
export function sayOdds({ pValue }: ClutchTest): string {
  if (pValue.top === 0n) return 'These parents as written can have given no such clutch: a reason to look again.';
  const odds = `A clutch this far from what the parents should give comes ${sayOneIn(pValue)} by chance`;
  if (compareFractions(pValue, SMALL) >= 0) return 'The numbers fit what the parents should give.';
  return `${odds}: a reason to look again, and no more than that.`;
}

/** The exact figures behind it. */
export function sayTest({ pValue, probability, outcomes }: ClutchTest): readonly string[] {
  return [
    `Exact multinomial test: p = ${short(pValue)}${sayPercent(pValue)}, over ${outcomes} ways that the clutch could have fallen.`,
    `This very one has the chance ${short(probability)}${sayPercent(probability)}.`,
    'One clutch in twenty falls below 5 % by chance alone; the parents’ records and the looks are what to look at again.',
  ];
}

function short(value: Fraction): string {
  const exact = sayFraction(value);
  return exact.length <= 13 && value.bottom !== 1n ? `${exact}, ` : '';
}
