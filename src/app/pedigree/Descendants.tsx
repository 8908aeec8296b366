import { useMemo } from 'preact/hooks';
import { type AnimalRecord, type Facility, nameOf, sayDayShort } from '../../core/index.ts';
import { type Brood, broodsOf, type Young } from './descendants.ts';
import { nodeWords } from './nodeWords.ts';
import { SexShape } from './SexShape.tsx';

interface DescendantsProps {
  readonly facility: Facility;
  readonly animal: AnimalRecord;
}

/** Young and grand-young, each lot under its day and other parent. */
export function Descendants({ facility, animal }: DescendantsProps) {
  const broods = useMemo(() => broodsOf(facility, animal.id), [facility, animal.id]);
  return (
    <section class="ped-part descendants" aria-labelledby="ped-young">
      <h2 id="ped-young">Young</h2>
      {broods.length === 0 ? (
        <p class="soft">None is written. A young comes here when its record names this animal as sire or dam.</p>
      ) : (
        <Broods broods={broods} facility={facility} />
      )}
    </section>
  );
}

function Broods({ broods, facility }: { readonly broods: readonly Brood[]; readonly facility: Facility }) {
  return (
    <ul class="broods">
      {broods.map((brood) => (
        <li key={brood.key}>
          <p class="brood-head">
            <b>{brood.hatched === null ? 'Hatching day unknown' : sayDayShort(brood.hatched)}</b>{' '}
            {brood.mate === null ? (
              'other parent unknown'
            ) : (
              <>
                with <a href={`/animal/${brood.mate}`}>{nameOf(facility, brood.mate)}</a>
              </>
            )}{' '}
            <span class="soft">{brood.young.length} young</span>
          </p>
          <ul class="brood-young">
            {brood.young.map((one) => (
              <YoungLine key={one.animal.id} young={one} facility={facility} />
            ))}
          </ul>
        </li>
      ))}
    </ul>
  );
}

function YoungLine({ young, facility }: { readonly young: Young; readonly facility: Facility }) {
  const { animal, broods } = young;
  const words = nodeWords(facility, animal.id);
  const count = broods.reduce((sum, brood) => sum + brood.young.length, 0);
  return (
    <li>
      <a class="young-link" href={`/animal/${animal.id}`}>
        <SexShape sex={animal.sex} />
        <span>
          {words?.name} <span class="soft">{[animal.sex, words?.traits, words?.gone].filter(Boolean).join(' · ')}</span>
        </span>
      </a>
      {count > 0 && (
        <details>
          <summary>{count} young of its own</summary>
          <Broods broods={broods} facility={facility} />
        </details>
      )}
    </li>
  );
}
