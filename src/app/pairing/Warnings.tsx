import { type Fraction, type PairingWarning, type PlannedPairing, sayAnimal } from '../../core/index.ts';
import { Chance } from '../genetics/index.ts';
import type { Brood } from './brood.ts';

/** The same words about sire, dam and young are one warning. */
interface Merged {
  readonly kind: PairingWarning['kind'];
  readonly says: string;
  readonly source: string;
  readonly parents: readonly PairingWarning[];
  readonly shares: readonly (Fraction | null)[];
}

/** What the tables say of the welfare of these two and of their young, before anything is worked out or written. */
export function Warnings({ planned, brood }: { readonly planned: PlannedPairing; readonly brood: Brood }) {
  const warnings = merged(planned.warnings);
  if (warnings.length === 0) return null;
  return (
    <section class="pairing-warnings" aria-label="Warnings">
      {warnings.map((one) => (
        <div key={`${one.kind}${one.says}`} class={`pairing-warning pairing-${one.kind}`}>
          <h3>{one.kind === 'lethal' ? 'Stop: lethal' : 'Look at this'}</h3>
          <p class="pairing-says">{one.says}</p>
          <ul>
            {one.parents.map((own) => (
              <li key={own.who}>
                {own.who === 'sire' ? 'The sire, ' : 'The dam, '}
                {sayAnimal(own.who === 'sire' ? planned.sire : planned.dam)}: {own.sure ? 'carries it' : 'may carry it'}
              </li>
            ))}
            {one.shares.map((share) => (
              <li key={share === null ? '' : `${share.top}/${share.bottom}`}>
                {share === null ? (
                  'Young: possible; how likely cannot be worked out'
                ) : (
                  <>
                    Young: <Chance of={share} /> of the {brood.eggs}
                    {one.kind === 'lethal' ? ', taken to die' : ''}
                  </>
                )}
              </li>
            ))}
          </ul>
          <p class="pairing-source">Source: {one.source}</p>
        </div>
      ))}
      <p class="soft">Nothing here advises for or against a pairing: the site decides, and on welfare the vet.</p>
    </section>
  );
}

/** Lethal ones first: what stops is read before what is only looked at. */
function merged(all: readonly PairingWarning[]): readonly Merged[] {
  const isSame = (a: PairingWarning, b: PairingWarning): boolean =>
    a.kind === b.kind && a.says === b.says && a.source === b.source;
  const firsts = all.filter((one, at) => all.findIndex((other) => isSame(one, other)) === at);
  const found = firsts.map((first): Merged => {
    const group = all.filter((one) => isSame(one, first));
    const parents = group.filter(({ who }) => who !== 'young');
    const shares = group.filter(({ who }) => who === 'young').map(({ share }) => share);
    return { kind: first.kind, says: first.says, source: first.source, parents, shares };
  });
  return [...found.filter(({ kind }) => kind === 'lethal'), ...found.filter(({ kind }) => kind === 'welfare')];
}
