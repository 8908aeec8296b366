import { useId, useMemo, useState } from 'preact/hooks';
import { type Facility, type Id, sayId } from '../../core/index.ts';
import { type Findable, find, findIndex } from '../find/findIndex.ts';
import { useApp } from '../model/app.ts';
import type { Choice, Role } from './choice.ts';
import { otherOf, roleOf } from './taking.ts';

/** More lines than this are not read on a phone; another letter is quicker. */
const MOST = 8;

interface ParentSearchProps {
  readonly role: Role;
  readonly choice: Choice;
  choose(id: Id): void;
}

/** Finds a parent by name, number or id among the living animals that can be one: of the other one’s species, not of its sex. */
export function ParentSearch({ role, choice, choose }: ParentSearchProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const [typed, setTyped] = useState('');
  const fieldId = useId();
  const index = useMemo(() => candidates(facility, role, choice[otherOf(role)]), [facility, role, choice]);
  const found = useMemo(() => find(index, typed), [index, typed]);
  return (
    <search class="parent-search">
      <form
        onSubmit={(event) => {
          event.preventDefault();
          const [first] = found;
          if (first !== undefined) choose(first.id);
        }}
      >
        <label for={fieldId} class="unseen">
          Find the {role}
        </label>
        <input
          id={fieldId}
          type="search"
          placeholder={`Find the ${role}: name, number or id`}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          enterkeyhint="go"
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </form>
      {typed.trim() !== '' && <Found found={found} of={index.length} role={role} choose={choose} />}
    </search>
  );
}

interface FoundProps {
  readonly found: readonly Findable[];
  readonly of: number;
  readonly role: Role;
  choose(id: Id): void;
}

function Found({ found, of, role, choose }: FoundProps) {
  if (found.length === 0)
    return (
      <p class="soft" role="status">
        Not among the {of} living {of === 1 ? 'animal' : 'animals'} that can be the {role}.
      </p>
    );
  return (
    <ul class="parent-found" aria-label={`Found for the ${role}`}>
      {found.slice(0, MOST).map((one) => (
        <li key={one.id}>
          <button type="button" onClick={() => choose(one.id)}>
            <strong>{one.title}</strong> <span class="half-id">{sayId(one.id)}</span>
            <small>{one.sub}</small>
          </button>
        </li>
      ))}
      {found.length > MOST && <li class="soft">and {found.length - MOST} more: type another letter</li>}
    </ul>
  );
}

function candidates(facility: Facility, role: Role, otherId: Id | null): readonly Findable[] {
  const other = otherId === null ? undefined : facility.animals.get(otherId);
  return findIndex(facility).filter(({ id, kind }) => {
    const animal = kind === 'animal' ? facility.animals.get(id) : undefined;
    if (animal === undefined || animal.left !== null || animal.id === otherId) return false;
    return roleOf(animal) !== otherOf(role) && (other === undefined || other.species === animal.species);
  });
}
