import { useSignal } from '@preact/signals';
import {
  type AnimalRecord,
  DOSE_CAUTION,
  type GivenDose,
  type PrescriptionRecord,
  prescriptionNumber,
  sayMl,
  sayPaperDays,
  sayWritten,
  type Treatment,
  TUBE_CAUTION,
  wayOf,
} from '../../core/index.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { keepPaper, PaperList, PaperPhoto } from '../papers/index.ts';
import { LookAt } from '../record/Because.tsx';
import { Caution } from './Caution.tsx';
import { GiveSheet } from './GiveSheet.tsx';
import { NoVolume } from './NoVolume.tsx';
import { Outcomes } from './Outcomes.tsx';
import { StopSheet } from './StopSheet.tsx';
import { type Now, sayMoment } from './siteTime.ts';
import { goesOn, lastDoseDay, nextDose, sayCount, sayProgress } from './standings.ts';
import { TubeSheet } from './TubeSheet.tsx';
import { Volume } from './Volume.tsx';

interface TreatmentBlockProps {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly now: Now;
}

/** One treatment on the record: the vet’s words, the next dose, its volume or why there is none, and what can be written. */
export function TreatmentBlock({ animal, treatment, now }: TreatmentBlockProps) {
  const { record, schedule, dose } = treatment;
  const { written } = record;
  const next = nextDose(treatment, now);
  const isOn = goesOn(treatment, now);
  return (
    <article class="treatment-block" aria-label={`${written.drug}, ${written.prescriber}`}>
      <header>
        <h3>{written.drug}</h3>
        <p>{sayWritten(written)}</p>
        <p class="treatment-soft">{[written.prescriber, ...sayPaperDays(written)].join(' · ')}</p>
        {written.withholdFood === true && isOn && <p class="treatment-food">No food, as {written.prescriber} wrote</p>}
      </header>
      <p class={`next-dose next-${next.dot}`}>
        <StateDot state={next.dot} silent />
        <span>
          <strong>{next.words}</strong> · {sayProgress(treatment)}
        </span>
      </p>
      {schedule.ok && <LookAt words={schedule.value.warnings} />}
      {isOn && (dose.ok ? <Volume dose={dose.value} /> : <NoVolume animal={animal} problem={dose.problem} />)}
      <Caution words={DOSE_CAUTION} />
      {wayOf(written.route) === 'stomach' && isOn && <Caution words={TUBE_CAUTION} />}
      <CourseEnd treatment={treatment} now={now} isOn={isOn} />
      <Recheck treatment={treatment} now={now} />
      <BlockActions animal={animal} treatment={treatment} isOn={isOn} />
      {record.given.length > 0 && <Given given={record.given} now={now} />}
      <Outcomes animal={animal} record={record} isOver={!isOn} />
      <PapersOf animal={animal} record={record} />
    </article>
  );
}

function Recheck({ treatment: { state }, now }: Pick<TreatmentBlockProps, 'treatment' | 'now'>) {
  if (state.recheck === null) return null;
  const { on, inDays } = state.recheck;
  return (
    <p class={inDays <= 0 ? 'look-at' : 'recheck'}>
      {inDays < 0 ? 'The recheck was on ' : 'Recheck by the vet '}
      <SpokenDay day={on} today={now.today} />
    </p>
  );
}

/** When the last dose of the course is due, or that it is done. */
function CourseEnd({
  treatment,
  now,
  isOn,
}: Pick<TreatmentBlockProps, 'treatment' | 'now'> & { readonly isOn: boolean }) {
  const last = isOn ? lastDoseDay(treatment, now) : null;
  if (last === null) return null;
  return (
    <p class="course-end">
      The last dose of the course is due <SpokenDay day={last} today={now.today} />
    </p>
  );
}

interface OfRecord {
  readonly animal: AnimalRecord;
  readonly record: PrescriptionRecord;
}

/** The vet’s paper: where it lies, its photos, and the way to add one. */
function PapersOf({ animal, record }: OfRecord) {
  const app = useApp();
  const papers = animal.papers.filter((one) => one.of === record.id);
  return (
    <div class="papers-of">
      {record.written.paper !== undefined && <p class="treatment-soft">Paper: {record.written.paper}</p>}
      {papers.length > 0 && <PaperList animal={animal} papers={papers} isUnder />}
      <details class="papers-more">
        <summary>{papers.length === 0 ? 'Add a photo of the paper' : 'Add another photo'}</summary>
        <PaperPhoto
          words="Take or choose a photo"
          take={(picture) => void keepPaper(app, animal, picture, record.id)}
        />
      </details>
    </div>
  );
}

interface ActionsProps {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly isOn: boolean;
}

function BlockActions({ animal, treatment, isOn }: ActionsProps) {
  const sheet = useSignal<'give' | 'tube' | 'stop' | null>(null);
  const { record, dose, schedule } = treatment;
  const open = (name: typeof sheet.value) => () => {
    sheet.value = name;
  };
  if (!isOn && treatment.state.state !== 'open') return null;
  const isDue = schedule.ok && (schedule.value.state === 'due' || schedule.value.state === 'missed');
  return (
    <div class="treatment-actions">
      {dose.ok && (
        <button type="button" class={isDue ? 'primary' : 'secondary'} onClick={open('give')}>
          Give dose
        </button>
      )}
      {isOn && dose.ok && wayOf(record.written.route) === 'stomach' && (
        <button type="button" onClick={open('tube')}>
          Tube feeding
        </button>
      )}
      {isOn && (
        <a class="secondary" href={`/print?what=treatment&only=${animal.id}/${prescriptionNumber(animal, record)}`}>
          Print treatment card
        </a>
      )}
      {isOn && (
        <button type="button" onClick={open('stop')}>
          Stopped by the vet
        </button>
      )}
      {sheet.value === 'give' && dose.ok && (
        <GiveSheet animal={animal} treatment={treatment} dose={dose.value} onClose={open(null)} />
      )}
      {sheet.value === 'tube' && dose.ok && (
        <TubeSheet animal={animal} treatment={treatment} exactMl={dose.value.exactMl} onClose={open(null)} />
      )}
      {sheet.value === 'stop' && <StopSheet animal={animal} record={record} onClose={open(null)} />}
    </div>
  );
}

function Given({ given, now }: { readonly given: readonly GivenDose[]; readonly now: Now }) {
  return (
    <details class="given">
      <summary>{sayCount(given.length)} given</summary>
      <ol>
        {given.toReversed().map((one) => (
          <li key={one.id}>
            <time dateTime={one.day} title={one.day}>
              {sayMoment(one.atMs, now)}
            </time>
            <span>{sayMl(one.ml)}</span>
            <span>
              {[one.by, one.second].filter(Boolean).join(' and ') || 'nobody named'}
              {one.lot !== null && `, lot ${one.lot}`}
              {one.note !== null && `, ${one.note}`}
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}
