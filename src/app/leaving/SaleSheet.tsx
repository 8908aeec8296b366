import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type AnimalRecord, sayAnimal, sayId } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { FormAnswers } from '../shell/FormAnswers.tsx';
import { Sheet } from '../shell/Sheet.tsx';
import { TextLine } from '../treatment/TextLine.tsx';
import { DayLine, Notes } from './parts.tsx';
import { textOf, useLeaving } from './useLeaving.ts';

interface SaleSheetProps {
  readonly animal: AnimalRecord;
  readonly onClose: () => void;
}

const WAYS = [
  ['sold', 'sold'],
  ['given', 'given away'],
] as const;

/** A sale or a gift: to whom, on what day, with what papers; then its hand-over sheet. */
export function SaleSheet({ animal, onClose }: SaleSheetProps) {
  const { route } = useLocation();
  const group = useId();
  const how = useSignal<'sold' | 'given'>('sold');
  const [to, papers] = [useSignal(''), useSignal('')];
  const form = useLeaving(animal, how.value);
  async function write(event: Event): Promise<void> {
    event.preventDefault();
    const done = await form.write({ how: how.value, to: textOf(to), note: textOf(papers) });
    if (done === 'refused') return;
    onClose();
    if (done === 'accepted') route(`/animal/${animal.id}/hand-over`);
  }
  return (
    <Sheet title={`${sayAnimal(animal)} leaves`} onClose={onClose}>
      <p class="slide-sheet-id">{sayId(animal.id)}</p>
      <form onSubmit={(event) => void write(event)} noValidate>
        <fieldset class="leaving-choice">
          <legend class="unseen">How</legend>
          {WAYS.map(([way, words]) => (
            <label key={way} class="check-line">
              <input
                type="radio"
                name={group}
                checked={how.value === way}
                onChange={() => {
                  how.value = way;
                }}
              />
              <span>{words}</span>
            </label>
          ))}
        </fieldset>
        <TextLine label="To whom (may stay empty)" value={to} most={200} hint="Write only what your records need." />
        <DayLine day={form.day} />
        <TextLine label="Papers that go with it (may stay empty)" value={papers} most={400} />
        <Notes notes={form.notes} />
        {form.why.value !== null && <ProblemLine problem={form.why.value} />}
        <FormAnswers writes={how.value === 'sold' ? 'Write sold' : 'Write given'} onClose={onClose} />
      </form>
    </Sheet>
  );
}
