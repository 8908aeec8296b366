import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import { type AnimalRecord, cardTraits, type Id, parseId, sayAnimal, sayId, saySex } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import type { Role } from './choice.ts';
import { candidates, matching } from './found.ts';
import type { Choosing } from './useParents.ts';

/** More lines than this are not read on a phone; another letter is quicker. */
const MOST = 6;

interface ParentLineProps {
  readonly role: Role;
  readonly animal: AnimalRecord;
  readonly choosing: Choosing;
}

/** One parent: who it is, and the ways to another one. */
export function ParentLine({ role, animal, choosing }: ParentLineProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const { refused } = choosing;
  const id = choosing.parents[role];
  const parent = id === null ? undefined : facility.animals.get(id);
  return (
    <section class="parent-line" aria-labelledby={`parent-${role}`}>
      <h2 id={`parent-${role}`}>{role === 'sire' ? 'Sire' : 'Dam'}</h2>
      <div class="parent-who" role="status">
        {parent === undefined ? <p class="parent-unknown">unknown</p> : <Who parent={parent} />}
      </div>
      {refused?.role === role && <ProblemLine problem={refused.problem} />}
      <div class="parent-ways">
        <button type="button" class="secondary" onClick={() => choosing.scan(role)}>
          Scan the {role}
        </button>
        {id !== null && (
          <button type="button" class="link" onClick={() => choosing.choose(role, null)}>
            The {role} is unknown
          </button>
        )}
      </div>
      <Search role={role} animal={animal} onChoose={(one) => choosing.choose(role, one)} />
    </section>
  );
}

function Who({ parent }: { readonly parent: AnimalRecord }) {
  const { site } = useApp();
  const traits = cardTraits(site.facility.value, parent);
  return (
    <>
      <p class="parent-name">
        <a href={`/animal/${parent.id}`}>{sayAnimal(parent)}</a> <span>{sayId(parent.id)}</span>
      </p>
      <p class="soft">
        {saySex(parent.sex)}
        {traits !== null && ` · ${traits.words?.long ?? traits.code}`}
        {parent.left !== null && ` · left: ${parent.left.how}`}
      </p>
    </>
  );
}

interface SearchProps {
  readonly role: Role;
  readonly animal: AnimalRecord;
  readonly onChoose: (id: Id) => void;
}

function Search({ role, animal, onChoose }: SearchProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const typed = useSignal('');
  const fieldId = useId();
  const all = candidates(facility, animal.species, role);
  const found = matching(all, typed.value);
  // A whole id of another animal is taken too, so that why it cannot be is said.
  const read = parseId(typed.value);
  const named = read.ok && found.length === 0 ? facility.animals.get(read.value.id) : undefined;
  const hits = named === undefined ? found : [named];
  function choose(id: Id): void {
    typed.value = '';
    onChoose(id);
  }
  return (
    <form
      class="field"
      onSubmit={(event) => {
        event.preventDefault();
        const [first] = hits;
        if (first !== undefined) choose(first.id);
      }}
    >
      <label for={fieldId}>Find the {role} by name, number or id</label>
      <input
        id={fieldId}
        type="search"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        value={typed}
        onInput={(event) => {
          typed.value = event.currentTarget.value;
        }}
      />
      {typed.value.trim() !== '' && <Hits hits={hits} of={all.length} role={role} onChoose={choose} />}
    </form>
  );
}

interface HitsProps {
  readonly hits: readonly AnimalRecord[];
  readonly of: number;
  readonly role: Role;
  readonly onChoose: (id: Id) => void;
}

function Hits({ hits, of, role, onChoose }: HitsProps) {
  if (hits.length === 0)
    return (
      <p class="soft" role="status">
        Not among the {of} {of === 1 ? 'animal' : 'animals'} of this species that can be the {role}.
      </p>
    );
  return (
    <ul class="parent-hits" aria-label={`Found for the ${role}`}>
      {hits.slice(0, MOST).map((one) => (
        <li key={one.id}>
          <button type="button" onClick={() => onChoose(one.id)}>
            <strong>{sayAnimal(one)}</strong> <span>{sayId(one.id)}</span>
            <small>
              {saySex(one.sex)} · {one.species}
            </small>
          </button>
        </li>
      ))}
      {hits.length > MOST && <li class="soft">and {hits.length - MOST} more: type another letter</li>}
    </ul>
  );
}
