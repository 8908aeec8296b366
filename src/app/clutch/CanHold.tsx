import {
  type ClutchRecord,
  eggsOpen,
  fraction,
  multiplyFractions,
  sayFraction,
  type YoungLook,
} from '../../core/index.ts';
import { ChanceFigure, sayExpected, type YoungAnswer } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { counted } from './sayClutch.ts';
import { useForecast } from './useForecast.ts';

const FEW = 6;

/** The looks that can come of the eggs that are left, the likeliest first. */
export function CanHold({ clutch }: { readonly clutch: ClutchRecord }) {
  const { fault, looks } = useForecast(clutch, clutch.sire);
  const left = eggsOpen(clutch);
  return (
    <section class="can-hold" aria-labelledby="hold-title" aria-busy={looks?.at === 'working'}>
      <header class="part-head">
        <h2 id="hold-title">What it can hold</h2>
        <p class="soft">of {counted(left, 'egg')} left</p>
      </header>
      {fault !== null &&
        (clutch.sire === null ? (
          <p class="soft">
            {fault.message} {fault.remedy} That is asked when it hatches.
          </p>
        ) : (
          <ProblemLine problem={fault} />
        ))}
      {looks?.at === 'failed' && <ProblemLine problem={looks.problem} />}
      {looks?.at === 'working' && <p class="soft">Working out the young …</p>}
      {looks?.at === 'done' && <Looks answer={looks.value} left={left} />}
    </section>
  );
}

function Looks({ answer: { looks, count, viable }, left }: { readonly answer: YoungAnswer; readonly left: number }) {
  const perEgg = multiplyFractions(fraction(BigInt(left), 1n), viable);
  const line = (look: YoungLook) => <Line key={look.labels.join('\u0000')} look={look} eggs={perEgg} />;
  return (
    <>
      <ol class="hold-looks">{looks.slice(0, FEW).map(line)}</ol>
      {looks.length > FEW && (
        <details class="hold-more">
          <summary>
            {looks.length - FEW} more{count > BigInt(looks.length) && ` of ${count} in all`}
          </summary>
          <ol class="hold-looks">{looks.slice(FEW).map(line)}</ol>
        </details>
      )}
      <p class="soft small">Chances, not promises; a single clutch can fall far from them.</p>
    </>
  );
}

function Line({ look, eggs }: { readonly look: YoungLook; readonly eggs: ReturnType<typeof fraction> }) {
  const expected = multiplyFractions(look.p, eggs);
  return (
    <li>
      <span class="look-says">
        {look.shows}
        {look.carries.length > 0 && <small>{look.carries.map(({ words }) => words).join(', ')}</small>}
      </span>
      <ChanceFigure of={look.p} />
      <span class="hold-expected" title={`exactly ${sayFraction(expected)}`}>
        <strong>{sayExpected(expected)}</strong> <small>expected</small>
      </span>
    </li>
  );
}
