import { useState } from 'preact/hooks';
import {
  allAsPlanned,
  type Id,
  nameOf,
  type RoundLine,
  type RoundSummary,
  type RoundTask,
  sayFew,
} from '../../core/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { OpenRound } from '../model/openRound.ts';
import { EndSheet } from './EndSheet.tsx';
import './rackRound.css';
import { ROUND_TITLES, sayExceptions, whoWord } from './taskWords.ts';
import { RUN_PAGE, useBegin } from './useBegin.tsx';

/** A rack’s feeding in one touch, and after it the exceptions: scan who refused, then end the round. */
export function RackRound({ place }: { readonly place: Id }) {
  const { round } = useApp();
  const open = round.open.value;
  return open?.place === place ? <Running round={open} /> : <Begin place={place} />;
}

function Begin({ place }: { readonly place: Id }) {
  const { site, clock } = useApp();
  const { begin, failed, sheet } = useBegin();
  const facility = site.facility.value;
  const today = clock.today.value;
  const { done, left } = allAsPlanned(
    facility,
    { place, task: 'feeding' },
    { day: today, today, nowMs: clock.nowMs() },
  );
  if (done.length === 0 && left.length === 0) return null;
  return (
    <section class="rack-round" aria-label="Feeding round of this rack">
      <button
        type="button"
        class="now"
        aria-disabled={done.length === 0}
        onClick={() => done.length > 0 && begin({ place, task: 'feeding', all: true })}
      >
        All as planned
        <small>
          {done.length === 0
            ? 'nobody can be fed with one touch'
            : `${done.length} due: ${sayFew(done.flatMap((line) => line.animals))}`}
        </small>
      </button>
      {left.length > 0 && (
        <details class="rack-round-left">
          <summary>{left.length === 1 ? '1 is left out' : `${left.length} are left out`}, each by its own card</summary>
          <ul>
            {left.map(({ line, problem }) => (
              <li key={line.of}>
                <a href={`/animal/${line.of}`}>{nameOf(facility, line.of)}</a> {problem.message}
              </li>
            ))}
          </ul>
        </details>
      )}
      {failed !== null && <ProblemLine problem={failed} />}
      {sheet}
    </section>
  );
}

/** So many exceptions stand by name under the camera; all of them stand on the round’s own page. */
const FEW = 4;

/** The open round: its figures, its exceptions, and its end. */
export function Running({ round }: { readonly round: OpenRound }) {
  const app = useApp();
  const [ending, setEnding] = useState(false);
  const summary = app.round.summary();
  if (summary === null) return null;
  const exceptions = exceptionsOf(summary);
  return (
    <section class="rack-round rack-round-open" aria-label={`Round of ${round.name}`}>
      <p role="status">
        <strong>
          {ROUND_TITLES[round.task]}, {round.name}
        </strong>
        {round.second !== null && ` with ${round.second}`}: {sayFigures(round.task, summary)}.{' '}
        {sayExceptions(round.task)}
      </p>
      {exceptions.length > 0 && (
        <p class="rack-round-exceptions">
          {exceptions.slice(-FEW).map(([line, words], at) => (
            <>
              {at > 0 && ' · '}
              <a href={`/animal/${line.animals[0]?.id ?? line.of}`}>{whoWord(line)}</a> {words}
            </>
          ))}
          {exceptions.length > FEW && ` · ${exceptions.length - FEW} before`}
        </p>
      )}
      <div class="rack-round-do">
        <a class="secondary" href={RUN_PAGE}>
          Its lines
        </a>
        <button type="button" class="secondary" onClick={() => setEnding(true)}>
          End the round
        </button>
      </div>
      {ending && <EndSheet onClose={() => setEnding(false)} />}
    </section>
  );
}

function exceptionsOf({ refused, skipped, again }: RoundSummary): readonly (readonly [RoundLine, string])[] {
  return [
    ...refused.map((line) => [line, 'refused'] as const),
    ...skipped.map((line) => [line, `skipped${line.skip?.why ? `: ${line.skip.why}` : ''}`] as const),
    ...again.map((line) => [line, line.words ?? 'look again'] as const),
  ];
}

/** `fed 57, refused 3, skipped 0, left 2`. */
function sayFigures(task: RoundTask, { done, refused, skipped, again, left }: RoundSummary): string {
  const first = task === 'feeding' ? `fed ${done}, refused ${refused.length}` : `done ${done}`;
  const second = task === 'look' ? `, look again ${again.length}` : '';
  return `${first}${second}, skipped ${skipped.length}, left ${left.length}`;
}
