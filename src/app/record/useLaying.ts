import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type AnimalRecord, type Day, decideFemale, type Problem, sayAnimal } from '../../core/index.ts';
import { draftsOf, momentOn, writeMinted } from '../clutch/writing.ts';
import { useApp } from '../model/app.ts';
import { type LayingText, readLaying } from './laying.ts';

export interface LayingWriting {
  readonly doubt: Problem | null;
  readonly failure: Problem | null;
  write(text: LayingText, isSure: boolean): Promise<void>;
  leave(): void;
}

/** Writes a laying or a birth with a new id for its clutch, and goes to the clutch. */
export function useLaying(animal: AnimalRecord, what: 'laid' | 'born', on: Day, onClose: () => void): LayingWriting {
  const app = useApp();
  const { route } = useLocation();
  const [doubt, setDoubt] = useState<Problem | null>(null);
  const [failure, setFailure] = useState<Problem | null>(null);
  const refuse = (why: Problem): void => {
    app.signs.give('refused');
    setFailure(why);
  };

  async function write(text: LayingText, isSure: boolean): Promise<void> {
    setDoubt(null);
    setFailure(null);
    const act = readLaying(what, text);
    if (!act.ok) return refuse(act.problem);
    const facility = app.site.facility.value;
    // Whatever is refused or asked about is settled before an id is spent: hers stands in for the clutch's till then.
    const decision = decideFemale(facility, animal, act.value(animal.id), momentOn(app, on));
    if (decision.kind === 'refused') return refuse(decision.problem);
    if (decision.kind === 'asks' && !isSure) {
      app.signs.give('asks');
      return setDoubt(decision.problem);
    }
    const about = { subject: animal.id, name: sayAnimal(animal), said: decision.said };
    const written = await writeMinted(app, about, (mint) =>
      draftsOf(decideFemale(facility, animal, act.value(mint()), momentOn(app, on))),
    );
    if (!written.ok) return setFailure(written.problem);
    onClose();
    const clutch = written.value[0]?.subjects[1];
    if (clutch !== undefined) route(`/clutch/${clutch}`);
  }

  return { doubt, failure, write, leave: () => setDoubt(null) };
}
