import type { Day } from '../../days.ts';
import { ok, type Result } from '../../problems.ts';
import { exact } from '../exact.ts';
import { lengthInRange } from '../length.ts';
import { type Mass, massInG, positive } from './amount.ts';
import { CAP_PERCENT, checkCap } from './cap.ts';
import { type Drawn, drawUp, sayMl } from './syringe.ts';
import { ageWarning, type Weighed, weightFault } from './weighed.ts';

/** Rule CARE-TUBE: the stomach lies in the second quarter of the body (S); the tube goes at most half the snout-vent length (common practice). */
export const STOMACH_SHARE = { from: 0.26, to: 0.5 } as const;
/** Water after a slurry, in mL (common practice, no source). */
export const FLUSH_ML: readonly [number, number] = [2, 3];
/** Stands on every tube feeding sheet. */
export const TUBE_CAUTION =
  'Only people whom the vet has trained feed by tube. The volume and the depth in cm are the vet’s; what stands here about depth is for orientation only. If anything differs, or the animal struggles, gapes or coughs, stop and call the vet.';

/** What {@link tubeSheet} takes. */
export interface TubeQuestion extends Mass, Weighed {
  readonly on: Day;
  readonly young?: boolean | undefined;
  /** The volume of one feeding, as the vet wrote it. */
  readonly volumeMl: number;
  readonly slurry: boolean;
  readonly snoutVentMm?: number | undefined;
  /** Above 2 only with the volume that the vet wrote. */
  readonly capPercent?: number | undefined;
  readonly syringesMl?: readonly number[] | undefined;
}

/** One tube feeding: what to draw up, what to flush with, and where the stomach lies. */
export interface TubeSheet extends Drawn {
  /** The most at once, by the cap. */
  readonly capMl: number;
  /** Water after it; null without a slurry, or where the flush would go over the cap. */
  readonly flushMl: readonly [number, number] | null;
  /** From the snout, for orientation only; null where nobody measured the animal. */
  readonly stomachMm: readonly [number, number] | null;
  readonly warnings: readonly string[];
  readonly caution: string;
}

/**
 * Rule CARE-TUBE: the sheet of one tube feeding. The flush counts towards the cap, because it goes into the same stomach.
 * Errors: those of `doseVolume` for weight, cap and syringe, and `length-impossible`.
 */
export function tubeSheet(question: TubeQuestion): Result<TubeSheet> {
  const massG = massInG(question);
  if (!massG.ok) return massG;
  const volume = positive(question.volumeMl, 'volume', 'volumeMl');
  if (!volume.ok) return volume;
  const old = weightFault(question, question);
  if (old !== null) return { ok: false, problem: old };
  const fed = { massG: massG.value, route: 'tube', capPercent: question.capPercent };
  const over = checkCap({ ...fed, exactMl: volume.value, ml: volume.value });
  if (!over.ok) return over;
  const drawn = drawUp(exact(volume.value), question.syringesMl);
  if (!drawn.ok) return drawn;
  const cap = checkCap({ ...fed, ...drawn.value });
  if (!cap.ok) return cap;
  const stomachMm = stomachOf(question.snoutVentMm);
  if (!stomachMm.ok) return stomachMm;
  const capMl = capOf(massG.value, question.capPercent);
  const flush = flushOf(question.slurry, drawn.value.ml, capMl);
  const warnings = [...ageWarning(question, question), ...cap.value, ...flush.warnings];
  return ok({ ...drawn.value, capMl, flushMl: flush.ml, stomachMm: stomachMm.value, warnings, caution: TUBE_CAUTION });
}

/** The most at once into the stomach, in mL. */
function capOf(massG: number, capPercent: number = CAP_PERCENT.gavage): number {
  return exact((massG * Math.min(capPercent, CAP_PERCENT.most)) / 100);
}

/** In a small animal the usual flush alone is more than its stomach should get. */
function flushOf(slurry: boolean, ml: number, capMl: number) {
  if (!slurry) return { ml: null, warnings: [] };
  const room = exact(capMl - ml);
  const [least, most] = FLUSH_ML;
  if (room >= least) return { ml: [least, Math.min(most, room)] as const, warnings: [] };
  const much = `A flush of ${least}–${sayMl(most)} would go over the cap of ${sayMl(capMl)}`;
  return { ml: null, warnings: [`${much}: ask the vet how much water may follow.`] };
}

function stomachOf(snoutVentMm: number | undefined): Result<readonly [number, number] | null> {
  if (snoutVentMm === undefined) return ok(null);
  const lengthM = lengthInRange(snoutVentMm / 1000, 'snoutVentMm');
  if (!lengthM.ok) return lengthM;
  return ok([Math.round(snoutVentMm * STOMACH_SHARE.from), Math.floor(snoutVentMm * STOMACH_SHARE.to)]);
}
