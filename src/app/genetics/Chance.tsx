import { type Fraction, sayFraction } from '../../core/index.ts';
import { sayPercent } from './sayPercent.ts';

/** A fraction longer than this is no figure that anybody reads; it stands behind the percent. */
const SHORT = 9;

/** A chance on one line: `1/4 · 25 %`, and where the fraction is long the percent alone, with the exact one on hover. */
export function Chance({ of }: { readonly of: Fraction }) {
  const [exact, percent] = [sayFraction(of), sayPercent(of)];
  if (isPlain(of)) return <span class="chance">{percent}</span>;
  return exact.length <= SHORT ? (
    <span class="chance">
      {exact} · {percent}
    </span>
  ) : (
    <span class="chance" title={`exactly ${exact}`}>
      {percent}
    </span>
  );
}

/** The same as a figure of a table: the percent, and under it the fraction if it is short enough to be read. */
export function ChanceFigure({ of }: { readonly of: Fraction }) {
  const exact = sayFraction(of);
  return (
    <span class="chance-figure" title={isPlain(of) ? undefined : `exactly ${exact}`}>
      <strong>{sayPercent(of)}</strong>
      {!isPlain(of) && exact.length <= SHORT && <small>{exact}</small>}
    </span>
  );
}

/** Whether the percent says it all: 0 or 1. */
function isPlain({ bottom }: Fraction): boolean {
  return bottom === 1n;
}
