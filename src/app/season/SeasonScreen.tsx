import { useMemo, useState } from 'preact/hooks';
import { addDays, type FemaleSeason, seasonBoard, seasonTasks } from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { Chart } from './Chart.tsx';
import { chartOf } from './chart.ts';
import { LookAgain } from './LookAgain.tsx';
import { NextTurns } from './NextTurns.tsx';
import { PlanOnBoard } from './PlanOnBoard.tsx';
import { SaveCalendar } from './SaveCalendar.tsx';
import './season.css';
import { ThisWeek } from './ThisWeek.tsx';
import { sayKind } from './words.ts';

/** The days of “this week” after today. */
const WEEK_DAYS = 6;
const ALL = '';

/** The season: every female with her stage and her windows, and what to do about it. */
export function SeasonScreen() {
  const { site, clock } = useApp();
  const [facility, today] = [site.facility.value, clock.today.value];
  const board = useMemo(() => seasonBoard(facility, today), [facility, today]);
  return (
    <section class="screen season-page" aria-labelledby="season-title">
      <header class="season-head">
        <h1 id="season-title">Season</h1>
        <nav class="season-nav" aria-label="Season">
          <a href="/season/plan">Season plan</a>
          <a href="/season/project">Project sheet</a>
        </nav>
      </header>
      {board.length === 0 ? <NobodyYet /> : <Board board={board} />}
      <LookAgain />
    </section>
  );
}

/** Nothing of the season is written; where a plan was accepted, it says who is to meet first. */
function NobodyYet() {
  return (
    <>
      <FirstStep />
      <PlanOnBoard species={null} />
    </>
  );
}

function FirstStep() {
  return (
    <p class="empty">
      Nobody is in season yet. Take the stamp “paired” in hand on <a href="/">Scan</a>, scan the male, then the female:
      she stands here from then on.
    </p>
  );
}

function Board({ board }: { readonly board: readonly FemaleSeason[] }) {
  const today = useApp().clock.today.value;
  const [chosen, choose] = useState(ALL);
  const kinds = kindsOf(board);
  const species = kinds.some((one) => one.species === chosen) ? [chosen] : kinds.map((one) => one.species);
  const shown = board.filter(({ animal }) => species.includes(animal.species));
  const chart = useMemo(() => chartOf(shown, today), [board, chosen, today]);
  return (
    <>
      {kinds.length > 1 && (
        <Lens
          label="Species"
          chosen={species.length === 1 ? chosen : ALL}
          choose={choose}
          choices={[
            { id: ALL, words: 'All', count: board.length },
            ...kinds.map((one) => ({ id: one.species, words: sayKind(one.species), count: one.count })),
          ]}
        />
      )}
      <div class="season-desk">
        <div class="season-side">
          <ThisWeek tasks={seasonTasks(shown, today, addDays(today, WEEK_DAYS))} />
          <PlanOnBoard species={chosen === ALL ? null : species} />
        </div>
        <Chart chart={chart} />
      </div>
      <NextTurns board={board} species={species} />
      <SaveCalendar board={shown} />
    </>
  );
}

function kindsOf(board: readonly FemaleSeason[]) {
  const counts = new Map<string, number>();
  for (const { animal } of board) counts.set(animal.species, (counts.get(animal.species) ?? 0) + 1);
  return [...counts].map(([species, count]) => ({ species, count })).sort((a, b) => b.count - a.count);
}
