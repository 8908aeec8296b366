import { useEffect, useId, useMemo, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type AnimalRecord, type Id, problem, type Result, sayAnimal, sayId } from '../../core/index.ts';
import { type Findable, find, findIndex } from '../find/findIndex.ts';
import { useApp } from '../model/app.ts';
import type { AnimalWanted } from '../model/desk.ts';
import { KinshipWords } from './KinshipWords.tsx';

interface CompareProps {
  readonly animal: AnimalRecord;
  readonly other: AnimalRecord | null;
  /** The address of this page with another animal in it, or with none. */
  readonly address: (other: Id | null) => string;
}

/** How closely it is related to another animal, chosen by its card or its name. */
export function Compare({ animal, other, address }: CompareProps) {
  const { route } = useLocation();
  return (
    <section class="ped-part" aria-labelledby="ped-kinship">
      <h2 id="ped-kinship">Kinship with another animal</h2>
      {other === null ? (
        <Choose animal={animal} address={address} />
      ) : (
        <>
          <p class="kin-other">
            <a href={`/animal/${other.id}`}>{sayAnimal(other)}</a>
            <span class="soft">{sayId(other.id)}</span>
            <button type="button" class="link" onClick={() => route(address(null), true)}>
              Another one
            </button>
          </p>
          <KinshipWords animal={animal} other={other} />
        </>
      )}
    </section>
  );
}

const FEW = 6;

function Choose({ animal, address }: Omit<CompareProps, 'other'>) {
  const { site, desk } = useApp();
  const { route } = useLocation();
  const [typed, setTyped] = useState('');
  const [isOpen, setOpen] = useState(false);
  const fieldId = useId();
  const facility = site.facility.value;
  const index = useMemo(
    () => findIndex(facility).filter(({ kind, id }) => kind === 'animal' && isOther(facility.animals.get(id), animal)),
    [facility, animal],
  );
  const wanted: AnimalWanted = {
    says: `Scan the animal to compare with ${sayAnimal(animal)}`,
    take: (id) => taken(id, animal, address),
  };
  useEffect(() => {
    if (!isOpen) return;
    desk.want(wanted);
    // On the Scan screen the want must outlive this one, for the camera is there.
    return () => {
      if (location.pathname !== '/') desk.want(null);
    };
  }, [isOpen]);
  return (
    <details class="kin-choose" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Choose an animal</summary>
      <button
        type="button"
        class="secondary"
        onClick={() => {
          desk.want(wanted);
          route('/');
        }}
      >
        Scan its card
      </button>
      <p class="field">
        <label for={fieldId}>or type its name, number or id</label>
        <input
          id={fieldId}
          type="search"
          autoComplete="off"
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </p>
      <Found found={find(index, typed)} typed={typed} address={address} />
    </details>
  );
}

function isOther(one: AnimalRecord | undefined, animal: AnimalRecord): boolean {
  return one !== undefined && one.id !== animal.id && one.species === animal.species;
}

function taken(id: Id, animal: AnimalRecord, address: CompareProps['address']): Result<string> {
  if (id !== animal.id) return { ok: true, value: address(id) };
  return { ok: false, problem: problem('compare-self', { animal: sayAnimal(animal) }) };
}

interface FoundProps extends Pick<CompareProps, 'address'> {
  readonly found: readonly Findable[];
  readonly typed: string;
}

function Found({ found, typed, address }: FoundProps) {
  if (typed.trim() === '') return null;
  if (found.length === 0) return <p role="status">No other animal of this species is called that.</p>;
  return (
    <ul class="kin-found">
      {found.slice(0, FEW).map(({ id, title, sub }) => (
        <li key={id}>
          <a href={address(id)}>
            <strong>{title}</strong> <span class="soft">{sayId(id)}</span>
            <small class="soft">{sub}</small>
          </a>
        </li>
      ))}
      {found.length > FEW && <li class="soft">and {found.length - FEW} more: add a word</li>}
    </ul>
  );
}
