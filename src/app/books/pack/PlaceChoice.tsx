import { useMemo } from 'preact/hooks';
import { type Id, sayPlace, walkingOrder } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';

interface PlaceChoiceProps {
  readonly chosen: Id | null;
  choose(id: Id | null): void;
}

/** What animals do not live in by themselves, but in its tubs, comes first: whole racks and rooms are what is asked for. */
const INSIDE: readonly string[] = ['tub', 'incubator', 'freezer'];

/** One rack, room or exhibit, in walking order. */
export function PlaceChoice({ chosen, choose }: PlaceChoiceProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const places = useMemo(() => {
    const order = walkingOrder(facility);
    return [...facility.places.values()]
      .filter(({ placeKind }) => !INSIDE.includes(placeKind))
      .sort((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
  }, [facility]);
  return (
    <div class="field">
      <label for="pack-place">Rack or place</label>
      <select
        id="pack-place"
        value={chosen ?? ''}
        onChange={(event) => choose(places.find(({ id }) => id === event.currentTarget.value)?.id ?? null)}
      >
        <option value="">Choose one</option>
        {places.map(({ id, name }) => (
          <option key={id} value={id}>
            {sayPlace(facility, id) ?? name}
          </option>
        ))}
      </select>
    </div>
  );
}
