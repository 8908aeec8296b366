import '../treatment.css';
import './today.css';
import { useLocation } from 'preact-iso';
import { DOSE_CAUTION } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import { Caution } from '../Caution.tsx';
import { useNow } from '../useNow.ts';
import { Calls } from './Calls.tsx';
import { DoseFigures } from './DoseFigures.tsx';
import { DoseRow } from './DoseRow.tsx';
import { ScannedDose } from './ScannedDose.tsx';
import { callLines, doseLines } from './todayView.ts';
import { useCardScan } from './useCardScan.ts';

/** Who gets a dose today, in walking order; a card that is scanned here opens its dose. */
export function TreatmentsScreen() {
  const { site } = useApp();
  const { query, route } = useLocation();
  const now = useNow();
  const { walk } = useCardScan(now);
  const facility = site.facility.value;
  const lines = doseLines(facility, now);
  const calls = callLines(facility, now);
  const scanned = [...facility.animals.values()].find((animal) => animal.id === query['dose']);
  const isEmpty = lines.length === 0 && calls.length === 0;
  return (
    <section class="screen treatments" aria-labelledby="treatments-title">
      <header class="treatments-head">
        <h1 id="treatments-title">Treatments today</h1>
        <button type="button" class="secondary" onClick={walk}>
          Scan who gets a dose
        </button>
      </header>
      {isEmpty ? (
        <p class="empty">
          Nobody gets a dose today, and no recheck is near. A prescription is entered on an animal’s record:{' '}
          <a href="/find">find the animal</a>, or scan its card there.
        </p>
      ) : (
        <div class="treatments-body">
          <div class="treatments-first">
            <DoseFigures lines={lines} />
            <Caution words={DOSE_CAUTION} />
          </div>
          <section class="doses" aria-labelledby="doses-title">
            <h2 id="doses-title" class="doses-title">
              In walking order
            </h2>
            {lines.length === 0 ? (
              <p class="soft">Nobody gets a dose today.</p>
            ) : (
              <ol class="dose-lines">
                {lines.map((line) => (
                  <DoseRow key={line.treatment.record.id} line={line} />
                ))}
              </ol>
            )}
          </section>
          <div class="calls-part">
            <Calls calls={calls} today={now.today} />
            <a class="treatments-print" href="/print?what=treatment">
              Print the treatment cards
            </a>
          </div>
        </div>
      )}
      {isEmpty && <Caution words={DOSE_CAUTION} />}
      {scanned !== undefined && (
        <ScannedDose key={scanned.id} animal={scanned} now={now} onClose={() => route('/treatments', true)} />
      )}
    </section>
  );
}
