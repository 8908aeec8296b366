import { useEffect, useRef } from 'preact/hooks';
import { nameOf, plannedFor, sayAnimal, sayDistance, stillToCome } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { ChartRow, SeasonChart } from './chart.ts';
import { Key } from './Key.tsx';
import { SeasonShape } from './SeasonShape.tsx';
import { Strip } from './Strip.tsx';
import { sayDayIn, sayMilestone, sayRange, sayStage, shapeOf } from './words.ts';

/** Today stands so far from the left edge when the chart opens: what is to come matters more than what was. */
const TODAY_FROM_LEFT = 0.4;

/** Females by month, those whose next window is nearest first. It scrolls sideways where the months do not fit. */
export function Chart({ chart }: { readonly chart: SeasonChart }) {
  const paper = useRef<HTMLElement>(null);
  useEffect(() => {
    const box = paper.current;
    if (box !== null) box.scrollLeft = (box.scrollWidth * chart.today) / chart.days - box.clientWidth * TODAY_FROM_LEFT;
  }, [chart.from, chart.days]);
  return (
    <div class="season-chart">
      <h2 id="season-chart-title">Females by month</h2>
      <Key rows={chart.rows} />
      <div class="season-frame">
        <section
          class="season-scroll"
          ref={paper}
          aria-labelledby="season-chart-title"
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys.
          tabIndex={0}
        >
          <div class="season-paper" style={{ '--months': chart.months.length }}>
            <Months chart={chart} />
            <ol>
              {chart.rows.map((row) => (
                <li key={row.season.animal.id} class="season-row">
                  <RowWords row={row} />
                  <div class="strip-box">
                    <Strip row={row} chart={chart} />
                  </div>
                </li>
              ))}
            </ol>
          </div>
        </section>
      </div>
    </div>
  );
}

function Months({ chart }: { readonly chart: SeasonChart }) {
  const x = (at: number): string => `${((100 * at) / chart.days).toFixed(3)}%`;
  return (
    <div class="season-months" aria-hidden="true">
      <svg height="40" width="100%" aria-hidden="true">
        {chart.months.map((month) => (
          <svg key={month.at} x={x(month.at)} overflow="visible" aria-hidden="true">
            <path class="strip-month" d="M0 16V40" />
            <text x="5" y="34">
              {month.words}
              {month.year !== null && <tspan class="month-year"> {month.year}</tspan>}
            </text>
          </svg>
        ))}
        <svg x={x(chart.today)} overflow="visible" aria-hidden="true">
          <path class="strip-today" d="M0 15V40" />
          <text class="month-today" y="11" text-anchor="middle">
            today
          </text>
        </svg>
      </svg>
    </div>
  );
}

/** Who she is, how far she is, and what is next: the chart says it again in its own way. */
function RowWords({ row }: { readonly row: ChartRow }) {
  const { site, clock } = useApp();
  const { animal, stage, since, mates, clutch, with: present } = row.season;
  const today = clock.today.value;
  const shape = shapeOf(stage);
  const names = (present.length > 0 ? present : mates).map((id) => nameOf(site.facility.value, id)).join(', ');
  const [next] = row.windows;
  const open = plannedFor(site.facility.value, animal, today).filter(({ now }) => now.state === 'open');
  const left = clutch === null || clutch.hatchedOn === null ? 0 : stillToCome(clutch, today);
  return (
    <div class="season-words">
      <a href={`/animal/${animal.id}`}>{sayAnimal(animal)}</a>
      <p class="season-stage">
        {shape !== null && <SeasonShape shape={shape} />}
        <span>
          <strong>{sayStage(stage)}</strong>
          {since !== null && <span class="soft"> {sayDayIn(since, today)}</span>}
        </span>
      </p>
      {left > 0 && (
        <p class="soft">
          {clutch?.hatched} of {clutch?.eggs} out, {left} still to come
        </p>
      )}
      {open.length > 0 && (
        <p class="soft">planned with {open.map(({ male }) => nameOf(site.facility.value, male)).join(', ')}</p>
      )}
      {names !== '' && <p class="soft">{present.length > 0 ? `${names} is with her` : `with ${names}`}</p>}
      {next !== undefined && (
        <p class={next.lateDays > 0 ? 'season-next season-late' : 'season-next'}>
          {sayMilestone(next.what)} {sayRange(next.from, next.to)}
          <span class="soft">
            {next.lateDays > 0
              ? `, ${next.lateDays} ${next.lateDays === 1 ? 'day' : 'days'} late`
              : `, ${next.from > today ? sayDistance(today, next.from) : 'open now'}`}
          </span>
        </p>
      )}
    </div>
  );
}
