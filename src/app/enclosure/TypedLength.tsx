import { useId, useState } from 'preact/hooks';
import { type EnclosureRule, enclosureVerdicts, parseLength, type SizeMm, sayLength } from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { Verdicts } from './Verdicts.tsx';

interface TypedLengthProps {
  readonly species: string;
  readonly animals: number;
  readonly sizeMm: SizeMm | null;
  readonly picked: EnclosureRule | null;
}

/** The comparison at a length that is typed and written nowhere: for an animal that nobody measured, or for when it has grown. */
export function TypedLength({ species, animals, sizeMm, picked }: TypedLengthProps) {
  const fieldId = useId();
  const [typed, setTyped] = useState('');
  const length = typed.trim() === '' ? null : parseLength(typed);
  return (
    <div class="typed-length">
      <div class="field">
        <label for={fieldId}>Compare at a length</label>
        <input
          id={fieldId}
          inputMode="decimal"
          autocomplete="off"
          maxLength={12}
          placeholder="130 cm"
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
        <small>The whole length, such as 130, 1.3 m or 51 in; without a unit it is cm. It is not written down.</small>
      </div>
      {length?.ok === false && <ProblemLine problem={length.problem} />}
      {length?.ok === true && (
        <div role="status">
          <p>
            {species} at {sayLength(length.value)}
            {animals === 1 ? '' : `, ${animals} together`}:
          </p>
          <Verdicts
            verdicts={enclosureVerdicts({ species, animals, lengthM: length.value / 1000 }, sizeMm, picked)}
            picked={picked}
          />
        </div>
      )}
    </div>
  );
}
