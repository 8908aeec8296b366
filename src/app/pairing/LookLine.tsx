import {
  type ClutchChances,
  compareFractions,
  type Fraction,
  fraction,
  isZeroFraction,
  type LocusTable,
  multiplyFractions,
  sayFraction,
  type YoungLook,
} from '../../core/index.ts';
import { Chance, ChanceFigure, sayExpected, sayPercent } from '../genetics/index.ts';
import type { Brood } from './brood.ts';
import { ClutchBars } from './ClutchBars.tsx';
import { ProveMark } from './ProveMark.tsx';
import { Within } from './Within.tsx';

export interface LookLineProps {
  readonly look: YoungLook;
  /** Null until the worker has answered. */
  readonly chances: ClutchChances | null;
  readonly loci: LocusTable;
  readonly brood: Brood;
  readonly eggs: number;
  /** The share of eggs that live. */
  readonly viable: Fraction;
  readonly isPicked: boolean;
  pick(): void;
}

/** One look on its ruled line; a touch opens what the clutch can hold of it. */
export function LookLine(props: LookLineProps) {
  const { look, chances, eggs, viable, isPicked, pick } = props;
  const perEgg = multiplyFractions(look.p, viable);
  const expected = multiplyFractions(perEgg, fraction(BigInt(eggs), 1n));
  return (
    <>
      <tr class={isPicked ? 'look-picked' : undefined}>
        <th scope="row">
          <button type="button" class="look-words" aria-expanded={isPicked} onClick={pick}>
            {look.shows}
          </button>
          <Beneath look={look} />
        </th>
        <td>
          <ChanceFigure of={perEgg} />
        </td>
        {!isOne(viable) && (
          <td>
            <ChanceFigure of={look.p} />
          </td>
        )}
        <td>
          <span class="clutch-figure" title={`exactly ${sayFraction(expected)}`}>
            <strong>{sayExpected(expected)}</strong> <small>expected</small>
          </span>
          <span
            class="clutch-figure"
            title={chances === null ? undefined : `exactly ${sayFraction(chances.atLeastOne)}`}
          >
            <strong>{chances === null ? '…' : sayPercent(chances.atLeastOne)}</strong> <small>at least one</small>
          </span>
        </td>
      </tr>
      {isPicked && <Picked {...props} />}
    </>
  );
}

/** What it carries unseen, what hides what, by sex where that differs, and whether it must be proven. */
function Beneath({ look }: { readonly look: YoungLook }) {
  const { carries, hidden, males, females, needsProving } = look;
  const bySex = compareFractions(males, females) !== 0;
  return (
    <>
      {carries.length > 0 && <p class="look-carries">{carries.map(({ words }) => words).join(', ')}</p>}
      {hidden.map((words) => (
        <p key={words} class="look-carries">
          {words}
        </p>
      ))}
      {bySex && !isZeroFraction(look.p) && (
        <p class="look-carries look-sexes">
          as a male <Chance of={males} />, as a female <Chance of={females} />
        </p>
      )}
      {needsProving && (
        <p class="look-proving">
          <ProveMark /> to be proven
        </p>
      )}
    </>
  );
}

function Picked({ look, chances, loci, brood, viable, eggs }: LookLineProps) {
  const perEgg = multiplyFractions(look.p, viable);
  return (
    <tr class="look-detail">
      <td colSpan={isOne(viable) ? 3 : 4}>
        <div class="look-sheet">
          <p>
            {look.shows}: exactly {sayFraction(perEgg)} per {brood.egg}
            {!isOne(viable) && `, ${sayFraction(look.p)} per ${brood.young}`}
          </p>
          {chances === null ? (
            <p class="soft" role="status">
              Working out {eggs} {brood.eggs} …
            </p>
          ) : (
            <ClutchBars chances={chances} brood={brood} />
          )}
          <Within look={look} loci={loci} brood={brood} />
        </div>
      </td>
    </tr>
  );
}

function isOne({ top, bottom }: Fraction): boolean {
  return top === bottom;
}
