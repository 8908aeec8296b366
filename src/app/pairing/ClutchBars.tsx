import {
  addFractions,
  type ClutchChances,
  compareFractions,
  type Fraction,
  fraction,
  sayFraction,
  ZERO,
} from '../../core/index.ts';
import { sayPercent } from '../genetics/index.ts';
import type { Brood } from './brood.ts';

/** A line of the drawing: so many of the look, or so many and more. */
interface Bar {
  readonly words: string;
  readonly p: Fraction;
}

const [LINE, LEFT, RIGHT, WIDTH] = [24, 64, 92, 340];
/** Up to so many lines all are drawn; above that the far end, where nearly nothing is left, is one line. */
const FEW = 13;
const TAIL = fraction(1n, 1000n);

/** The exact chance of none, one, two … of a look in the clutch: a bar and its figure on each ruled line. */
export function ClutchBars({ chances, brood }: { readonly chances: ClutchChances; readonly brood: Brood }) {
  const bars = barsOf(chances.counts);
  const most = bars.reduce((max, { p }) => (compareFractions(p, max) > 0 ? p : max), ZERO);
  const label = bars.map(({ words, p }) => `${words}: ${sayPercent(p)}`).join(', ');
  return (
    <figure class="clutch-bars">
      <figcaption>How many of them in {sayEggs(chances.counts.length - 1, brood)}</figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${bars.length * LINE + 1}`} role="img" aria-label={label}>
        {bars.map(({ words, p }, at) => (
          <g key={words} transform={`translate(0 ${at * LINE})`}>
            <title>{`${words}: exactly ${sayFraction(p)}`}</title>
            <text x={LEFT - 10} y={LINE - 7} class="bar-words">
              {words}
            </text>
            <rect x={LEFT} y={6} width={lengthOf(p, most)} height={LINE - 12} class="bar" />
            <text x={WIDTH} y={LINE - 7} class="bar-figure">
              {sayPercent(p)}
            </text>
            <path d={`M0 ${LINE}H${WIDTH}`} class="bar-rule" />
          </g>
        ))}
        <path d={`M${LEFT} 0V${bars.length * LINE}`} class="bar-axis" />
      </svg>
      <details>
        <summary>Exact fractions</summary>
        <ol class="exact-fractions" start={0}>
          {bars.map(({ words, p }) => (
            <li key={words}>
              <span>{words}</span> <span>{sayFraction(p)}</span>
            </li>
          ))}
        </ol>
      </details>
    </figure>
  );
}

export function sayEggs(count: number, { egg, eggs }: Brood): string {
  return `${count} ${count === 1 ? egg : eggs}`;
}

function lengthOf(p: Fraction, most: Fraction): number {
  if (p.top === 0n) return 0;
  const longest = WIDTH - LEFT - RIGHT;
  const thousandths = Number((p.top * most.bottom * 1000n) / (p.bottom * most.top));
  return Math.max(1, (thousandths * longest) / 1000);
}

function barsOf(counts: readonly Fraction[]): readonly Bar[] {
  const all = counts.map((p, at) => ({ words: at === 0 ? 'none' : `${at}`, p }));
  if (all.length <= FEW) return all;
  let [from, rest] = [all.length, ZERO];
  for (let at = all.length - 1; at > 1; at--) {
    const sum = addFractions(rest, counts[at] ?? ZERO);
    if (compareFractions(sum, TAIL) >= 0) break;
    [from, rest] = [at, sum];
  }
  return all.length - from < 2 ? all : [...all.slice(0, from), { words: `${from} or more`, p: rest }];
}
