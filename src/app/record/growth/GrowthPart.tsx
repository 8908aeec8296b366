import './growth.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { type AnimalRecord, GAP_INTERVALS, type GrowthPlot, sayDayShort, sayGrams } from '../../../core/index.ts';
import type { GrowthChart } from './GrowthChart.tsx';
import { GrowthKey } from './GrowthKey.tsx';
import { GrowthTable } from './GrowthTable.tsx';
import { type ShownGrowth, SPANS, type Span, useGrowth } from './useGrowth.ts';
import { useWidth } from './useWidth.ts';

/** Weights, feeds, sheds, layings and treatments of an animal over time. */
export function GrowthPart({ animal }: { readonly animal: AnimalRecord }) {
  const [span, setSpan] = useState<Span>('year');
  const shown = useGrowth(animal, span);
  return (
    <section class="growth" aria-labelledby="growth-title">
      <h2 id="growth-title">Growth</h2>
      {animal.weights.length === 0 ? (
        <p class="empty">No weighing yet: weigh it, and its plot begins here.</p>
      ) : (
        <>
          <fieldset class="chips">
            <legend class="unseen">How far back</legend>
            {SPANS.map((one) => (
              <button key={one} type="button" class="chip" aria-pressed={one === span} onClick={() => setSpan(one)}>
                {one}
              </button>
            ))}
          </fieldset>
          {shown !== null && <Shown shown={shown} />}
        </>
      )}
    </section>
  );
}

function Shown({ shown }: { readonly shown: ShownGrowth }) {
  const { plot, on } = shown;
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame);
  const Chart = useChart();
  return (
    <>
      <div class="growth-frame" ref={frame}>
        {Chart !== null && width > 0 && <Chart shown={shown} width={width} />}
      </div>
      <GrowthKey plot={plot} />
      <p class="growth-says">{sayPeak(plot)}</p>
      {plot.gaps.length > 0 && <p class="growth-says growth-soft">{sayGaps(plot)}</p>}
      <GrowthTable plot={plot} on={on} />
    </>
  );
}

/** The drawing comes after the page, since its scales are too large for what opens with every scan. */
function useChart(): typeof GrowthChart | null {
  const [chart, setChart] = useState<{ readonly of: typeof GrowthChart } | null>(null);
  useEffect(() => {
    let isGone = false;
    // Without the hub the part may be missing; the table below then says the same.
    import('./GrowthChart.tsx').then(
      (part) => !isGone && setChart({ of: part.GrowthChart }),
      () => undefined,
    );
    return () => {
      isGone = true;
    };
  }, []);
  return chart?.of ?? null;
}

function sayPeak({ peak, tenPercentLine }: GrowthPlot): string {
  if (peak === null || tenPercentLine === null) return 'Nothing was weighed since the last laying.';
  const line = sayGrams(tenPercentLine.weightG);
  return `Highest since the reset: ${sayGrams(peak.weightG)} on ${sayDayShort(peak.day)}. The line less 10 % is at ${line}.`;
}

function sayGaps({ gaps }: GrowthPlot): string {
  const all = gaps.map(({ from, to, days }) => `${sayDayShort(from)} to ${sayDayShort(to)} (${days} days)`).join(', ');
  return `Not joined, since more than ${GAP_INTERVALS} weighing intervals lie between: ${all}.`;
}
