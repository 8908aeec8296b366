import { useSignal } from '@preact/signals';
import { type AnimalRecord, type EventId, sayAnimal, sayId, sayMl, sayWritten } from '../../../core/index.ts';
import { Sheet } from '../../shell/Sheet.tsx';
import { GiveSheet } from '../GiveSheet.tsx';
import { NoVolume } from '../NoVolume.tsx';
import type { Now } from '../siteTime.ts';
import { nextDose } from '../standings.ts';
import { dosesOf } from './todayView.ts';

interface ScannedDoseProps {
  readonly animal: AnimalRecord;
  readonly now: Now;
  readonly onClose: () => void;
}

/** What a scanned card opens: its dose, or where several are under way, which of them. */
export function ScannedDose({ animal, now, onClose }: ScannedDoseProps) {
  const doses = dosesOf(animal, now);
  const picked = useSignal<EventId | null>(doses.length === 1 ? (doses[0]?.record.id ?? null) : null);
  const chosen = doses.find((one) => one.record.id === picked.value);
  if (chosen?.dose.ok) {
    return <GiveSheet animal={animal} treatment={chosen} dose={chosen.dose.value} onClose={onClose} />;
  }
  return (
    <Sheet title={`Dose for ${sayAnimal(animal)}`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      {doses.length > 1 && <p>More than one is under way. Take the bottle in your hand and choose.</p>}
      <ul class="which-dose">
        {doses.map((one) => (
          <li key={one.record.id}>
            {one.dose.ok ? (
              <button
                type="button"
                onClick={() => {
                  picked.value = one.record.id;
                }}
              >
                <strong>
                  {one.record.written.drug}, {sayMl(one.dose.value.ml)}
                </strong>
                <span>{sayWritten(one.record.written)}</span>
                <span>{nextDose(one, now).words}</span>
              </button>
            ) : (
              <>
                <strong>{one.record.written.drug}</strong>
                <NoVolume animal={animal} problem={one.dose.problem} />
              </>
            )}
          </li>
        ))}
      </ul>
      <button type="button" class="give-leave" onClick={onClose}>
        Give nothing
      </button>
    </Sheet>
  );
}
