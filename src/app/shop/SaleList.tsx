import { type Offered, sayAnimal, sayDayShort, saySex } from '../../core/index.ts';
import { Notch } from '../look/Notch.tsx';
import { ProblemLine } from '../look/ProblemLine.tsx';
import { useApp } from '../model/app.ts';
import { priceWords } from './words.ts';

/** The animals on offer by species and trait, with how long each has stood, and which must come off today. */
export function SaleList({ offered }: { readonly offered: readonly Offered[] }) {
  if (offered.length === 0)
    return <p class="empty">No animal is on offer. Open an animal’s record and put it on offer there.</p>;
  const species = [...new Set(offered.map(({ animal }) => animal.species))];
  return (
    <>
      {species.map((name) => (
        <section key={name} class="shop-species" aria-label={name}>
          <h2>
            <i>{name}</i>
          </h2>
          <ul class="shop-lines">
            {offered
              .filter(({ animal }) => animal.species === name)
              .map((one) => (
                <OfferedLine key={one.animal.id} offered={one} />
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function OfferedLine({ offered }: { readonly offered: Offered }) {
  const { site } = useApp();
  const { animal, priceMinor, days, isLong, words, code, place, fault } = offered;
  return (
    <li>
      <a href={`/animal/${animal.id}`} class="shop-line">
        <span>
          <strong>{sayAnimal(animal)}</strong> {saySex(animal.sex)}
          {isLong && <Notch kind="look" word="stands long" />}
          <small>{words || code || 'no traits written'}</small>
          <small>
            {days === 1 ? '1 day' : `${days} days`} on offer, since {sayDayShort(animal.offer?.since ?? animal.addedOn)}
            {place === null ? '' : ` · ${place}`}
          </small>
        </span>
        <span class="shop-price">{priceWords(priceMinor, site.facility.value.site.currency)}</span>
      </a>
      {fault !== null && <ProblemLine problem={fault} />}
    </li>
  );
}
