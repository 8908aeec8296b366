import type { Signal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Problem } from '../../core/index.ts';
import { lengthOf, type Offered, placeOf } from './offered.ts';
import type { Typed } from './typed.ts';

interface TraitTextProps {
  readonly label: string;
  readonly text: Signal<string>;
  readonly typed: Typed;
  /** Under which name a form finds it. */
  readonly name?: string;
  /** What stands below it while it is empty. */
  readonly hint?: string;
}

const HINT = 'Such as Pastel, het Clown, 66 % possible het Piebald; or the code Pas/+; cln/+. Wild type: normal.';

/** The line that traits are typed on, and below it what was not understood: where, why, and words to put in. */
export function TraitText({ label, text, typed, name = 'traits', hint = HINT }: TraitTextProps) {
  const [id, whyId] = [useId(), useId()];
  return (
    <div class="field trait-text">
      <label for={id}>{label}</label>
      <textarea
        id={id}
        name={name}
        rows={1}
        maxLength={400}
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        value={text}
        aria-invalid={typed.kind === 'fault'}
        aria-describedby={whyId}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          event.currentTarget.form?.requestSubmit();
        }}
      />
      <div id={whyId} role="status">
        {typed.kind === 'empty' && <small>{hint}</small>}
        {typed.kind === 'fault' && <Fault problem={typed.problem} text={text} offered={typed.offered} />}
      </div>
    </div>
  );
}

interface FaultProps {
  readonly problem: Problem;
  readonly text: Signal<string>;
  readonly offered: readonly Offered[];
}

function Fault({ problem, text, offered }: FaultProps) {
  return (
    <div class="trait-fault">
      <Marked problem={problem} typed={text.value} />
      <p class="problem-line">
        <strong>{problem.message}</strong> {problem.remedy}
      </p>
      {offered.length > 0 && (
        <ul class="trait-offered" aria-label="Words to put in">
          {offered.map((one) => (
            <li key={one.words}>
              <button
                type="button"
                onClick={() => {
                  text.value = one.text;
                }}
              >
                {one.words}
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** The text as typed, with what the refusal is about underlined. */
function Marked({ problem, typed }: { readonly problem: Problem; readonly typed: string }) {
  const at = placeOf(problem);
  if (at === null) return null;
  const end = at + lengthOf(problem, typed);
  return (
    <p class="trait-marked">
      <span class="unseen">At character {at + 1}: </span>
      {typed.slice(0, at)}
      <mark>{typed.slice(at, end).trim() === '' ? '\u00a0\u00a0' : typed.slice(at, end)}</mark>
      {typed.slice(end)}
    </p>
  );
}
