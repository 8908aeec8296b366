import {
  type Completeness,
  type Fraction,
  type PlannedPairing,
  pedigreeAround,
  sayAnimal,
  sayInbreeding,
} from '../../core/index.ts';
import { Chance, type LineageAnswer, type Share, sayAboutPercent, useAsked } from '../genetics/index.ts';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';

/** How closely the two are related, and how inbred their young would be, with what is known of their ancestors. */
export function KinLines({ planned }: { readonly planned: PlannedPairing }) {
  const { site } = useApp();
  const of = [planned.sire.id, planned.dam.id];
  const animals = pedigreeAround(site.facility.value, of);
  const key = JSON.stringify([of, animals]);
  const asked = useAsked({ ask: 'lineage', animals, of }, key);
  return (
    <section class="pairing-kin" aria-labelledby="kin-title" aria-busy={asked?.at === 'working'}>
      <h2 id="kin-title">Kinship</h2>
      {asked?.at === 'failed' && <ProblemLine problem={asked.problem} />}
      {asked?.at === 'working' && (
        <p class="soft" role="status">
          Working out the kinship
          {asked.progress === null ? '' : `: ${asked.progress.done} of ${asked.progress.of} animals`} …
        </p>
      )}
      {asked?.at === 'done' && <Known planned={planned} lineage={asked.value} />}
    </section>
  );
}

function Known({ planned, lineage }: { readonly planned: PlannedPairing; readonly lineage: LineageAnswer }) {
  const { young } = lineage;
  if (young === null) return null;
  const parents = [planned.sire, planned.dam];
  const names = parents.map(sayAnimal).join(' and ');
  return (
    <>
      <dl class="pairing-figures">
        <div>
          <dt>Inbreeding of the young</dt>
          <dd>
            {hasGap(young.completeness) && 'at least '}
            <ShareFigure of={young.inbreeding} />
            <small>{knownWords(young.inbreeding, young.completeness)}</small>
          </dd>
        </div>
        <div>
          <dt>Kinship of the two</dt>
          <dd>the same figure</dd>
        </div>
      </dl>
      {!lineage.exact && (
        <p class="soft">
          The pedigree holds {lineage.animals} animals, too many for exact fractions: these are plain numbers, right to
          about twelve digits.
        </p>
      )}
      <details>
        <summary>Inbreeding of {names}</summary>
        <dl class="pairing-figures">
          {parents.map((one) => (
            <ParentLine key={one.id} name={sayAnimal(one)} id={one.id} lineage={lineage} />
          ))}
        </dl>
      </details>
    </>
  );
}

function ParentLine({
  name,
  id,
  lineage,
}: {
  readonly name: string;
  readonly id: string;
  readonly lineage: LineageAnswer;
}) {
  const completeness = lineage.completeness.get(id);
  const inbreeding = lineage.inbreeding.get(id) ?? 0;
  return (
    <div>
      <dt>{name}</dt>
      <dd>{completeness !== undefined && sayInbreeding(asFraction(inbreeding), completeness)}</dd>
    </div>
  );
}

function ShareFigure({ of }: { readonly of: Share }) {
  return <strong>{typeof of === 'number' ? sayAboutPercent(of) : <Chance of={of} />}</strong>;
}

/** Unknown ancestors are taken as unrelated, so with a gap among them every figure is the least. */
function hasGap({ generations }: Completeness): boolean {
  return generations.some(({ known, of }) => known < of);
}

/** What follows the figure in core’s saying: what is known of the ancestors. */
function knownWords(inbreeding: Share, completeness: Completeness): string {
  const said = sayInbreeding(asFraction(inbreeding), completeness);
  return said.slice(said.indexOf(': ') + 2);
}

/** A double to twelve digits, for words that take a fraction. */
function asFraction(share: Share): Fraction {
  return typeof share === 'number' ? { top: BigInt(Math.floor(share * 1e12)), bottom: 10n ** 12n } : share;
}
