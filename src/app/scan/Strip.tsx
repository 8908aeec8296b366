import type { Facility, Id } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { StripEntry } from '../model/strip.ts';

/** Entries of the strip, newest first, each with its undo. */
export function Strip({ entries }: { readonly entries: readonly StripEntry[] }) {
  return (
    <ol class="strip">
      {entries.map((entry) => (
        <Entry key={entry.key} entry={entry} />
      ))}
    </ol>
  );
}

const SIGNS = { accepted: '✓', asks: '?', refused: '×' } as const;

function Entry({ entry }: { readonly entry: StripEntry }) {
  return (
    <li class={`strip-entry strip-${entry.result}${entry.undone ? ' strip-undone' : ''}`}>
      <span class="strip-sign" aria-hidden="true">
        {SIGNS[entry.result]}
      </span>
      <div class="strip-words">
        <p>
          <Name entry={entry} /> <span class="strip-said">{entry.said}</span>
          {entry.undone && <em> taken back</em>}
        </p>
        {entry.problem !== null && (
          <p class="strip-problem">
            {entry.problem.message} {entry.problem.remedy}
          </p>
        )}
      </div>
      <Undo entry={entry} />
    </li>
  );
}

function Name({ entry }: { readonly entry: StripEntry }) {
  const { site } = useApp();
  const address = entry.subject === null ? null : addressIn(site.facility.value, entry.subject);
  return address === null ? <strong>{entry.name}</strong> : <a href={address}>{entry.name}</a>;
}

/** The page of whatever an entry is about; null for what is gone, such as a clutch that was taken back. */
function addressIn({ animals, places, clutches, items, lots }: Facility, id: Id): string | null {
  if (animals.has(id)) return `/animal/${id}`;
  if (places.has(id)) return `/place/${id}`;
  if (items.has(id)) return `/item/${id}`;
  if (lots.has(id)) return `/lot/${id}`;
  return clutches.has(id) ? `/clutch/${id}` : null;
}

function Undo({ entry }: { readonly entry: StripEntry }) {
  const { desk } = useApp();
  if (entry.events.length === 0 || entry.undone) return null;
  return (
    <button
      type="button"
      class="undo"
      aria-label={`Undo ${entry.said}, ${entry.name}`}
      onClick={() => void desk.undo(entry)}
    >
      Undo
    </button>
  );
}
