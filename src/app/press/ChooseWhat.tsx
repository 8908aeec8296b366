import type { ComponentChildren } from 'preact';
import { type Id, sayNumber } from '../../core/index.ts';
import type { Choice, PressRack } from './selection.ts';

interface ChooseWhatProps {
  readonly choice: Choice;
  readonly choose: (choice: Choice) => void;
  readonly counts: { readonly stale: number; readonly all: number; readonly only: number };
  readonly racks: readonly PressRack[];
  readonly rack: Id | null;
  readonly setRack: (id: Id) => void;
}

/** Which cards; those that no longer say what is known are the default. */
export function ChooseWhat({ choice, choose, counts, racks, rack, setRack }: ChooseWhatProps) {
  const inRack = racks.find(({ id }) => id === rack)?.count ?? 0;
  const line = (id: Choice, words: string, count: number, more: ComponentChildren = null) => (
    <WhatLine id={id} words={words} count={count} isChosen={choice === id} choose={choose}>
      {more}
    </WhatLine>
  );
  return (
    <fieldset class="press-what">
      <legend>What</legend>
      {counts.only > 0 ? line('only', 'The asked cards', counts.only) : null}
      {line('stale', 'Cards out of date or never printed', counts.stale)}
      {line(
        'rack',
        'One rack',
        inRack,
        choice === 'rack' ? (
          <select
            aria-label="Rack"
            value={rack ?? ''}
            onChange={(event) => {
              const picked = racks.find(({ id }) => id === event.currentTarget.value);
              if (picked !== undefined) setRack(picked.id);
            }}
          >
            {racks.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        ) : null,
      )}
      {line('all', 'All cards', counts.all)}
    </fieldset>
  );
}

interface WhatLineProps<C> {
  readonly id: C;
  readonly words: string;
  /** How many; null where that is only known once it is chosen. */
  readonly count: number | null;
  readonly isChosen: boolean;
  readonly choose: (choice: C) => void;
  readonly children?: ComponentChildren;
}

/** One choice of what to print, with how many that would be. */
export function WhatLine<C>({ id, words, count, isChosen, choose, children }: WhatLineProps<C>) {
  return (
    <div class="what-line">
      <label>
        <input type="radio" name="what" checked={isChosen} onChange={() => choose(id)} />
        <span>{words}</span>
        <span class="what-count">{count === null ? null : sayNumber(count)}</span>
      </label>
      {children}
    </div>
  );
}
