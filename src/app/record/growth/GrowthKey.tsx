import type { ComponentChildren } from 'preact';
import type { GrowthPlot } from '../../../core/index.ts';
import { FeedBar, LayingSign, ShedSign, TreatmentSign, WeighingDot } from './signs.tsx';

/** What the marks of the drawing mean; those that do not occur in it are left out. */
export function GrowthKey({ plot }: { readonly plot: GrowthPlot }) {
  const { weights, stretches, feeds, sheds, layings, treatments } = plot;
  const lines: readonly (readonly [string, boolean, ComponentChildren])[] = [
    ['weighed', weights.length > 0, <WeighingDot x={12} y={9} doubted={false} />],
    ['asked about', weights.some(({ doubted }) => doubted === true), <WeighingDot x={12} y={9} doubted />],
    ['highest', stretches.length > 0, <path class="growth-peak" d="M0 9H24" />],
    ['less 10 %', stretches.length > 0, <path class="growth-ten" d="M0 9H24" />],
    ['fed', feeds.some(({ taken }) => taken), <FeedBar x={12} ground={17} width={6} height={15} taken />],
    ['refused', feeds.some(({ taken }) => !taken), <FeedBar x={12} ground={17} width={6} height={15} taken={false} />],
    ['shed', sheds.length > 0, <ShedSign x={12} y={9} />],
    ['laid, begins anew', layings.length > 0, <LayingSign x={12} y={9} />],
    ['treatment', treatments.length > 0, <TreatmentSign x={12} y={9} />],
  ];
  return (
    <ul class="growth-key" aria-hidden="true">
      {lines
        .filter(([, occurs]) => occurs)
        .map(([words, , sign]) => (
          <li key={words}>
            <svg width="24" height="18" viewBox="0 0 24 18">
              <title>{words}</title>
              {sign}
            </svg>
            {words}
          </li>
        ))}
    </ul>
  );
}
