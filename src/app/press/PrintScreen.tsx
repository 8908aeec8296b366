import { useMemo, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { WHAT_WORDS, WHATS, type What, whatOf } from './batch.ts';
import { CardPress } from './CardPress.tsx';
import { LabelPress } from './LabelPress.tsx';
import { ListPress } from './ListPress.tsx';
import { isListKind, LIST_KINDS, LIST_WORDS, type ListKind } from './lists.ts';
import { OpenRuns } from './OpenRuns.tsx';
import './press.css';
import { ResumePress } from './ResumePress.tsx';
import { openRuns } from './runs.ts';

/** Onto paper: cards, or whatever else is printed here; `/print?what=clutch&only=ID` comes with it chosen. */
export function PrintScreen() {
  const { query } = useLocation();
  const address = [query['what'], query['only'], query['rack'], query['run'], query['changed']].join();
  // Another address is another job, even though the screen stays the same.
  return <Press key={address} query={query} />;
}

function Press({ query }: { readonly query: Readonly<Record<string, string>> }) {
  const run = query['run'];
  if (run !== undefined) return <PressRest run={run} />;
  return <PressNew query={query} />;
}

/** The rest of a run that was begun. */
function PressRest({ run }: { readonly run: string }) {
  return (
    <section class="screen press" aria-labelledby="press-title">
      <h1 id="press-title">Print the rest</h1>
      <ResumePress run={run} />
      <p>
        <a href="/print">Print something else</a>
      </p>
    </section>
  );
}

/** What changed since a run was printed, as an address asks for it: of a long run too much to stand in one. */
function useChanged(run: string | undefined): string | undefined {
  const { site, clock } = useApp();
  // As it was when the screen opened: what is marked as printed meanwhile stays on it.
  return useMemo(() => {
    const open = run === undefined ? [] : openRuns(site.facility.value, clock.today.value);
    return open.find(({ record }) => record.run === run)?.progress.stale.join();
  }, [run]);
}

type Kind = What | ListKind;

function kindOf(text: string | undefined): Kind {
  return LIST_KINDS.find((one) => one === text) ?? whatOf(text);
}

function PressNew({ query }: { readonly query: Readonly<Record<string, string>> }) {
  const asked = kindOf(query['what']);
  const [what, choose] = useState<Kind>(asked);
  const changed = useChanged(query['changed']);
  const only = what === asked ? changed || query['only'] || undefined : undefined;
  return (
    <section class="screen press" aria-labelledby="press-title">
      <h1 id="press-title">Print {isListKind(what) ? LIST_WORDS[what].many : WHAT_WORDS[what].many}</h1>
      <OpenRuns />
      <div class="field press-kind">
        <label for="press-kind">Kind</label>
        <select id="press-kind" value={what} onChange={(event) => choose(kindOf(event.currentTarget.value))}>
          {WHATS.map((one) => (
            <option key={one} value={one}>
              {WHAT_WORDS[one].name}
            </option>
          ))}
          {LIST_KINDS.map((one) => (
            <option key={one} value={one}>
              {LIST_WORDS[one].name}
            </option>
          ))}
        </select>
      </div>
      {isListKind(what) ? (
        <ListPress key={what} kind={what} only={only ?? query['rack']} />
      ) : what === 'card' ? (
        <CardPress only={only} onlyRack={query['rack']} />
      ) : (
        <LabelPress key={what} sheet={what} only={only ?? null} />
      )}
    </section>
  );
}
