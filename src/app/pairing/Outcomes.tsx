import { useState } from 'preact/hooks';
import type { Fraction, PlannedPairing } from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import type { Brood } from './brood.ts';
import { EggStepper } from './EggStepper.tsx';
import { LookLine } from './LookLine.tsx';
import { MoreLooks } from './MoreLooks.tsx';
import { ProveMark } from './ProveMark.tsx';
import { type Looks, useLooks } from './useLooks.ts';

interface OutcomesProps {
  readonly planned: PlannedPairing;
  readonly brood: Brood;
  readonly eggs: number;
  setEggs(eggs: number): void;
}

/** What the young can be, as a ruled table; the likeliest looks first. */
export function Outcomes({ planned, brood, eggs, setEggs }: OutcomesProps) {
  const looks = useLooks(planned, eggs);
  const { first } = looks;
  return (
    <section class="outcomes" aria-labelledby="outcomes-title" aria-busy={first?.at === 'working'}>
      <header class="outcomes-head">
        <h2 id="outcomes-title" class="outcomes-title">
          What the young can be
        </h2>
        <EggStepper eggs={eggs} brood={brood} set={setEggs} />
      </header>
      {first?.at === 'failed' && <ProblemLine problem={first.problem} />}
      {first?.at === 'working' && (
        <p class="soft" role="status">
          Working out the young …
        </p>
      )}
      {first?.at === 'done' &&
        (first.value.looks.length === 0 ? (
          <p class="problem-line" role="status">
            <strong>No young of these two can live:</strong> every genotype that they can give is taken as lethal.
          </p>
        ) : (
          <Table looks={looks} planned={planned} brood={brood} eggs={eggs} viable={first.value.viable} />
        ))}
      <p class="soft">Outcomes are chances, not promises; a single {brood.clutch} can fall far from them.</p>
    </section>
  );
}

interface TableProps extends Omit<OutcomesProps, 'setEggs'> {
  readonly looks: Looks;
  readonly viable: Fraction;
}

function Table({ looks, planned, brood, eggs, viable }: TableProps) {
  const [picked, pick] = useState<string | null>(null);
  const { lines, clutches } = looks;
  const dying = viable.top < viable.bottom;
  return (
    <>
      {dying && (
        <p class="outcomes-viable">
          <Chance of={viable} /> of the {brood.eggs} live. Per {brood.egg} counts those that die, per {brood.young} only
          those that live.
        </p>
      )}
      {clutches?.at === 'failed' && <ProblemLine problem={clutches.problem} />}
      <table class={dying ? 'looks looks-dying' : 'looks'}>
        <caption class="unseen">
          Looks of the young, the likeliest first; open one for what the {brood.clutch} can hold of it
        </caption>
        <thead>
          <tr>
            <th scope="col">Look</th>
            <th scope="col">Per {brood.egg}</th>
            {dying && <th scope="col">Per {brood.young}</th>}
            <th scope="col">
              In {eggs} {eggs === 1 ? brood.egg : brood.eggs}
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map((look, at) => {
            const key = look.labels.join('\u0000');
            return (
              <LookLine
                key={key}
                look={look}
                chances={clutches?.at === 'done' ? (clutches.value[at] ?? null) : null}
                loci={planned.loci}
                brood={brood}
                eggs={eggs}
                viable={viable}
                isPicked={picked === key}
                pick={() => pick(picked === key ? null : key)}
              />
            );
          })}
        </tbody>
      </table>
      {lines.some((look) => look.needsProving) && (
        <p class="soft look-why">
          <ProveMark /> to be proven: {brood.youngs} of that look do not all carry the same, and nobody can see which
          does. Only raising one and breeding it tells.
        </p>
      )}
      <MoreLooks looks={looks} />
    </>
  );
}
