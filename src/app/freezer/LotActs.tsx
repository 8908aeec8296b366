import { useState } from 'preact/hooks';
import {
  addDays,
  type Day,
  type LotAct,
  type LotRecord,
  type Problem,
  THAWED_WHY,
  WASTE_WHY,
} from '../../core/index.ts';
import { Field, Pick, written } from '../books/Field.tsx';
import { Lens } from '../look/Lens.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

type Doing = LotAct['do'];

const DOINGS: readonly { readonly id: Doing; readonly words: string; readonly go: string }[] = [
  { id: 'use', words: 'Take out', go: 'Take them out' },
  { id: 'waste', words: 'Throw away', go: 'Throw them away' },
  { id: 'count', words: 'Count', go: 'Write the count' },
];

/** What is done with a lot: taken out to thaw, thrown away, counted. One number, one touch. */
export function LotActs({ lot, today }: { readonly lot: LotRecord; readonly today: Day }) {
  const { freezer } = useApp();
  const [doing, setDoing] = useState<Doing>('use');
  const [failed, setFailed] = useState<Problem | null>(null);
  async function act(form: HTMLFormElement): Promise<void> {
    const refused = await freezer.act(lot.id, actIn(new FormData(form), doing, today));
    setFailed(refused);
    if (refused === null && freezer.question.value === null) form.reset();
  }
  const chosen = DOINGS.find(({ id }) => id === doing);
  return (
    <section class="lot-acts" aria-label="This lot">
      <Lens
        label="What is done"
        chosen={doing}
        choose={(next) => {
          setDoing(next);
          setFailed(null);
        }}
        choices={DOINGS}
      />
      <form
        key={doing}
        class="form"
        onSubmit={(event) => {
          event.preventDefault();
          void act(event.currentTarget);
        }}
      >
        <Field
          name="count"
          words={doing === 'count' ? 'Items that are really there' : 'Items'}
          type="number"
          hint={doing === 'count' ? `${lot.left} by the book. None: write 0.` : `${lot.left} are left by the book.`}
        />
        {doing === 'use' && (
          <Pick name="for" words="To be fed">
            <option value={today}>today</option>
            <option value={addDays(today, 1)}>tomorrow</option>
          </Pick>
        )}
        {doing === 'waste' && <WasteFields />}
        <button type="submit" class="primary">
          {chosen?.go}
        </button>
        {failed === null ? null : <ProblemLine problem={failed} />}
      </form>
    </section>
  );
}

function WasteFields() {
  const [thawed, setThawed] = useState(false);
  return (
    <>
      <label class="check-line">
        <input
          type="checkbox"
          name="thawed"
          checked={thawed}
          onChange={(event) => setThawed(event.currentTarget.checked)}
        />
        <span>It was thawed before: it left the book by that</span>
      </label>
      <Field name="why" words="Why" most={200} list="waste-why" />
      <datalist id="waste-why">
        {(thawed ? THAWED_WHY : WASTE_WHY).map((why) => (
          <option key={why} value={why} />
        ))}
      </datalist>
    </>
  );
}

/** An empty line is no number: the rule then says so. */
function actIn(form: FormData, doing: Doing, today: Day): LotAct {
  const typed = written(form, 'count');
  const count = typed === '' ? Number.NaN : Number(typed);
  switch (doing) {
    case 'use':
      return { do: 'use', count, forDay: written(form, 'for') === addDays(today, 1) ? addDays(today, 1) : today };
    case 'waste':
      return { do: 'waste', count, why: written(form, 'why'), thawed: form.has('thawed') };
    case 'count':
      return { do: 'count', count };
    default:
      return doing satisfies never;
  }
}
