import './treatment.css';
import { type AnimalRecord, sayDayShort, sayWritten, type Treatment } from '../../core/index.ts';
import { Outcomes } from './Outcomes.tsx';
import type { Now } from './siteTime.ts';
import { isCurrent, nextDose, sayProgress, treatmentsNow } from './standings.ts';
import { TreatmentBlock } from './TreatmentBlock.tsx';
import { useNow } from './useNow.ts';

/** An animal’s prescriptions on its record: those under way as blocks, earlier ones folded, and the way to enter one. */
export function TreatmentPart({ animal }: { readonly animal: AnimalRecord }) {
  const now = useNow();
  const all = treatmentsNow(animal, now);
  const current = all.filter((one) => isCurrent(one, now));
  const earlier = all.filter((one) => !current.includes(one));
  if (animal.left !== null && all.length === 0) return null;
  return (
    <section class="treatment" aria-labelledby="treatment-title">
      <header class="treatment-head">
        <h2 id="treatment-title">Treatment</h2>
        {all.length === 0 && <span class="treatment-soft">no prescription</span>}
        {animal.left === null && <a href={`/animal/${animal.id}/prescription`}>Enter a prescription</a>}
      </header>
      {current.map((one) => (
        <TreatmentBlock key={one.record.id} animal={animal} treatment={one} now={now} />
      ))}
      {earlier.length > 0 && <Earlier animal={animal} treatments={earlier} now={now} />}
    </section>
  );
}

interface EarlierProps {
  readonly animal: AnimalRecord;
  readonly treatments: readonly Treatment[];
  readonly now: Now;
}

function Earlier({ animal, treatments, now }: EarlierProps) {
  return (
    <details class="earlier">
      <summary>Earlier prescriptions, {treatments.length}</summary>
      <ul>
        {treatments.map((one) => (
          <li key={one.record.id}>
            <strong>{one.record.written.drug}</strong>, {sayWritten(one.record.written)}
            <span class="treatment-soft">
              {one.record.written.prescriber}, written down {sayDayShort(one.record.writtenOn)}.{' '}
              {nextDose(one, now).words}; {sayProgress(one)}.
            </span>
            <Outcomes animal={animal} record={one.record} isOver />
          </li>
        ))}
      </ul>
    </details>
  );
}
