import { useId, useState } from 'preact/hooks';
import { decideSizes, type PlaceRecord, type Problem, parseSize, roundTo, saySize } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

interface SizeFormProps {
  /** All of them get this size. */
  readonly places: readonly PlaceRecord[];
  readonly label: string;
  readonly name: string;
  readonly saves: string;
  onSaved(): void;
}

/** The inside as a keeper types it, said back while it is typed; saving keeps all else that is known of the place. */
export function SizeForm({ places, label, name, saves, onSaved }: SizeFormProps) {
  const { site, clock, strip, signs } = useApp();
  const [fieldId, hintId] = [useId(), useId()];
  const [typed, setTyped] = useState('');
  const [failed, setFailed] = useState<Problem | null>(null);
  async function save(): Promise<void> {
    const size = parseSize(typed);
    const decision = size.ok ? decideSizes(places, size.value, clock.today.value) : null;
    const why = size.ok ? (decision?.kind === 'refused' ? decision.problem : null) : size.problem;
    if (why !== null || decision === null || decision.kind === 'refused') return fail(why);
    const written = await site.write(decision.drafts);
    if (!written.ok) return fail(written.problem);
    signs.give('accepted');
    const [first] = places;
    const subject = places.length === 1 && first !== undefined ? first.id : null;
    strip.add({ subject, name, said: decision.said, result: 'accepted', problem: null, events: written.value });
    onSaved();
  }
  function fail(why: Problem | null): void {
    signs.give('refused');
    setFailed(why);
  }
  return (
    <form
      class="size-form"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <div class="field">
        <label for={fieldId}>{label}</label>
        <input
          id={fieldId}
          autocomplete="off"
          maxLength={60}
          value={typed}
          placeholder="90 x 45 x 30 cm"
          aria-describedby={hintId}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            setFailed(null);
          }}
        />
        <small id={hintId} role="status">
          {sayBack(typed)}
        </small>
      </div>
      {failed !== null && <ProblemLine problem={failed} />}
      <button type="submit" class="secondary">
        {saves}
      </button>
    </form>
  );
}

function sayBack(typed: string): string {
  const size = parseSize(typed);
  if (!size.ok) return 'Length, width and height inside, with their unit: mm, cm, m, inch or ft.';
  const { length, width } = size.value;
  return `Read as ${saySize(size.value)}, ${roundTo((length * width) / 1_000_000, 3)} m² of floor.`;
}
