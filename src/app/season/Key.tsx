import type { ChartRow } from './chart.ts';
import { ShapeBody } from './SeasonShape.tsx';
import { SHAPE_WORDS, type Shape } from './words.ts';

const ORDER = Object.keys(SHAPE_WORDS) as readonly Shape[];

/** What the marks mean: only those that stand on this chart. */
export function Key({ rows }: { readonly rows: readonly ChartRow[] }) {
  const seen = new Set(rows.flatMap(({ marks }) => marks.map(({ shape }) => shape)));
  return (
    <ul class="season-key" aria-label="What the marks mean">
      {ORDER.filter((shape) => seen.has(shape)).map((shape) => (
        <li key={shape}>
          <svg class="season-shape" viewBox="-10 -10 20 20" width="20" height="20" aria-hidden="true">
            <ShapeBody shape={shape} />
          </svg>
          {SHAPE_WORDS[shape]}
        </li>
      ))}
      {rows.some(({ together }) => together.length > 0) && (
        <li>
          <svg width="26" height="20" aria-hidden="true">
            <line class="strip-together" x1="1" x2="25" y1="10" y2="10" />
          </svg>
          he is with her
        </li>
      )}
      {rows.some(({ incubation }) => incubation !== null) && (
        <li>
          <svg width="30" height="20" aria-hidden="true">
            <path class="strip-bar" d="M1 5H29M1 15H29M8 5V15M15 5V15M22 5V15M29 3V17" />
          </svg>
          incubation, ruled by weeks
        </li>
      )}
      {rows.some(({ windows }) => windows.length > 0) && (
        <li>
          <svg width="26" height="20" aria-hidden="true" class="strip-window">
            <path d="M6 2H2V18H6M20 2H24V18H20" />
          </svg>
          window of what is next
        </li>
      )}
    </ul>
  );
}
