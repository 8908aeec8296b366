import { useMemo, useState } from 'preact/hooks';
import { type Id, nameOf, sayId } from '../../../core/index.ts';
import { find, findIndex } from '../../find/findIndex.ts';
import { useApp } from '../../model/app.ts';

/** More lines than this are not read on a phone; another letter is quicker. */
const MOST = 6;

interface AnimalChoiceProps {
  readonly chosen: Id | null;
  choose(id: Id | null): void;
}

/** One animal by name, number or id, also one that left. */
export function AnimalChoice({ chosen, choose }: AnimalChoiceProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const [typed, setTyped] = useState('');
  const index = useMemo(() => findIndex(facility).filter(({ kind }) => kind === 'animal'), [facility]);
  const found = useMemo(() => find(index, typed), [index, typed]);
  if (chosen !== null)
    return (
      <p class="pack-chosen">
        <strong>{nameOf(facility, chosen)}</strong> {sayId(chosen)}
        <button type="button" class="link" onClick={() => choose(null)}>
          Another one
        </button>
      </p>
    );
  return (
    <search class="pack-search">
      <div class="field">
        <label for="pack-animal">Name, number or id</label>
        <input
          id="pack-animal"
          type="search"
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          value={typed}
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </div>
      {typed.trim() !== '' && found.length === 0 && (
        <p class="soft" role="status">
          None of {index.length} animals. Try fewer letters.
        </p>
      )}
      <ul aria-label="Found">
        {found.slice(0, MOST).map(({ id, title, sub, where }) => (
          <li key={id}>
            <button type="button" onClick={() => choose(id)}>
              <strong>{title}</strong> {sayId(id)}{' '}
              <small>{[sub, where].filter((part) => part !== '').join(' · ')}</small>
            </button>
          </li>
        ))}
        {found.length > MOST && <li class="soft">and {found.length - MOST} more: type another letter</li>}
      </ul>
    </search>
  );
}
