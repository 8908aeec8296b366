import {
  type AnimalRecord,
  type Day,
  type DueLine,
  dueLine,
  lastWeight,
  sayAnimal,
  sayDay,
  sayDayShort,
  sayDistance,
  sayGrams,
  saySex,
} from '../../core/index.ts';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';

/** Who lives there: the first lines of the card, and the way to the record. */
export function Occupant({ animal }: { readonly animal: AnimalRecord }) {
  const { site, clock } = useApp();
  const today = clock.today.value;
  const line = dueLine(site.facility.value, animal, today);
  const weight = lastWeight(animal);
  return (
    <a class="occupant" href={`/animal/${animal.id}`}>
      <span class="occupant-name">
        {sayAnimal(animal)} <span class="occupant-sex">{saySex(animal.sex)}</span>
      </span>
      <span class="occupant-id">
        {animal.id.slice(0, 4)} {animal.id.slice(4)}
      </span>
      <span>{animal.species}</span>
      {animal.traits === null ? null : <span class="occupant-traits">{animal.traits.code}</span>}
      <span>
        {weight === null ? 'No weight yet: weigh first' : `${sayGrams(weight.weightG)} on ${sayDayShort(weight.day)}`}
      </span>
      <span class="occupant-due">
        <StateDot state={line.due?.state ?? 'none'} /> {sayDueLine(line, today)}
      </span>
    </a>
  );
}

function sayDueLine({ due, problem }: DueLine, today: Day): string {
  if (problem !== null && due === null) return problem.message;
  if (due === null || due.state === 'vet') return 'Not to be fed without a vet’s word';
  if (due.state === 'hold') return `Hold: ${due.hold?.reason ?? ''}`;
  if (due.next === null) return 'Not to be fed until further word';
  return `Due ${sayDay(due.next)}, ${sayDistance(today, due.next)}`;
}
