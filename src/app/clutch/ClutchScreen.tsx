import '../look/parts.css';
import './clutch.css';
import type { AnimalRecord, ClutchRecord } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Ledger } from '../record/Ledger.tsx';
import { CanHold } from './CanHold.tsx';
import { ClutchActions, ClutchNow } from './ClutchActions.tsx';
import { ClutchHead } from './ClutchHead.tsx';
import { Findings } from './Findings.tsx';
import { Incubator } from './Incubator.tsx';
import { KnownClutch } from './KnownClutch.tsx';
import { Tray } from './Tray.tsx';
import { useClutchView } from './view.ts';
import { YoungList } from './YoungList.tsx';

/** A clutch: who laid it, its eggs, where it lies, when it hatches, and what came of it. */
export function ClutchScreen({ id }: { readonly id?: string }) {
  return <KnownClutch id={id}>{(clutch, dam) => <Clutch key={clutch.id} clutch={clutch} dam={dam} />}</KnownClutch>;
}

interface ClutchProps {
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord | null;
}

function Clutch({ clutch, dam }: ClutchProps) {
  const { site, clock } = useApp();
  const view = useClutchView(site.facility.value, clutch, clock.today.value);
  const { young, isOpen } = view;
  return (
    <article class="screen clutch" aria-labelledby="clutch-title">
      <div class="clutch-side">
        <ClutchHead clutch={clutch} dam={dam} view={view} />
        {young.length > 0 && <YoungList clutch={clutch} young={young} />}
        {isOpen && <Tray clutch={clutch} />}
        <ClutchActions clutch={clutch} view={view} />
        <ClutchNow clutch={clutch} view={view} />
      </div>
      <div class="clutch-side">
        {isOpen && <Incubator clutch={clutch} view={view} />}
        {isOpen && <CanHold clutch={clutch} />}
        {young.length > 0 && <Findings clutch={clutch} young={young} />}
        {clutch.hatchedOn !== null && !isOpen && clutch.bears === 'eggs' && (
          <details class="clutch-before">
            <summary>Eggs and incubator before the hatch</summary>
            <Tray clutch={clutch} />
            <Incubator clutch={clutch} view={view} />
          </details>
        )}
        <Ledger id={clutch.id} />
      </div>
    </article>
  );
}
