import { type AnimalRecord, type PrescriptionRecord, sayAnimal } from '../animal/index.ts';
import {
  DOSE_CAUTION,
  DOUBLED_WORDS,
  type DoseAnswer,
  sayAmount,
  sayDifference,
  sayMl,
  saySyringe,
  type Treatment,
  TUBE_CAUTION,
  treatmentsOn,
  wayOf,
} from '../care/index.ts';
import type { Day } from '../days.ts';
import { noonOf } from '../instants.ts';
import { ok, type Problem, problem, type Result } from '../problems.ts';
import type { Forms } from './content.ts';
import { type LabelContent, type LabelLine, labelLine, labelOf } from './label.ts';
import {
  animalLines,
  courseLines,
  flagLine,
  noVolumeLine,
  paperLines,
  signLines,
  weightLines,
} from './treatmentLines.ts';

/** The caution of every dose on paper; the shortest form still says what to do. */
const DOSE_WORDS: Forms = {
  long: DOSE_CAUTION,
  medium:
    'Arithmetic only: no drug and no dose is proposed; they are the vet’s. Check drug, strength, animal and syringe; if anything differs, stop and call the vet.',
  short: 'Arithmetic only. Check drug, strength, animal and syringe; if anything differs, stop and call the vet.',
};

/** The caution of whatever goes into the stomach on paper. */
const TUBE_WORDS: Forms = {
  long: TUBE_CAUTION,
  medium:
    'Tube: only people whom the vet has trained. Volume and depth in cm are the vet’s. If it struggles, gapes or coughs, stop and call the vet.',
  short: 'Tube: only people whom the vet has trained. If it struggles, gapes or coughs, stop and call the vet.',
};

/**
 * The card of a prescription under way, for the tub or the medicine box: who, what the vet wrote, the volume as it is drawn
 * up or why there is none, the course, and the next doses as lines to sign. Its code opens the animal’s record. Errors: those
 * of a prescription that is over, `course-done`.
 */
export function treatmentCard(animal: AnimalRecord, record: PrescriptionRecord, on: Day): Result<LabelContent> {
  const treatment = treatmentOn(animal, record, on);
  if (!treatment.ok) return treatment;
  const { written } = record;
  const { dose } = treatment.value;
  return ok(
    labelOf({
      ...headOf(animal, 'treatment'),
      lines: [
        ...animalLines(animal),
        flagLine(),
        labelLine('body', true, written.drug),
        labelLine('body', false, sayAmount(written)),
        ...(dose.ok ? drawnLines(dose.value) : [noVolumeLine(dose.problem)]),
        ...(dose.ok ? weightLines(animal, treatment.value, on) : []),
        ...courseLines(record),
        ...doubledLines(treatment.value),
        ...paperLines(record),
        ...(dose.ok ? warningLines(dose.value) : []),
        ...cautionLines(written.route),
        ...(dose.ok ? signLines(animal, treatment.value, on) : []),
      ],
    }),
  );
}

/** A treatment on a day of printing, if it is not over. Errors: as {@link treatmentCard}. */
export function treatmentOn(animal: AnimalRecord, record: PrescriptionRecord, on: Day): Result<Treatment> {
  // Paper knows its day and no hour, so that the same day gives the same bytes.
  const found = treatmentsOn(animal, on, noonOf(on)).find((one) => one.record.id === record.id);
  if (found === undefined) return { ok: false, problem: problem('prescription-unknown', {}) };
  const over = overFault(found);
  return over === null ? ok(found) : { ok: false, problem: over };
}

function overFault({ state, record: { written, given } }: Treatment): Problem | null {
  if (state.fault !== null && state.state !== 'before') return state.fault;
  const isDone = written.count !== undefined && given.length >= written.count;
  return isDone ? problem('course-done', { given: given.length }) : null;
}

/** What is the same for both papers of a treatment. */
export function headOf(
  animal: AnimalRecord,
  kind: 'treatment' | 'tube',
): Pick<LabelContent, 'kind' | 'id' | 'called' | 'code'> {
  const what = { treatment: 'treatment card', tube: 'tube feeding sheet' }[kind];
  return { kind, id: animal.id, called: `${what} of ${sayAnimal(animal)}`, code: { says: 'id', id: animal.id } };
}

/** The volume as it is drawn up, and what it was before the mark. */
export function drawnLines(
  drawn: Pick<DoseAnswer, 'exactMl' | 'ml' | 'syringeMl' | 'markMl' | 'differencePercent'>,
): readonly LabelLine[] {
  const exact = `exact ${sayMl(drawn.exactMl)}`;
  const difference = sayDifference(drawn);
  const syringe = saySyringe(drawn);
  const mark = `${sayMl(drawn.syringeMl)} syringe, mark ${sayMl(drawn.markMl)}`;
  return [
    labelLine('figure', true, sayMl(drawn.ml)),
    labelLine('figure', false, {
      long: `${exact}, ${difference}`,
      medium: `${exact}, ${difference.replace(' than exact', '')}`,
      short: `${exact}, ${difference.replace(' than exact', '')}`,
    }),
    labelLine('figure', false, { long: syringe, medium: mark, short: mark }),
  ];
}

/** Doses that stood too near to each other, which whoever gives the next one has to know. */
export function doubledLines({ schedule }: Treatment): readonly LabelLine[] {
  return schedule.ok && schedule.value.doubledMs.length > 0 ? [labelLine('body', true, DOUBLED_WORDS)] : [];
}

/** What to look at first. */
export function warningLines({ warnings }: { readonly warnings: readonly string[] }): readonly LabelLine[] {
  return warnings.map((words) => labelLine('body', false, words));
}

/** The cautions that stand on every print of a dose. */
export function cautionLines(route: string): readonly LabelLine[] {
  const tube = wayOf(route) === 'stomach' ? [labelLine('caution', false, TUBE_WORDS)] : [];
  return [labelLine('caution', false, DOSE_WORDS), ...tube];
}
