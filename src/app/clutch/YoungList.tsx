import { type AnimalRecord, type ClutchRecord, cardTraits, sayAnimal, sayId, saySex } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { counted } from './sayClutch.ts';

interface YoungListProps {
  readonly clutch: ClutchRecord;
  readonly young: readonly AnimalRecord[];
}

/** The young with their ids and looks, and what has been done with each: sexed, first shed, first meal. */
export function YoungList({ clutch, young }: YoungListProps) {
  const never = young.filter((one) => one.printed === null && one.left === null).length;
  return (
    <section class="young" aria-labelledby="young-title">
      <header class="part-head">
        <h2 id="young-title">Young</h2>
        <p class="soft">
          {counted(young.length, 'record')}
          {never > 0 && `, ${counted(never, 'card')} not printed yet`}
        </p>
      </header>
      <ol class="young-list">
        {young.map((one) => (
          <Young key={one.id} animal={one} />
        ))}
      </ol>
      <p class="soft small">
        Sexing, the first shed and the first meal are written on each card of its own, by its stamp.
        {clutch.bears === 'eggs' && ' A card that is scanned opens its record.'}
      </p>
    </section>
  );
}

function Young({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const traits = cardTraits(site.facility.value, animal);
  return (
    <li>
      <a href={`/animal/${animal.id}`}>
        <span class="young-id">{sayId(animal.id)}</span>
        <span class="young-name">{animal.name ?? animal.number ?? sayAnimal(animal)}</span>
        <span class="young-look">{traits === null ? 'no traits written' : (traits.words?.long ?? traits.code)}</span>
        <span class="young-marks">
          <Mark
            done={animal.sex !== 'unsexed'}
            words={animal.sex === 'unsexed' ? 'sexed' : `sexed ${saySex(animal.sex)}`}
          />
          <Mark done={animal.firstShedOn !== null} words="shed" />
          <Mark done={animal.mealsTaken > 0} words="fed" />
          {animal.left !== null && <span class="young-left">{animal.left.how}</span>}
        </span>
      </a>
    </li>
  );
}

/** A tick for what is done, an open ring for what is still to come; the words say which. */
function Mark({ done, words }: { readonly done: boolean; readonly words: string }) {
  return (
    <span class={done ? 'young-mark young-done' : 'young-mark'}>
      <svg viewBox="0 0 24 24" width="16" height="16" aria-hidden="true">
        {done ? <path class="stroke" d="M4 13l5 5L20 6" /> : <circle class="stroke" cx="12" cy="12" r="6" />}
      </svg>
      {done ? words : <span>not {words} yet</span>}
    </span>
  );
}
