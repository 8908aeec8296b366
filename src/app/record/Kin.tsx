import type { ComponentChildren } from 'preact';
import { type AnimalRecord, type Id, nameOf, sayPlace } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { pairingAddress } from '../pairing/choice.ts';

const FEW = 6;

/** Where it lives, who its parents are, and what came of it. */
export function Kin({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const young = [...facility.animals.values()].filter((one) => one.sire === animal.id || one.dam === animal.id);
  const place = sayPlace(facility, animal.place);
  const parents = [animal.sire, animal.dam].filter((one) => one !== null);
  return (
    <dl class="kin">
      {place !== null && (
        <Line term="Lives in">
          <a href={`/place/${animal.place}`}>{place}</a>
        </Line>
      )}
      <Line term="Parents">
        <div class="kin-parents">
          {parents.length > 0 ? <Animals ids={parents} name={(id) => nameOf(facility, id)} /> : <span>unknown</span>}
          <a class="kin-set" href={`/animal/${animal.id}/parents`}>
            {parents.length > 0 ? 'Change parents' : 'Set parents'}
          </a>
        </div>
      </Line>
      <Line term="Descent">
        <a href={`/pedigree/${animal.id}`}>Pedigree</a>
      </Line>
      {animal.left === null && (
        <Line term="Pairing">
          <a href={pairWith(animal)}>Pair with …</a>
        </Line>
      )}
      {young.length > 0 && (
        <Line term="Young">
          <Animals ids={young.slice(0, FEW).map((one) => one.id)} name={(id) => nameOf(facility, id)} />
          {young.length > FEW && (
            <details>
              <summary>and {young.length - FEW} more</summary>
              <Animals ids={young.slice(FEW).map((one) => one.id)} name={(id) => nameOf(facility, id)} />
            </details>
          )}
        </Line>
      )}
    </dl>
  );
}

/** An unsexed animal may be either half, which the page asks. */
function pairWith({ id, sex }: AnimalRecord): string {
  return pairingAddress({ [sex === 'male' ? 'sire' : sex === 'female' ? 'dam' : 'either']: id });
}

function Line({ term, children }: { readonly term: string; readonly children: ComponentChildren }) {
  return (
    <div>
      <dt>{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Animals({ ids, name }: { readonly ids: readonly Id[]; readonly name: (id: Id) => string }) {
  return (
    <ul>
      {ids.map((id) => (
        <li key={id}>
          <a href={`/animal/${id}`}>{name(id)}</a>
        </li>
      ))}
    </ul>
  );
}
