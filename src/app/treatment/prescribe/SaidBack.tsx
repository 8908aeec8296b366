import {
  type AnimalRecord,
  type Day,
  DOSE_CAUTION,
  enteredDose,
  lastWeight,
  type Payload,
  sayAmount,
  sayAnimal,
  sayCourse,
  sayDay,
  sayDayShort,
  sayEvery,
  sayGrams,
  sayPaperDays,
  TUBE_CAUTION,
  wayOf,
} from '../../../core/index.ts';
import { Caution } from '../Caution.tsx';
import { NoVolume } from '../NoVolume.tsx';
import { Volume } from '../Volume.tsx';

interface SaidBackProps {
  readonly animal: AnimalRecord;
  readonly written: Payload<'prescription-written'> | null;
  readonly missing: number;
  readonly today: Day;
}

/** Everything that was typed in one sentence, and what it comes to for today’s weight, before anything is written. */
export function SaidBack({ animal, written, missing, today }: SaidBackProps) {
  return (
    <section class="said-dose" aria-labelledby="said-title">
      <h2 id="said-title">Said back</h2>
      {written === null ? (
        <p class="hint">
          {missing === 1 ? 'One line is' : `${missing} lines are`} missing or wrong. When all are there, the whole
          prescription stands here in one sentence, with the volume for today’s weight.
        </p>
      ) : (
        <Whole animal={animal} written={written} today={today} />
      )}
      <Caution words={DOSE_CAUTION} />
      {written !== null && wayOf(written.route) === 'stomach' && <Caution words={TUBE_CAUTION} />}
    </section>
  );
}

interface WholeProps {
  readonly animal: AnimalRecord;
  readonly written: Payload<'prescription-written'>;
  readonly today: Day;
}

function Whole({ animal, written, today }: WholeProps) {
  const dose = enteredDose(animal, written, today);
  const weight = lastWeight(animal);
  return (
    <>
      <p class="said-sentence">
        <strong>{sayAnimal(animal)}</strong> gets <strong>{written.drug}</strong>, {sayAmount(written)}, {written.route}
        , {sayEvery(written)}, {sayCourse(written)}, from {sayDay(written.startsOn as Day)};{' '}
        {written.withholdFood === true ? 'no food meanwhile' : 'food goes on as planned'}; written by{' '}
        {written.prescriber}
        {sayRest(written)}.
      </p>
      {weight !== null && (
        <p class="said-weight">
          For {sayGrams(weight.weightG)}, weighed on {sayDayShort(weight.day)}
          {written.startsOn > today && ', if it began today'}:
        </p>
      )}
      {dose.ok ? <Volume dose={dose.value} /> : <NoVolume animal={animal} problem={dose.problem} />}
    </>
  );
}

function sayRest(written: Payload<'prescription-written'>): string {
  const { capPercent, lot, paper } = written;
  return [
    ...sayPaperDays(written),
    ...(capPercent === undefined ? [] : [`cap ${capPercent} % of body mass`]),
    ...(lot === undefined ? [] : [`lot ${lot}`]),
    ...(paper === undefined ? [] : [`paper: ${paper}`]),
  ]
    .map((words) => `; ${words}`)
    .join('');
}
