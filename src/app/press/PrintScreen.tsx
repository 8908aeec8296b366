import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import '../look/parts.css';
import { WHAT_WORDS, WHATS, type What, whatOf } from './batch.ts';
import { CardPress } from './CardPress.tsx';
import { LabelPress } from './LabelPress.tsx';
import './press.css';

/** Onto paper: cards, or whatever else is printed here; `/print?what=clutch&only=ID` comes with it chosen. */
export function PrintScreen() {
  const { query } = useLocation();
  const address = [query['what'], query['only'], query['rack']].join();
  // Another address is another job, even though the screen stays the same.
  return <Press key={address} query={query} />;
}

function Press({ query }: { readonly query: Readonly<Record<string, string>> }) {
  const asked = whatOf(query['what']);
  const [what, choose] = useState<What>(asked);
  const only = what === asked ? query['only'] || undefined : undefined;
  return (
    <section class="screen press" aria-labelledby="press-title">
      <h1 id="press-title">Print {what === 'card' ? 'cards' : WHAT_WORDS[what].many}</h1>
      <div class="field press-kind">
        <label for="press-kind">Kind</label>
        <select id="press-kind" value={what} onChange={(event) => choose(whatOf(event.currentTarget.value))}>
          {WHATS.map((one) => (
            <option key={one} value={one}>
              {WHAT_WORDS[one].name}
            </option>
          ))}
        </select>
      </div>
      {what === 'card' ? (
        <CardPress only={only} onlyRack={query['rack']} />
      ) : (
        <LabelPress key={what} sheet={what} only={only ?? null} />
      )}
    </section>
  );
}
