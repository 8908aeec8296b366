import { nameOf, sayDayShort } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { ChartRow, ChartSpan, ChartWindow, SeasonChart } from './chart.ts';
import { ShapeBody } from './SeasonShape.tsx';
import { SHAPE_WORDS, sayMilestone, sayRange } from './words.ts';

/** Where the line of days stands in a strip, in pixels from its top. */
const LINE = 42;
/** Above it the dates of the next window. */
const DATES = 17;
/** A window that ends within this share of the right edge has its dates to its left, so that they stay on the paper. */
const NEAR_EDGE = 0.86;
/** An incubation is ruled by weeks. */
const RULED_DAYS = 7;

interface StripProps {
  readonly row: ChartRow;
  readonly chart: SeasonChart;
}

/** One female's months: what was seen, what is waited for, and today. Along it everything is measured in parts of its width. */
export function Strip({ row, chart }: StripProps) {
  const facility = useApp().site.facility.value;
  const x = (at: number): string => `${((100 * at) / chart.days).toFixed(3)}%`;
  const name = (id: ChartRow['marks'][number]['with']): string => (id === null ? '' : ` with ${nameOf(facility, id)}`);
  const said = [
    ...row.marks.map(({ shape, day, with: mate }) => `${SHAPE_WORDS[shape]}${name(mate)} ${sayDayShort(day)}`),
    ...row.windows.map(({ what, from, to, lateDays }) => {
      const late = lateDays === 0 ? '' : `, ${lateDays} days late`;
      return `${sayMilestone(what).toLowerCase()} expected ${sayDayShort(from)} to ${sayDayShort(to)}${late}`;
    }),
  ];
  return (
    <svg class="strip" width="100%" role="img" aria-label={said.join('; ') || 'nothing in these months'}>
      {chart.months.map((month) => (
        <line key={month.at} class="strip-month" x1={x(month.at)} x2={x(month.at)} y1="0" y2="100%" />
      ))}
      <line class="strip-line" x1="0" x2="100%" y1={LINE} y2={LINE} />
      {row.incubation !== null && <RuledBar span={row.incubation} x={x} />}
      {row.together.map((span) => (
        <line key={span.at} class="strip-together" x1={x(span.at)} x2={x(span.until)} y1={LINE} y2={LINE} />
      ))}
      <line class="strip-today" x1={x(chart.today)} x2={x(chart.today)} y1="0" y2="100%" />
      {row.windows.map((window, nth) => (
        <Bracket key={window.what} window={window} isNext={nth === 0} days={chart.days} x={x} />
      ))}
      {row.marks.map(({ shape, at, day }) => (
        <svg
          key={`${shape}${day}`}
          x={x(at)}
          y={LINE}
          overflow="visible"
          aria-hidden="true"
          class={`mark mark-${shape.replaceAll(' ', '-')}`}
        >
          <title>{`${SHAPE_WORDS[shape]} ${sayDayShort(day)}`}</title>
          <ShapeBody shape={shape} />
        </svg>
      ))}
    </svg>
  );
}

interface Along {
  x(at: number): string;
}

/** Eggs in the incubator: a bar ruled by weeks, as long as they lay there until now. */
function RuledBar({ span, x }: Along & { readonly span: ChartSpan }) {
  const weeks = Math.floor((span.until - span.at) / RULED_DAYS);
  const [top, bottom] = [LINE - 5, LINE + 5];
  return (
    <g class="strip-bar">
      <line x1={x(span.at)} x2={x(span.until)} y1={top} y2={top} />
      <line x1={x(span.at)} x2={x(span.until)} y1={bottom} y2={bottom} />
      {Array.from({ length: weeks }, (_, week) => {
        const at = x(span.at + (week + 1) * RULED_DAYS);
        return <line key={at} x1={at} x2={at} y1={top} y2={bottom} />;
      })}
      <line x1={x(span.until)} x2={x(span.until)} y1={top - 2} y2={bottom + 2} />
    </g>
  );
}

interface BracketProps extends Along {
  readonly window: ChartWindow;
  readonly isNext: boolean;
  readonly days: number;
}

/** What is waited for, between two brackets; the next one has its dates above it, and a late one a bar under them. */
function Bracket({ window, isNext, days, x }: BracketProps) {
  const { at, until, from, to, lateDays } = window;
  const kind = `strip-window${isNext ? '' : ' strip-later'}${lateDays > 0 ? ' strip-late' : ''}`;
  const middle = (at + until) / 2;
  const edge = middle / days;
  const [anchor, place] = edge > NEAR_EDGE ? ['end', until] : edge < 1 - NEAR_EDGE ? ['start', at] : ['middle', middle];
  return (
    <g class={kind}>
      <svg x={x(at)} y={LINE} overflow="visible" aria-hidden="true">
        <path d="M5 -13H0V13H5" />
      </svg>
      <svg x={x(until)} y={LINE} overflow="visible" aria-hidden="true">
        <path d="M-5 -13H0V13H-5" />
      </svg>
      {isNext && (
        <text x={x(place)} y={DATES} text-anchor={anchor}>
          {sayRange(from, to)}
        </text>
      )}
    </g>
  );
}
