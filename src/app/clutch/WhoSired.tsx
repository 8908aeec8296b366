import { type AnimalRecord, type ClutchRecord, candidateSires, type Id, nameOf } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { HatchDraft } from './hatchDraft.ts';

interface WhoSiredProps {
  readonly clutch: ClutchRecord;
  readonly dam: AnimalRecord;
  readonly draft: HatchDraft;
  change(part: Partial<HatchDraft>): void;
}

/** Where the laying named no sire: one of those that were with her, or nobody. */
export function WhoSired({ clutch, dam, draft, change }: WhoSiredProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const sires = candidateSires(facility, dam, clutch.laidOn);
  // Another sire has other looks: what was picked of the last one’s would be counted and not seen.
  const choose = (sire: Id | null) => change({ sire, picked: new Map() });
  return (
    <fieldset class="who-sired">
      <legend>Who is their sire?</legend>
      {sires.map(({ id, why }) => (
        <label key={id}>
          <input type="radio" name="hatch-sire" checked={draft.sire === id} onChange={() => choose(id)} />
          <span>
            {nameOf(facility, id)} <small>{why}</small>
          </span>
        </label>
      ))}
      <label>
        <input type="radio" name="hatch-sire" checked={draft.sire === null} onChange={() => choose(null)} />
        <span>
          not known <small>no sire is written on the young; their looks are entered by hand</small>
        </span>
      </label>
      {sires.length > 0 && (
        <p class="soft small">Whom you name is written as the young’s sire, and their chances rest on him.</p>
      )}
    </fieldset>
  );
}
