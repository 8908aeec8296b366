import { type ClutchRecord, ownHatchSpans, problem } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import { sayHatchDays, sayHatchSpan, sayOut } from './hatchWords.ts';

interface HatchedLineProps {
  readonly clutch: ClutchRecord;
  /** Some are out and others still waited for. */
  readonly isPart: boolean;
}

/** What of the eggs is out, on which days, and what is still to come. */
export function HatchedLine({ clutch, isPart }: HatchedLineProps) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const { hatchedOn, hatched, eggs, dam } = clutch;
  if (hatchedOn === null || hatched === null) return null;
  const days = sayHatchDays(clutch, today);
  return (
    <div class="hatched-line">
      <p>
        <strong>{sayOut(clutch, today)}</strong>
      </p>
      <p>{days ?? <SpokenDay day={hatchedOn} today={today} />}</p>
      {isPart && (
        <p class="soft small">{sayHatchSpan(ownHatchSpans(facility, facility.animals.get(dam)?.species ?? ''))}</p>
      )}
      {hatched > eggs && <ProblemLine problem={problem('hatched-beyond', { hatched, eggs })} />}
    </div>
  );
}
