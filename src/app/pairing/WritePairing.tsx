import { useState } from 'preact/hooks';
import {
  type AnimalRecord,
  decidePairing,
  type EventId,
  type Problem,
  sayAnimal,
  sayDayShort,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { Sheet } from '../shell/Sheet.tsx';

interface WritePairingProps {
  readonly sire: AnimalRecord | null;
  readonly dam: AnimalRecord | null;
  /** Why it cannot be written, in words; null if it can. */
  readonly whyNot: string | null;
}

/** The one action of the page, at the thumb; where it cannot be done it says why. */
export function WritePairing({ sire, dam, whyNot }: WritePairingProps) {
  const writing = useWriting(sire, dam);
  const { clock } = useApp();
  const can = whyNot === null && sire !== null && dam !== null;
  return (
    <div class="pairing-write">
      {writing.failure !== null && <ProblemLine problem={writing.failure} />}
      {writing.written && can && (
        <p class="done-line" role="status">
          Pairing written. To the records of <a href={`/animal/${sire.id}`}>{sayAnimal(sire)}</a> and{' '}
          <a href={`/animal/${dam.id}`}>{sayAnimal(dam)}</a>.
        </p>
      )}
      <button type="button" class="now" aria-disabled={!can} onClick={() => can && void writing.begin()}>
        Write pairing
        <small>{can ? `${sayAnimal(sire)} × ${sayAnimal(dam)}, ${sayDayShort(clock.today.value)}` : whyNot}</small>
      </button>
      {writing.doubt !== null && can && (
        <AskedSheet doubt={writing.doubt} yes={() => void writing.yes()} no={writing.no} />
      )}
    </div>
  );
}

interface Writing {
  readonly doubt: Problem | null;
  readonly failure: Problem | null;
  /** True while the pairing that was written here stands. */
  readonly written: boolean;
  begin(): Promise<void>;
  yes(): Promise<void>;
  no(): void;
}

function useWriting(sire: AnimalRecord | null, dam: AnimalRecord | null): Writing {
  const { site, clock, strip, signs } = useApp();
  const pair = `${sire?.id} ${dam?.id}`;
  const [doubt, setDoubt] = useState<Problem | null>(null);
  const [failure, setFailure] = useState<Problem | null>(null);
  const [written, setWritten] = useState<{ readonly pair: string; readonly event: EventId } | null>(null);
  const entry = strip.entries.value.find(({ events }) => events.some(({ id }) => id === written?.event));

  async function write(isSure: boolean): Promise<void> {
    if (sire === null || dam === null) return;
    const today = clock.today.value;
    const decision = decidePairing('paired', { male: sire, female: dam }, { day: today, today, nowMs: clock.nowMs() });
    setFailure(null);
    if (decision.kind === 'refused') {
      signs.give('refused');
      return setFailure(decision.problem);
    }
    if (decision.kind === 'asks' && !isSure) {
      signs.give('asks');
      return setDoubt(decision.problem);
    }
    setDoubt(null);
    const result = await site.write(decision.drafts);
    signs.give(result.ok ? 'accepted' : 'refused');
    if (!result.ok) return setFailure(result.problem);
    const [event] = result.value;
    const name = sayAnimal(sire);
    strip.add({ subject: sire.id, name, said: decision.said, result: 'accepted', problem: null, events: result.value });
    if (event !== undefined) setWritten({ pair, event: event.id });
  }

  return {
    doubt,
    failure,
    written: written?.pair === pair && entry?.undone !== true,
    begin: () => write(false),
    yes: () => write(true),
    no: () => setDoubt(null),
  };
}

function AskedSheet({ doubt, yes, no }: { readonly doubt: Problem; yes(): void; no(): void }) {
  return (
    <Sheet title="Write pairing" tone="asks" onClose={no}>
      <p class="slide-sheet-question">{doubt.message}</p>
      <p>{doubt.remedy}</p>
      <div class="answers">
        <button type="button" class="answer" onClick={no}>
          No, write nothing
        </button>
        <button type="button" class="answer answer-yes" onClick={yes}>
          Yes, write it
        </button>
      </div>
    </Sheet>
  );
}
