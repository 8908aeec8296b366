import { useMemo, useState } from 'preact/hooks';
import {
  countsOfRound,
  goesAtOnce,
  groupsOf,
  linesAt,
  type Problem,
  type RoundLine,
  sayPace,
} from '../../core/index.ts';
import '../look/parts.css';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import type { OpenRound } from '../model/openRound.ts';
import { EndSheet } from './EndSheet.tsx';
import { LineRow } from './LineRow.tsx';
import './rackRound.css';
import './rounds.css';
import { ROUND_TITLES, sayExceptions } from './taskWords.ts';
import { useDayWork } from './useDayWork.ts';

/** The round that is walked: its lines, one touch for all, and its end. */
export function RunScreen() {
  const { round } = useApp();
  const open = round.open.value;
  if (open === null)
    return (
      <section class="screen run" aria-labelledby="run-title">
        <h1 id="run-title">No round is open</h1>
        <p class="empty">
          <a href="/rounds">Choose a round and start it</a> at a rack, an exhibit or a room; or scan the label of the
          place.
        </p>
      </section>
    );
  return <Run key={`${open.task} ${open.place}`} open={open} />;
}

function Run({ open }: { readonly open: OpenRound }) {
  const { site, clock } = useApp();
  const [ending, setEnding] = useState(false);
  const [withLater, showLater] = useState(false);
  const facility = site.facility.value;
  const today = clock.today.value;
  const lines = useMemo(() => linesAt(facility, open, today), [facility, open.place, open.task, open.without, today]);
  const shown = withLater ? lines : lines.filter(isOfWalk);
  const groups = groupsOf(facility, shown);
  return (
    <section class="screen run" aria-labelledby="run-title">
      <header class="run-head">
        <h1 id="run-title">{ROUND_TITLES[open.task]}</h1>
        <p>
          <a href={`/place/${open.place}`}>{open.name}</a>
          {open.second !== null && <> with {open.second}</>}
        </p>
      </header>
      <RunFigures open={open} lines={lines} />
      <p class="because">{sayExceptions(open.task)}</p>
      {groups.map((group) => (
        <section key={group.id ?? 'none'} class="round-group">
          {groups.length > 1 && (
            <header class="group-head">
              <h2>{group.name}</h2>
            </header>
          )}
          <ol class="round-lines">
            {group.lines.map((line) => (
              <LineRow key={line.of} line={line} today={today} readOnly={false} />
            ))}
          </ol>
        </section>
      ))}
      <Later lines={lines} shown={withLater} show={() => showLater(!withLater)} />
      <div class="run-thumb">
        <AllAsPlanned open={open} lines={lines} />
        <button type="button" class="secondary run-end" onClick={() => setEnding(true)}>
          End the round
        </button>
      </div>
      {ending && <EndSheet onClose={() => setEnding(false)} />}
    </section>
  );
}

/** What is not due yet stands behind a touch: it can be done all the same. */
function isOfWalk({ state }: RoundLine): boolean {
  return state !== 'soon';
}

interface LaterProps {
  readonly lines: readonly RoundLine[];
  readonly shown: boolean;
  readonly show: () => void;
}

function Later({ lines, shown, show }: LaterProps) {
  const later = lines.filter((line) => !isOfWalk(line)).length;
  if (later === 0) return null;
  return (
    <button type="button" class="link run-later" aria-expanded={shown} onClick={show}>
      {shown ? 'Hide what is not due yet' : `Show ${later} that are not due yet`}
    </button>
  );
}

function RunFigures({ open, lines }: { readonly open: OpenRound; readonly lines: readonly RoundLine[] }) {
  const work = useDayWork(open.day).get(open.task);
  const counts = countsOfRound(lines);
  const refused = lines.filter((line) => line.words === 'refused').length;
  const pace = work === undefined ? null : sayPace(work);
  const figures: readonly (readonly [string, number])[] = [
    ['left', counts.left],
    ['done', counts.done - (open.task === 'feeding' ? refused : 0)],
    ...(open.task === 'feeding' ? [['refused', refused] as const] : []),
    ['skipped', counts.skipped],
  ];
  return (
    <>
      <dl class="run-figures" aria-label="This round">
        {figures.map(([words, count]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd>{count}</dd>
          </div>
        ))}
      </dl>
      {pace !== null && <p class="soft run-pace">{pace}, by today’s log.</p>}
    </>
  );
}

function AllAsPlanned({ open, lines }: { readonly open: OpenRound; readonly lines: readonly RoundLine[] }) {
  const { round } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  if (!goesAtOnce(open.task)) return null;
  const { left } = countsOfRound(lines);
  const each = lines.filter((line) => line.problem !== null && line.state !== 'held').length;
  if (left - each <= 0) return null;
  return (
    <>
      <button
        type="button"
        class="primary"
        onClick={() => void round.sweep(open.place).then((done) => setFailed(done.ok ? null : done.problem))}
      >
        All as planned, {left - each}
      </button>
      {each > 0 && <p class="soft">{each === 1 ? '1 is' : `${each} are`} left out, each by its own line.</p>}
      {failed !== null && <ProblemLine problem={failed} />}
    </>
  );
}
