import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import {
  type ClutchRecord,
  type Hatchlings,
  hatchOut,
  type Id,
  type Problem,
  type YoungLook,
} from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { forgetDraft, type HatchDraft, keyOf } from './hatchDraft.ts';
import { sayClutch } from './sayClutch.ts';
import { draftsOf, momentOn, writeMinted } from './writing.ts';

export interface Hatching {
  readonly doubt: Problem | null;
  readonly failure: Problem | null;
  write(isSure: boolean): Promise<void>;
  leave(): void;
}

/** Writes a hatch-out in one transaction and goes to the clutch, where its young then stand. */
export function useHatching(clutch: ClutchRecord, draft: HatchDraft, looks: readonly YoungLook[]): Hatching {
  const app = useApp();
  const { route } = useLocation();
  const [doubt, setDoubt] = useState<Problem | null>(null);
  const [failure, setFailure] = useState<Problem | null>(null);
  const refuse = (why: Problem): void => {
    app.signs.give('refused');
    setFailure(why);
  };

  async function write(isSure: boolean): Promise<void> {
    setDoubt(null);
    setFailure(null);
    const facility = app.site.facility.value;
    const day = clutch.bears === 'live young' ? clutch.laidOn : draft.day;
    const moment = momentOn(app, day);
    const made = (mint: () => Id) =>
      hatchOut(facility, { ...clutch, sire: draft.sire }, groupsOf(draft, looks), { moment, last: draft.isLast, mint });
    // Whatever is refused or asked about is settled before an id is spent.
    const first = made(() => clutch.id);
    if (!first.ok) return refuse(first.problem);
    const { decision } = first.value;
    if (decision.kind === 'refused') return refuse(decision.problem);
    if (decision.kind === 'asks' && !isSure) {
      app.signs.give('asks');
      return setDoubt(decision.problem);
    }
    const about = { subject: clutch.id, name: sayClutch(facility, clutch), said: decision.said };
    const written = await writeMinted(app, about, (mint) => {
      const out = made(mint);
      return out.ok ? draftsOf(out.value.decision) : [];
    });
    if (!written.ok) return setFailure(written.problem);
    forgetDraft(clutch.id);
    route(`/clutch/${clutch.id}`);
  }

  return { doubt, failure, write, leave: () => setDoubt(null) };
}

function groupsOf(draft: HatchDraft, looks: readonly YoungLook[]): readonly Hatchlings[] {
  const picked = looks.flatMap((look) => {
    const count = draft.picked.get(keyOf(look)) ?? 0;
    return count === 0 ? [] : [{ count, look }];
  });
  return [...picked, ...draft.typed.map(({ traits, count }) => ({ count, typed: traits }))];
}
