import { useId, useState } from 'preact/hooks';
import { isDay, PREY_CLASSES, type Problem, preyClass, sayGramRange } from '../../core/index.ts';
import { Field, written } from '../books/Field.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { arrivedIn } from './receiveDraft.ts';

/** A lot that came: what stands on its box. It gets an id of its own when it is written. */
export function ReceiveForm() {
  const { freezer, site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const [prey, setPrey] = useState<string>(PREY_CLASSES[0]?.id ?? '');
  const [pick, sources] = [useId(), useId()];
  const today = clock.today.value;
  const usual = preyClass(prey);
  const known = [...new Set([...site.facility.value.lots.values()].flatMap((lot) => lot.source ?? []))];
  async function receive(form: HTMLFormElement): Promise<void> {
    const data = new FormData(form);
    const came = written(data, 'came');
    const read = arrivedIn(data);
    const refused = read.ok ? await freezer.receive(read.value, isDay(came) ? came : today) : read.problem;
    setFailed(refused);
    // A question may still be answered with no: then what was typed must not be lost.
    if (refused === null && freezer.question.value === null) form.reset();
  }
  return (
    <form
      class="form receive"
      onSubmit={(event) => {
        event.preventDefault();
        void receive(event.currentTarget);
      }}
    >
      <div class="field">
        <label for={pick}>Prey</label>
        <select id={pick} name="prey" value={prey} onChange={(event) => setPrey(event.currentTarget.value)}>
          {PREY_CLASSES.map(({ id, name, eachG }) => (
            <option key={id} value={id}>
              {name}, {sayGramRange(eachG)}
            </option>
          ))}
        </select>
      </div>
      <Field name="count" words="Items" type="number" hint="As many as are in the box or bag." />
      <Field
        name="grams"
        words="Grams of one item"
        hint={`From the lightest to the heaviest, such as 20-35. Left empty: ${usual === undefined ? '' : sayGramRange(usual.eachG)}, as the list has it.`}
      />
      <Field
        name="use-by"
        words="Use by"
        type="date"
        hint="As it stands on the box. Left empty, 365 days are assumed."
      />
      <Field name="source" words="From whom" list={sources} />
      <datalist id={sources}>
        {known.map((source) => (
          <option key={source} value={source} />
        ))}
      </datalist>
      <Field
        name="topical"
        words="Treated on the outside with"
        most={200}
        hint="As the supplier wrote it, such as a dusting. It is a note: it says nothing of a dose."
      />
      <Field name="came" words="Came on" type="date" start={today} />
      <button type="submit" class="primary">
        Receive the lot
      </button>
      {failed === null ? null : <ProblemLine problem={failed} />}
    </form>
  );
}
