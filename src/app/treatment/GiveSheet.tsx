import './treatment.css';
import { type Signal, useSignal } from '@preact/signals';
import { useId, useState } from 'preact/hooks';
import {
  type AnimalRecord,
  type ConfirmedDose,
  type Day,
  DOSE_CAUTION,
  type DoseAnswer,
  ok,
  type Problem,
  type Result,
  refuse,
  sayAnimal,
  sayId,
  sayMl,
  sayWritten,
  type Treatment,
  TUBE_CAUTION,
  treatmentBy,
  wayOf,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { type App, useApp } from '../model/app.ts';
import { LookAt } from '../record/Because.tsx';
import { DayChoice } from '../record/DayChoice.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { Caution } from './Caution.tsx';
import { decisionOn } from './giving.ts';
import { NoVolume } from './NoVolume.tsx';
import { atSiteTime } from './siteTime.ts';
import { TextLine } from './TextLine.tsx';
import { TwiceButton } from './TwiceButton.tsx';
import { Volume } from './Volume.tsx';

interface GiveSheetProps {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly dose: DoseAnswer;
  readonly onClose: () => void;
}

/** One dose: what is to be drawn up, checked and confirmed. There is no volume to type: it is this one or none. */
export function GiveSheet({ animal, treatment, dose, onClose }: GiveSheetProps) {
  const app = useApp();
  const { written } = treatment.record;
  const needsSecond = app.site.facility.value.site.rules.secondAtDoses;
  // What was drawn up is what stood here when the sheet opened; a figure that changes meanwhile must not change under the syringe.
  const [shown] = useState(dose);
  const [second, lot, note] = [useSignal(''), useSignal(written.lot ?? ''), useSignal('')];
  const [day, time] = [useSignal<Day | null>(null), useSignal('')];
  const why = useSignal<Problem | null>(null);
  const asked = volumeFor(app, { animal, treatment, shown }, day.value);
  function give(volume: DoseAnswer): void {
    const when = timeGiven(app, day.value, time.value);
    if (!when.ok) {
      why.value = when.problem;
      app.signs.give('refused');
      return;
    }
    const given: ConfirmedDose = {
      prescription: treatment.record.id,
      ml: volume.ml,
      second: second.value,
      lot: lot.value,
      note: note.value,
      ...(when.value !== null && { atMs: when.value }),
    };
    const decision = decisionOn(app, animal, given, day.value);
    why.value = decision.kind === 'refused' ? decision.problem : null;
    if (decision.kind === 'refused') {
      app.signs.give('refused');
      return;
    }
    onClose();
    void app.desk.decided(animal.id, decision);
  }
  const isSecond = needsSecond && why.value?.code.startsWith('dose-second') === true;
  return (
    <Sheet title={`Dose for ${sayAnimal(animal)}`} onClose={onClose}>
      <div class="give-sheet">
        <p class="slide-sheet-id">
          {sayId(animal.id)} · <i>{animal.species}</i>
        </p>
        <p class="give-drug">
          <strong>{written.drug}</strong>
          <span>{sayWritten(written)}</span>
        </p>
        {asked.ok ? <Volume dose={asked.value} large /> : <NoVolume animal={animal} problem={asked.problem} />}
        {treatment.schedule.ok && <LookAt words={treatment.schedule.value.warnings} />}
        {wayOf(written.route) === 'stomach' && <Caution words={TUBE_CAUTION} />}
        {needsSecond && (
          <TextLine
            label="Second person, who checked drug, strength, animal and syringe"
            value={second}
            most={80}
            fault={isSecond ? why.value : null}
          />
        )}
        <details class="give-more">
          <summary>Lot, note, {!needsSecond && 'second person, '}another time or day</summary>
          <TextLine label="Lot on the bottle" value={lot} most={60} />
          <TextLine label="Note" value={note} most={400} />
          {!needsSecond && <TextLine label="Second person" value={second} most={80} />}
          <WhenGiven day={day} time={time} />
        </details>
        {why.value !== null && !isSecond && <ProblemLine problem={why.value} />}
        <div class="give-write">
          <Caution words={DOSE_CAUTION} />
          {asked.ok && (
            <TwiceButton words={`${sayMl(asked.value.ml)} drawn up and checked`} onSure={() => give(asked.value)} />
          )}
          <button type="button" class="give-leave" onClick={onClose}>
            Give nothing
          </button>
        </div>
      </div>
    </Sheet>
  );
}

/** Now, or an earlier time of a day: the next dose counts from it, so another day needs its hour. */
function WhenGiven({ day, time }: { readonly day: Signal<Day | null>; readonly time: Signal<string> }) {
  const id = useId();
  return (
    <div class="when-given">
      <DayChoice day={day} words="Given on another day" />
      <div class="field">
        <label for={id}>Given at {day.value === null && '(empty: now)'}</label>
        <input
          id={id}
          type="time"
          value={time}
          onInput={(event) => {
            time.value = event.currentTarget.value;
          }}
        />
        <small>The next dose counts from here.</small>
      </div>
    </div>
  );
}

interface Shown {
  readonly animal: AnimalRecord;
  readonly treatment: Treatment;
  readonly shown: DoseAnswer;
}

/** The volume of today as it was shown, or that of another day by the weight of then. */
function volumeFor(app: App, { animal, treatment, shown }: Shown, day: Day | null): Result<DoseAnswer> {
  if (day === null) return ok(shown);
  return treatmentBy(animal, treatment.record.id, day, app.clock.nowMs())?.dose ?? ok(shown);
}

/** When a dose was given, in milliseconds since 1970; null for now. Errors: `text-missing`, `dose-ahead`. */
function timeGiven({ clock }: App, day: Day | null, typed: string): Result<number | null> {
  if (typed.trim() === '') return day === null ? ok(null) : refuse('text-missing', { what: 'time of the dose' });
  const atMs = atSiteTime(day ?? clock.today.value, typed, clock.timeZone.value);
  if (atMs === null) return refuse('text-missing', { what: 'time of the dose' });
  return atMs > clock.nowMs() ? refuse('dose-ahead', {}) : ok(atMs);
}
