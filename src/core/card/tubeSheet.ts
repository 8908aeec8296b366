import { type AnimalRecord, lastWeight, type Measured, type PrescriptionRecord } from '../animal/index.ts';
import {
  FLUIDS_CAUTION,
  isYoung,
  sayDaily,
  sayFluids,
  sayMl,
  type Treatment,
  type TubeSheet,
  tubeSheet,
  wayOf,
  weightFor,
} from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { ok, type Result, refuse } from '../problems.ts';
import { type LabelContent, type LabelLine, labelLine, labelOf } from './label.ts';
import { cautionLines, doubledLines, drawnLines, headOf, treatmentOn, warningLines } from './treatmentCard.ts';
import {
  animalLines,
  courseLines,
  flagLine,
  noVolumeLine,
  paperLines,
  signLines,
  weightLines,
} from './treatmentLines.ts';

/**
 * The sheet of a tube feeding: the vet’s volume, the cap, the flush, where the stomach lies for orientation, and a line for
 * the vet’s depth in cm. Its code opens the animal’s record. Errors: those of `treatmentCard`, `tube-not-stomach`.
 */
export function tubeFeedingSheet(animal: AnimalRecord, record: PrescriptionRecord, on: Day): Result<LabelContent> {
  const { written } = record;
  if (wayOf(written.route) !== 'stomach') return refuse('tube-not-stomach', { route: written.route });
  const treatment = treatmentOn(animal, record, on);
  if (!treatment.ok) return treatment;
  const sheet = feedingOf(animal, treatment.value, on);
  return ok(
    labelOf({
      ...headOf(animal, 'tube'),
      lines: [
        ...animalLines(animal),
        flagLine(),
        labelLine('body', true, written.drug),
        ...(sheet.ok ? feedingLines(animal, treatment.value, sheet.value, on) : [noVolumeLine(sheet.problem)]),
        ...courseLines(record),
        ...doubledLines(treatment.value),
        ...paperLines(record),
        ...(sheet.ok ? warningLines(sheet.value) : []),
        ...cautionLines(written.route).toReversed(),
        ...(sheet.ok ? signLines(animal, treatment.value, on) : []),
      ],
    }),
  );
}

/** The snout to vent length that somebody measured; a guess marks no tube. */
export function measuredBody(animal: AnimalRecord): Measured | null {
  return animal.lengths.find(({ of, guessed }) => of === 'snout-vent' && !guessed) ?? null;
}

function feedingOf(animal: AnimalRecord, { dose, prescription, record }: Treatment, on: Day): Result<TubeSheet> {
  if (!dose.ok) return dose;
  const weight = weightFor(animal, on);
  return tubeSheet({
    // Without a weight there is no cap, and the sheet says so at the mass.
    ...(weight !== null && { massG: weight.weightG }),
    massDate: weight?.day ?? on,
    flagged: weight?.doubted === true,
    on,
    young: weight === null ? undefined : isYoung(animal.species, weight.weightG),
    // As the vet wrote it or as it was worked out: it is rounded once, here.
    volumeMl: dose.value.exactMl,
    slurry: true,
    snoutVentMm: measuredBody(animal)?.lengthMm,
    capPercent: prescription.capPercent,
    ...(record.written.syringesMl !== undefined && { syringesMl: record.written.syringesMl }),
  });
}

function feedingLines(animal: AnimalRecord, treatment: Treatment, sheet: TubeSheet, on: Day): readonly LabelLine[] {
  const { everyHours } = treatment.record.written;
  const weight = lastWeight(animal);
  const daily = sayDaily(sheet.ml, everyHours);
  const fluids =
    weight === null ? '' : `${sayFluids(weight.weightG)} ${FLUIDS_CAUTION}${daily === null ? '' : ` ${daily}`}`;
  return [
    ...drawnLines(sheet),
    ...weightLines(animal, treatment, on),
    labelLine('body', false, {
      long: `at most ${sayMl(sheet.capMl)} at once by the cap, the flush counted in`,
      medium: `at most ${sayMl(sheet.capMl)} at once, flush counted in`,
      short: `cap ${sayMl(sheet.capMl)}`,
    }),
    ...flushLines(sheet),
    ...depthLines(animal, sheet),
    ...(fluids === '' ? [] : [labelLine('body', false, fluids)]),
  ];
}

function flushLines({ flushMl }: TubeSheet): readonly LabelLine[] {
  // Without room for it the sheet’s own warnings say so.
  if (flushMl === null) return [];
  const [least, most] = flushMl;
  const much = least === most ? sayMl(least) : `${least}–${sayMl(most)}`;
  return [
    labelLine('body', true, {
      long: `flush after a slurry: ${much} of water (common practice, no source)`,
      medium: `flush after a slurry: ${much} of water`,
      short: `flush ${much}`,
    }),
  ];
}

function depthLines(animal: AnimalRecord, { stomachMm }: TubeSheet): readonly LabelLine[] {
  const vets = labelLine('body', true, {
    long: 'depth mark, the vet’s: ______ cm from the snout',
    medium: 'depth mark, the vet’s: ______ cm',
    short: 'depth, the vet’s: ____ cm',
  });
  const measured = measuredBody(animal);
  if (stomachMm === null || measured === null)
    return [
      vets,
      labelLine('body', false, 'snout to vent was not measured, so nothing is said about where the stomach lies'),
    ];
  const [from, to] = stomachMm.map((mm) => Number((mm / 10).toFixed(1)));
  const body = `snout to vent ${measured.lengthMm / 10} cm, measured ${sayDayShort(measured.day)}`;
  return [
    vets,
    labelLine('body', false, {
      long: `the stomach lies about ${from}–${to} cm from the snout, for orientation only (${body}); never past ${to} cm, half the body`,
      medium: `stomach about ${from}–${to} cm from the snout, for orientation only; never past ${to} cm`,
      short: `stomach about ${from}–${to} cm, orientation only`,
    }),
  ];
}
