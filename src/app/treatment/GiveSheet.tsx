import './treatment.css';
import { useSignal } from '@preact/signals';
import { useState } from 'preact/hooks';
import {
  type AnimalRecord,
  type ConfirmedDose,
  type Day,
  type DoseAnswer,
  type Problem,
  sayAnimal,
  sayId,
  sayMl,
  type Treatment,
  TUBE_CAUTION,
  wayOf,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { LookAt } from '../record/Because.tsx';
import { DayChoice } from '../record/DayChoice.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { Caution } from './Caution.tsx';
import { decisionOn } from './giving.ts';
import { TextLine } from './TextLine.tsx';
import { TwiceButton } from './TwiceButton.tsx';
import { Volume } from './Volume.tsx';
import { sayWritten } from './words.ts';

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
  const day = useSignal<Day | null>(null);
  const why = useSignal<Problem | null>(null);
  function give(): void {
    const given: ConfirmedDose = {
      prescription: treatment.record.id,
      ml: shown.ml,
      second: second.value,
      lot: lot.value,
      note: note.value,
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
        <Volume dose={shown} large />
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
          <summary>Lot, note, {!needsSecond && 'second person, '}another day</summary>
          <TextLine label="Lot on the bottle" value={lot} most={60} />
          <TextLine label="Note" value={note} most={400} />
          {!needsSecond && <TextLine label="Second person" value={second} most={80} />}
          <DayChoice day={day} />
        </details>
        {why.value !== null && !isSecond && <ProblemLine problem={why.value} />}
        <div class="give-write">
          <Caution words={shown.caution} />
          <TwiceButton words={`${sayMl(shown.ml)} drawn up and checked`} onSure={give} />
          <button type="button" class="give-leave" onClick={onClose}>
            Give nothing
          </button>
        </div>
      </div>
    </Sheet>
  );
}
