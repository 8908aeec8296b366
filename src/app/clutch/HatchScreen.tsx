import '../look/parts.css';
import './clutch.css';
import './hatch.css';
import { useComputed } from '@preact/signals';
import { type AnimalRecord, type ClutchRecord, eggsLeft, eggsOpen, youngOf } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { HatchCount } from './HatchCount.tsx';
import { draftFor, type HatchDraft } from './hatchDraft.ts';
import { KnownClutch } from './KnownClutch.tsx';
import { OtherLook } from './OtherLook.tsx';
import { PickLooks } from './PickLooks.tsx';
import { sayClutch } from './sayClutch.ts';
import { useForecast } from './useForecast.ts';
import { WhoSired } from './WhoSired.tsx';
import { WriteHatch } from './WriteHatch.tsx';

/** Hatches a clutch out, or enters a litter: how many, how they look, and all of it written at once. */
export function HatchScreen({ id }: { readonly id?: string }) {
  return (
    <KnownClutch id={id}>
      {(clutch, dam) =>
        dam === null ? <NoDam clutch={clutch} /> : <Hatch key={clutch.id} clutch={clutch} dam={dam} />
      }
    </KnownClutch>
  );
}

interface HatchProps {
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord;
}

function Hatch({ clutch, dam }: HatchProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const draft = draftFor(clutch, leftToEnter(clutch, youngOf(facility, clutch).length));
  const change = (part: Partial<HatchDraft>): void => {
    draft.value = { ...draft.value, ...part };
  };
  const sire = useComputed(() => draft.value.sire).value;
  const forecast = useForecast(clutch, sire);
  const looks = forecast.looks?.at === 'done' ? forecast.looks.value.looks : [];
  return (
    <article class="screen hatch" aria-labelledby="hatch-title">
      <header>
        <p class="soft">
          <a href={`/clutch/${clutch.id}`}>{sayClutch(facility, clutch)}</a>
        </p>
        <h1 id="hatch-title">{titleOf(clutch)}</h1>
      </header>
      <HatchCount clutch={clutch} draft={draft.value} change={change} />
      {clutch.sire === null && <WhoSired clutch={clutch} dam={dam} draft={draft.value} change={change} />}
      <section class="hatch-looks" aria-labelledby="looks-title">
        <header class="part-head">
          <h2 id="looks-title">How they look</h2>
        </header>
        {forecast.fault !== null && sire !== null && <ProblemLine problem={forecast.fault} />}
        {forecast.looks?.at === 'failed' && <ProblemLine problem={forecast.looks.problem} />}
        {forecast.looks?.at === 'working' && <p class="soft">Working out what the young can be …</p>}
        {sire === null && <p class="soft">No sire is named, so no look is predicted: enter each below by its words.</p>}
        {looks.length > 0 && <PickLooks looks={looks} draft={draft.value} change={change} />}
        <OtherLook species={dam.species} draft={draft.value} change={change} />
      </section>
      <WriteHatch clutch={clutch} draft={draft.value} looks={looks} />
    </article>
  );
}

function NoDam({ clutch }: { readonly clutch: ClutchRecord }) {
  return (
    <section class="page">
      <h1>Hatch out</h1>
      <p class="problem-line" role="alert">
        <strong>The dam of this clutch is not on record here.</strong> Bring her record back first; then its young can
        be entered.
      </p>
      <a class="primary" href={`/clutch/${clutch.id}`}>
        Back to the clutch
      </a>
    </section>
  );
}

function leftToEnter(clutch: ClutchRecord, entered: number): number {
  if (clutch.bears === 'live young') return Math.max(0, (clutch.hatched ?? 0) - entered);
  return clutch.hatched === null ? eggsLeft(clutch) : eggsOpen(clutch);
}

function titleOf({ bears, hatched }: ClutchRecord): string {
  if (bears === 'live young') return 'Enter the young';
  return (hatched ?? 0) > 0 ? 'Hatch the rest out' : 'Hatch out';
}
