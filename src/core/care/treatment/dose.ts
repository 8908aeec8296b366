import type { Day } from '../../days.ts';
import { ok, type Result, refuse } from '../../problems.ts';
import { sayGrams } from '../../units.ts';
import { exact, isOver } from '../exact.ts';
import { type Dose, type Mass, massInG, mgPerKgOf, mgPerMlOf, positive, type Strength } from './amount.ts';
import { CAP_PERCENT, checkCap, sharePercent } from './cap.ts';
import { type Drawn, drawUp } from './syringe.ts';
import { ageWarning, type Weighed, weightFault } from './weighed.ts';

/** What {@link doseVolume} takes: a mass with its date, and the vet's written figures. */
export interface DoseQuestion extends Mass, Weighed {
  readonly on: Day;
  readonly young?: boolean | undefined;
  readonly dose: Dose;
  readonly strength: Strength;
  readonly syringesMl?: readonly number[] | undefined;
  readonly capPercent?: number | undefined;
  readonly route: string;
}

/** What {@link writtenVolume} takes: the mL that the vet wrote, and the last weight to hold them against, if there is one. */
export interface WrittenQuestion {
  readonly ml: number;
  readonly on: Day;
  readonly young?: boolean | undefined;
  readonly weight: (Mass & Weighed) | null;
  readonly syringesMl?: readonly number[] | undefined;
  readonly route: string;
}

/** A volume to draw up, with what to look at first. */
export interface DoseAnswer extends Drawn {
  readonly warnings: readonly string[];
  readonly caution: string;
}

/** Stands under every volume. */
export const DOSE_CAUTION =
  'Arithmetic only: it proposes no drug and no dose. Enter the dose and the strength that the vet wrote. Check drug, strength, animal and syringe before giving; if anything differs, stop and call the vet.';

/**
 * Rule CARE-DOSE: mL = kg x mg/kg / (mg/mL), in full precision, rounded once at the end (CARE-MARK). Source of the worked
 * examples: bestvetaustin.com, “Medical math for fun”. Errors: `unit-missing`, `one-unit-only`, `not-finite`, `not-positive`,
 * `weight-impossible`, `strength-impossible`, `date-future`, `weight-flagged`, `weight-too-old`, `over-cap`, `text-missing`, and
 * those of {@link drawUp}.
 */
export function doseVolume(question: DoseQuestion): Result<DoseAnswer> {
  const massG = massInG(question);
  if (!massG.ok) return massG;
  const exactMl = volumeFor(massG.value, question.dose, question.strength);
  if (!exactMl.ok) return exactMl;
  const old = weightFault(question, question);
  if (old !== null) return { ok: false, problem: old };
  // The cap comes first: a volume that must not be given needs no syringe.
  const cap = checkCap({ ...question, massG: massG.value, exactMl: exactMl.value, ml: exactMl.value });
  if (!cap.ok) return cap;
  const drawn = drawUp(exactMl.value, question.syringesMl);
  if (!drawn.ok) return drawn;
  const rounded = checkCap({ ...question, massG: massG.value, ...drawn.value });
  if (!rounded.ok) return rounded;
  return ok({
    ...drawn.value,
    warnings: [...ageWarning(question, question), ...rounded.value],
    caution: DOSE_CAUTION,
  });
}

function volumeFor(massG: number, dose: Dose, strength: Strength): Result<number> {
  const mgPerKg = mgPerKgOf(dose);
  if (!mgPerKg.ok) return mgPerKg;
  const mgPerMl = mgPerMlOf(strength);
  if (!mgPerMl.ok) return mgPerMl;
  const volume = exact((massG * mgPerKg.value) / (1000 * mgPerMl.value));
  return Number.isFinite(volume) ? ok(volume) : refuse('not-finite', { what: 'volume' });
}

/**
 * Rule CARE-WRITTEN: a volume that the vet wrote in mL is not worked out but drawn up as written. A weight that is missing,
 * doubted or old is a warning, and so is a volume above the cap; above 5 % of body mass it is `over-cap`, because that is
 * more likely a slip. Errors: `not-finite`, `not-positive`, `text-missing`, `over-cap`, those of {@link massInG} and {@link drawUp}.
 */
export function writtenVolume(question: WrittenQuestion): Result<DoseAnswer> {
  const ml = positive(question.ml, 'volume', 'ml');
  if (!ml.ok) return ml;
  const drawn = drawUp(exact(ml.value), question.syringesMl);
  if (!drawn.ok) return drawn;
  if (question.route.trim() === '') return refuse('text-missing', { what: 'route' }, 'route');
  const warnings = writtenWarnings(question, drawn.value);
  return warnings.ok ? ok({ ...drawn.value, warnings: warnings.value, caution: DOSE_CAUTION }) : warnings;
}

function writtenWarnings({ weight, on, young, route }: WrittenQuestion, drawn: Drawn): Result<readonly string[]> {
  if (weight === null)
    return ok(['There is no weight to hold this volume against: weigh first, if the vet wants one.']);
  const massG = massInG(weight);
  if (!massG.ok) return massG;
  const held = checkCap({ ...drawn, massG: massG.value, route, capPercent: CAP_PERCENT.most });
  if (!held.ok) return held;
  const fault = weightFault(weight, { on, young });
  const percent = sharePercent(drawn.ml, massG.value);
  const much = isOver(percent, CAP_PERCENT.gavage);
  return ok([
    ...(fault === null ? ageWarning(weight, { on, young }) : [`${fault.message} ${fault.remedy}`]),
    ...(much
      ? [`More than ${CAP_PERCENT.gavage} % of ${sayGrams(massG.value)}: ask the vet whether that is meant.`]
      : []),
  ]);
}
