import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Problem } from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import './find.css';
import { FoundList } from './FoundList.tsx';
import { addressOf, type Findable, find, findIndex, whyNoId } from './findIndex.ts';

const WAIT_MS = 120;

/** Search over names, numbers, ids, species, traits, places, wares and lots; Enter opens a typed id, else the first line found. */
export function FindScreen() {
  const { site } = useApp();
  const { route } = useLocation();
  const facility = site.facility.value;
  const index = useMemo(() => findIndex(facility), [facility]);
  const [typed, setTyped] = useState('');
  const [asked, setAsked] = useState('');
  const [said, setSaid] = useState<Problem | null>(null);
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const timer = setTimeout(() => setAsked(typed), WAIT_MS);
    return () => clearTimeout(timer);
  }, [typed]);
  const found = useMemo(() => find(index, asked), [index, asked]);

  function enter(): void {
    const id = addressOf(facility, typed);
    const first = find(index, typed)[0];
    if (id.ok) route(id.value);
    else if (first !== undefined) route(pathOf(first));
    else setSaid(whyNoId(facility, typed) ?? null);
  }

  return (
    <section class="screen find" aria-labelledby="find-title">
      <h1 id="find-title">Find</h1>
      <search>
        <form
          onSubmit={(event) => {
            event.preventDefault();
            enter();
          }}
        >
          <TypedField
            typed={typed}
            type={(text) => {
              setTyped(text);
              setSaid(null);
            }}
            down={() => list.current?.querySelector('a')?.focus()}
          />
        </form>
      </search>
      {said === null ? null : <ProblemLine problem={said} />}
      <Answer asked={asked} found={found} list={list} empty={index.length === 0} said={said !== null} />
    </section>
  );
}

interface TypedFieldProps {
  readonly typed: string;
  type(text: string): void;
  down(): void;
}

function TypedField({ typed, type, down }: TypedFieldProps) {
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => field.current?.focus(), []);
  return (
    <input
      ref={field}
      class="find-field"
      type="search"
      aria-label="Name, number, id, species, trait or place"
      placeholder="Name, number, id, trait, place"
      autocomplete="off"
      autocapitalize="none"
      spellcheck={false}
      enterkeyhint="go"
      value={typed}
      onInput={(event) => type(event.currentTarget.value)}
      onKeyDown={(event) => {
        if (event.key !== 'ArrowDown') return;
        event.preventDefault();
        down();
      }}
    />
  );
}

interface AnswerProps {
  readonly asked: string;
  readonly found: readonly Findable[];
  readonly list: { current: HTMLOListElement | null };
  readonly empty: boolean;
  readonly said: boolean;
}

function Answer({ asked, found, list, empty, said }: AnswerProps) {
  const { site } = useApp();
  if (empty)
    return (
      <p class="empty">
        Nothing to find yet. <a href="/books">Import a log, or add a rack and an animal in Books.</a>
      </p>
    );
  if (asked.trim() === '')
    return (
      <p class="soft find-hint">
        Several words narrow it down: “female clown rack 3”. An id from a card opens its record.
      </p>
    );
  if (found.length > 0) return <FoundList found={found} list={list} />;
  const why = whyNoId(site.facility.value, asked);
  if (why !== null) return said ? null : <ProblemLine problem={why} />;
  return (
    <p class="empty" role="status">
      Nothing is called “{asked.trim()}”. Try a part of the name, or fewer words.
    </p>
  );
}

function pathOf({ kind, id }: Findable): string {
  return `/${kind}/${id}`;
}
