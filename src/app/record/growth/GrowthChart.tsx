// Not by print's face: that would bring the PDF maker onto the page. The scales are those of the paper.
import { firstDayOf, type GrowthPicture, growthPicture } from '../../../../print/growth/geometry.ts';
import { type GrowthPlot, sayDayShort, sayGrams } from '../../../core/index.ts';
import { FeedBar, LayingSign, ShedSign, TreatmentSign, WeighingDot } from './signs.tsx';
import type { ShownGrowth } from './useGrowth.ts';

const HEIGHT = 270;
/** In CSS pixels: the axis holds `12,000 g` at the chart’s size of type. */
const ROOM = { height: HEIGHT, axis: 58, edge: 10, marks: 44, feeds: 50, foot: 24, dayWords: 62, weightWords: 40 };

/** The plot, drawn to the width that there is. */
export function GrowthChart({ shown, width }: { readonly shown: ShownGrowth; readonly width: number }) {
  const { plot, from, on } = shown;
  const first = firstDayOf(plot, from, on);
  const picture = growthPicture(plot, [first, on], { ...ROOM, width });
  return (
    <svg
      class="growth-chart"
      width={width}
      height={HEIGHT}
      viewBox={`0 0 ${width} ${HEIGHT}`}
      role="img"
      aria-label={`From ${sayDayShort(first)} to ${sayDayShort(on)}: ${sayPlot(plot)}`}
    >
      <Axes picture={picture} />
      <Peaks picture={picture} />
      <Layings picture={picture} />
      {picture.runs.map((run) => (
        <polyline
          key={`${run[0]?.x} ${run[0]?.y}`}
          class="growth-line"
          points={run.map(({ x, y }) => `${x},${y}`).join(' ')}
        />
      ))}
      {picture.dots.map(({ x, y, of }, at) => (
        <WeighingDot key={`${at} ${of.day}`} x={x} y={y} doubted={of.doubted === true}>
          <title>{`${sayDayShort(of.day)}: ${sayGrams(of.weightG)}`}</title>
        </WeighingDot>
      ))}
      {picture.feeds.map(({ x, width: wide, height, of }, at) => (
        <FeedBar key={`${at} ${of.day}`} x={x} ground={picture.ground} width={wide} height={height} taken={of.taken} />
      ))}
      {picture.sheds.map(({ x, of }, at) => (
        <ShedSign key={`${at} ${of}`} x={x} y={picture.top - 13} />
      ))}
      {picture.treatments.map(({ x, of }, at) => (
        <TreatmentSign key={`${at} ${of.day}`} x={x} y={picture.top - 31}>
          <title>{`${sayDayShort(of.day)}: ${of.words}`}</title>
        </TreatmentSign>
      ))}
    </svg>
  );
}

function Axes({ picture }: { readonly picture: GrowthPicture }) {
  const { left, right, top, bottom, ground, weightTicks, dayTicks, mostFeedG } = picture;
  return (
    <g>
      {weightTicks.map(({ y, words }) => (
        <g key={words}>
          <path class="growth-grid" d={`M${left} ${y}H${right}`} />
          <text class="growth-grams" x={left - 7} y={y + 4}>
            {words}
          </text>
        </g>
      ))}
      {dayTicks.map(({ x, words }) => (
        <g key={x}>
          <path class="growth-grid" d={`M${x} ${top}V${ground + 4}`} />
          <text class="growth-day" x={x} y={ground + 19}>
            {words}
          </text>
        </g>
      ))}
      <path class="growth-ground" d={`M${left} ${ground}H${right}`} />
      {mostFeedG !== null && (
        <text class="growth-grams" x={left - 7} y={bottom + 20}>
          {sayGrams(mostFeedG)}
        </text>
      )}
    </g>
  );
}

/** Each stretch between layings has its own highest weight and its own line. */
function Peaks({ picture: { peaks, right } }: { readonly picture: GrowthPicture }) {
  return (
    <g>
      {peaks.map(({ x, y, toX, lineY, of, tenPercentG }, at) => (
        <g key={of.day}>
          <path class="growth-peak" d={`M${x} ${y}H${toX}`} />
          <path class="growth-ten" d={`M${x} ${lineY}H${toX}`} />
          {at === peaks.length - 1 && (
            <>
              <text class="growth-grams" x={right} y={y - 6}>
                {sayGrams(of.weightG)}
              </text>
              <text class="growth-grams" x={right} y={lineY + 15}>
                {sayGrams(tenPercentG)}
              </text>
            </>
          )}
        </g>
      ))}
    </g>
  );
}

function Layings({ picture: { layings, top, ground } }: { readonly picture: GrowthPicture }) {
  return (
    <g>
      {layings.map(({ x, of }) => (
        <g key={of.day}>
          <path class="growth-laying" d={`M${x} ${top - 6}V${ground}`} />
          <LayingSign x={x} y={top - 13} />
        </g>
      ))}
    </g>
  );
}

/** What the drawing says, for those who hear it. */
function sayPlot({ weights, feeds, sheds, layings, treatments }: GrowthPlot): string {
  const [first, last] = [weights[0], weights.at(-1)];
  const weighed =
    first === undefined || last === undefined
      ? 'no weighing'
      : `${counted(weights.length, 'weighing')}, from ${sayGrams(first.weightG)} to ${sayGrams(last.weightG)}`;
  const refused = feeds.filter(({ taken }) => !taken).length;
  const marks = [
    [sheds.length, 'shed'],
    [layings.length, 'laying'],
    [treatments.length, 'treatment mark'],
  ] as const;
  const others = marks.map(([count, what]) => counted(count, what)).join(', ');
  return `${weighed}; ${counted(feeds.length, 'feed')}, ${refused} of them refused; ${others}. The table below has them all.`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
