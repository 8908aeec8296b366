import { useSignal, useSignalEffect } from '@preact/signals';
import { type ClutchRecord, type Day, decideClutch, eggsLeft, eggsOpen, sayDay } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { DayChoice } from '../record/DayChoice.tsx';
import { CountStep } from './CountStep.tsx';
import type { HatchDraft } from './hatchDraft.ts';
import { sayOut } from './hatchWords.ts';
import { RestChoice } from './RestChoice.tsx';
import { sayCount } from './sayClutch.ts';
import { momentOn } from './writing.ts';

interface HatchCountProps {
  readonly clutch: ClutchRecord;
  readonly draft: HatchDraft;
  change(part: Partial<HatchDraft>): void;
}

/** How many, and on which day; what cannot be is said at once. */
export function HatchCount({ clutch, draft, change }: HatchCountProps) {
  const app = useApp();
  const isEggs = clutch.bears === 'eggs';
  const day = useSignal<Day | null>(draft.day);
  useSignalEffect(() => {
    if (day.value !== draft.day) change({ day: day.value });
  });
  const decision = isEggs
    ? decideClutch(app.site.facility.value, clutch, { do: 'hatched', hatched: draft.hatched }, momentOn(app, draft.day))
    : null;
  const rest = Math.max(0, eggsOpen(clutch) - draft.hatched);
  return (
    <section class="hatch-count" aria-labelledby="count-title">
      <h2 id="count-title">{questionOf(clutch)}</h2>
      <CountStep label={isEggs ? 'Hatched' : 'Young'} count={draft.hatched} set={(hatched) => change({ hatched })} />
      <p class="soft">{stateOf(clutch, app.clock.today.value)}</p>
      {decision?.kind === 'refused' && <ProblemLine problem={decision.problem} />}
      {isEggs && rest > 0 && draft.hatched > 0 && (
        <RestChoice rest={rest} isLast={draft.isLast} set={(isLast) => change({ isLast })} />
      )}
      {isEggs && (
        <details class="hatch-day">
          <summary>{draft.day === null ? 'On another day than today' : `On ${sayDay(draft.day)}`}</summary>
          <DayChoice day={day} />
        </details>
      )}
    </section>
  );
}

function questionOf({ bears, hatched }: ClutchRecord): string {
  if (bears === 'live young') return 'How many to enter?';
  return (hatched ?? 0) > 0 ? 'How many more?' : 'How many hatched?';
}

function stateOf(clutch: ClutchRecord, today: Day): string {
  if (clutch.bears === 'live young') return `Born ${sayDay(clutch.laidOn)}: ${sayCount(clutch)}.`;
  if (clutch.hatchedOn === null) return `${sayCount(clutch)} when laid, ${eggsLeft(clutch)} not seen to fail.`;
  return `Since ${sayDay(clutch.hatchedOn)}: ${sayOut(clutch, today)}.`;
}
