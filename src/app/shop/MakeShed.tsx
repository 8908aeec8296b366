import { useEffect } from 'preact/hooks';
import { ok, sayAnimal, sayDayShort } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** So many animals that shed of late are offered by name; any other is scanned. */
const FEW = 6;

/** Waits for an animal’s card, whose last shed is made into pieces to sell. */
export function MakeShed() {
  const { desk, site } = useApp();
  useEffect(() => {
    desk.want({ says: 'a shed item: scan the animal', take: (id) => ok(`/shop/shed/${id}`) });
    return () => desk.want(null);
  }, []);
  const made = new Set([...site.facility.value.items.values()].map(({ animal, shedOn }) => `${animal} ${shedOn}`));
  const recent = [...site.facility.value.animals.values()]
    .filter(
      (animal) => animal.left === null && animal.lastShedOn !== null && !made.has(`${animal.id} ${animal.lastShedOn}`),
    )
    .sort((a, b) => ((a.lastShedOn ?? '') > (b.lastShedOn ?? '') ? -1 : 1))
    .slice(0, FEW);
  return (
    <div class="shop-mode">
      <p role="status">
        <strong>Make a shed item:</strong> scan the animal’s card, or take one that shed of late.
      </p>
      <ul class="shop-recent">
        {recent.map((animal) => (
          <li key={animal.id}>
            <a href={`/shop/shed/${animal.id}`}>
              {sayAnimal(animal)}, {animal.lastShedOn === null ? '' : sayDayShort(animal.lastShedOn)}
            </a>
          </li>
        ))}
      </ul>
    </div>
  );
}
