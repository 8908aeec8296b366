import { ok, type Problem, type Result, refuse } from '../../problems.ts';
import { roundTo } from '../../units.ts';
import { exact, isOver } from '../exact.ts';

/** The finest mark of a syringe of that size, both in mL. Source: RMIT as quoted on a web page (S). */
const MARKS_ML: ReadonlyMap<number, number> = new Map([
  [1, 0.01],
  [3, 0.1],
  [5, 0.2],
  [10, 0.2],
]);
/** Above 10 mL: a mark each mL, up to the largest that is sold for feeding (common practice, no source). */
const LARGE = { markMl: 1, overMl: 10, mostMl: 200 } as const;

/** The syringes that are taken to be at hand when nobody says which, in mL. */
export const SYRINGES_ML: readonly number[] = [1, 3, 5, 10, 20, 30, 60];
/** Rule CARE-MARK: a volume that the mark of the syringe changes by more than this many percent is refused. */
export const MOST_DIFFERENCE_PERCENT = 5;

/** A volume as it is drawn up: rounded once, to the mark of the smallest syringe that holds it. */
export interface Drawn {
  readonly exactMl: number;
  readonly ml: number;
  readonly syringeMl: number;
  readonly markMl: number;
  /** How far the rounded volume lies above the exact one, in percent; below 0 it lies under it. */
  readonly differencePercent: number;
}

/** The mark of a syringe in mL. Errors: `not-finite`, `not-positive`, `syringe-unknown`. */
export function markOf(syringeMl: number, path = 'syringeMl'): Result<number> {
  if (!Number.isFinite(syringeMl)) return refuse('not-finite', { what: 'size of the syringe' }, path);
  if (syringeMl <= 0) return refuse('not-positive', { what: 'size of the syringe' }, path);
  const large = Number.isInteger(syringeMl) && syringeMl > LARGE.overMl && syringeMl <= LARGE.mostMl;
  const markMl = MARKS_ML.get(syringeMl) ?? (large ? LARGE.markMl : undefined);
  return markMl === undefined ? refuse('syringe-unknown', { size: syringeMl }, path) : ok(markMl);
}

/** Rounds a volume to a mark; a volume in the middle of two goes to the upper one, as in school. */
export function roundToMark(exactMl: number, markMl: number): number {
  return exact(roundTo(exact(exactMl / markMl), 0) * markMl);
}

/**
 * Rule CARE-MARK: rounds once, at the end, to the mark of the smallest syringe that holds the volume. Every syringe of the
 * list must be a known one. Errors: `syringe-missing`, `syringe-too-small`, `rounding-too-coarse`, those of {@link markOf}.
 */
export function drawUp(exactMl: number, syringesMl: readonly number[] = SYRINGES_ML): Result<Drawn> {
  if (!Number.isFinite(exactMl)) return refuse('not-finite', { what: 'volume' });
  if (exactMl < 0) return refuse('not-positive', { what: 'volume' });
  const known = marksOf(syringesMl);
  if (!known.ok) return known;
  const [smallest] = known.value
    .filter(({ syringeMl }) => exactMl <= syringeMl)
    .sort((a, b) => a.syringeMl - b.syringeMl);
  return smallest === undefined
    ? refuse('syringe-too-small', { volume: sayMl(exactMl) }, 'syringesMl')
    : drawnWith(exactMl, smallest.syringeMl, smallest.markMl);
}

/** What is wrong with a list of syringes, or null: `syringe-missing`, and the errors of {@link markOf}. */
export function syringesFault(syringesMl: readonly number[]): Problem | null {
  const known = marksOf(syringesMl);
  return known.ok ? null : known.problem;
}

interface KnownSyringe {
  readonly syringeMl: number;
  readonly markMl: number;
}

function marksOf(syringesMl: readonly number[]): Result<readonly KnownSyringe[]> {
  if (syringesMl.length === 0) return refuse('syringe-missing', {}, 'syringesMl');
  const known: KnownSyringe[] = [];
  for (const [at, syringeMl] of syringesMl.entries()) {
    const mark = markOf(syringeMl, `syringesMl.${at}`);
    if (!mark.ok) return mark;
    known.push({ syringeMl, markMl: mark.value });
  }
  return ok(known);
}

function drawnWith(exactMl: number, syringeMl: number, markMl: number): Result<Drawn> {
  const ml = roundToMark(exactMl, markMl);
  // A volume too small for a number to hold is as far off as one can be.
  const share = exactMl === 0 ? -100 : exact((100 * (ml - exactMl)) / exactMl);
  if (isOver(Math.abs(share), MOST_DIFFERENCE_PERCENT))
    return refuse('rounding-too-coarse', {
      volume: sayMl(exactMl),
      size: syringeMl,
      mark: sayMl(markMl),
      percent: roundTo(Math.abs(share), 1),
    });
  return ok({ exactMl, ml, syringeMl, markMl, differencePercent: roundTo(share, 4) });
}

/** A volume as it is written on paper and screen: `0.5 mL`, never `.5` and never `5.0`, at most four decimals. */
export function sayMl(ml: number): string {
  if (!Number.isFinite(ml)) return 'no volume';
  const rounded = roundTo(ml, 4);
  if (rounded === 0 && ml > 0) return 'less than 0.0001 mL';
  return `${Math.abs(rounded) < 1e21 ? rounded : rounded.toExponential(3)} mL`;
}
