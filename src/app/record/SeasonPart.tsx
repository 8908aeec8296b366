import '../clutch/clutch.css';
import '../clutch/hatch.css';
import './season.css';
import { useMemo } from 'preact/hooks';
import { type AnimalRecord, breedingOf, seasonOf } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { FemaleSeasonPart } from './FemaleSeasonPart.tsx';
import { MaleSeasonPart } from './MaleSeasonPart.tsx';
import { PlannedLines } from './PlannedLines.tsx';
import { SeasonActions } from './SeasonActions.tsx';

/** An animal's breeding season: how far it is, what comes next, and what can be written. */
export function SeasonPart({ animal }: { readonly animal: AnimalRecord }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const season = useMemo(() => seasonOf(facility, animal, today), [facility, animal, today]);
  const isBreeding = season.stage !== 'resting' || animal.together.length > 0;
  if (animal.sex === 'unsexed' && !isBreeding) return null;
  if (animal.left !== null && !isBreeding) return null;
  if (!isBreeding) return <Resting animal={animal} />;
  return (
    <section class="breeding" aria-labelledby="season-title">
      {animal.sex === 'male' ? <MaleSeasonPart animal={animal} /> : <FemaleSeasonPart season={season} />}
      <PlannedLines animal={animal} />
      {animal.left === null && <SeasonActions animal={animal} />}
    </section>
  );
}

/** Nothing of this season is written: one line, and the ways to begin behind it. */
function Resting({ animal }: { readonly animal: AnimalRecord }) {
  const months = breedingOf(animal.species)?.pairing ?? null;
  return (
    <>
      <PlannedLines animal={animal} />
      <details class="breeding breeding-resting">
        <summary>
          <span>Season</span> nothing written
        </summary>
        {months !== null && (
          <p class="breeding-soft">
            Usually put together from {MONTHS[months.from - 1]} to {MONTHS[months.to - 1]} ({months.mark}:{' '}
            {months.source}
            ).
          </p>
        )}
        <SeasonActions animal={animal} />
      </details>
    </>
  );
}

const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June', 'July'],
  ...['August', 'September', 'October', 'November', 'December'],
];
