import { useId } from 'preact/hooks';
import { type Id, nameOf, sayAnimal } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { siresFor } from './laying.ts';

interface SireChoiceProps {
  readonly sires: ReturnType<typeof siresFor>;
  readonly sire: Id | null;
  choose(sire: Id | null): void;
}

/** Who the sire is: those that were with her, with the reason, another one, or nobody. */
export function SireChoice({ sires: { candidates, others }, sire, choose }: SireChoiceProps) {
  const { site } = useApp();
  const otherId = useId();
  const line = (id: Id | null, name: string, why: string) => (
    <label key={id ?? ''}>
      <input type="radio" name="sire" checked={sire === id} onChange={() => choose(id)} />
      <span>
        {name} <small>{why}</small>
      </span>
    </label>
  );
  return (
    <fieldset class="sire-choice">
      <legend>Sire</legend>
      {candidates.map(({ id, why }) => line(id, nameOf(site.facility.value, id), why))}
      {line(
        null,
        'not known',
        candidates.length > 1 ? 'all of these stay possible' : 'it can be told by the young later',
      )}
      {others.length > 0 && (
        <p class="field">
          <label for={otherId}>Another male, with no pairing written</label>
          <select
            id={otherId}
            value={others.some(({ id }) => id === sire) ? (sire ?? '') : ''}
            onChange={(event) => choose(others.find(({ id }) => id === event.currentTarget.value)?.id ?? null)}
          >
            <option value="">nobody</option>
            {others.map((one) => (
              <option key={one.id} value={one.id}>
                {sayAnimal(one)}
                {one.left === null ? '' : `, ${one.left.how}`}
              </option>
            ))}
          </select>
        </p>
      )}
    </fieldset>
  );
}
