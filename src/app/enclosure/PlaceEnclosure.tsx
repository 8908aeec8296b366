import './enclosure.css';
import { useState } from 'preact/hooks';
import { compareEnclosure, enclosureRuleOf, type PlaceRecord, roundTo, sayPlace, saySize } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Caution } from './Caution.tsx';
import { Group } from './Group.tsx';
import { SizeForm } from './SizeForm.tsx';
import { TubSizes } from './TubSizes.tsx';

/** Places in which animals live by themselves; the others hold such places. */
const HOMES: readonly PlaceRecord['placeKind'][] = ['tub', 'exhibit', 'shelf', 'quarantine'];

/** The inside of a place and how it stands beside the published rules; of a rack, the size of its tubs. */
export function PlaceEnclosure({ place }: { readonly place: PlaceRecord }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const inside = [...facility.places.values()].filter(
    (one) => one.parent === place.id && HOMES.includes(one.placeKind),
  );
  const comparison = compareEnclosure(facility, place, clock.today.value);
  const isHome = comparison !== null || (inside.length === 0 && HOMES.includes(place.placeKind));
  if (!isHome && inside.length === 0) return null;
  const picked = enclosureRuleOf(facility.site.rules.enclosureRule);
  return (
    <section class="enclosure" aria-labelledby="enclosure-title">
      <h2 id="enclosure-title">Inside</h2>
      {inside.length > 0 && <TubSizes inside={inside} name={place.name} />}
      {isHome && <Size place={place} />}
      {comparison !== null && (
        <>
          <Caution />
          {comparison.groups.map((group) => (
            <Group
              key={group.species}
              group={group}
              animals={comparison.animals}
              sizeMm={comparison.sizeMm}
              picked={picked}
            />
          ))}
        </>
      )}
      <p>
        <a href="/enclosures">All enclosures, and which rule set comes first</a>
      </p>
    </section>
  );
}

function Size({ place }: { readonly place: PlaceRecord }) {
  const { site } = useApp();
  const [open, setOpen] = useState(false);
  const { sizeMm } = place;
  const name = sayPlace(site.facility.value, place.id) ?? place.name;
  return (
    <>
      <p class="enclosure-size">
        {sizeMm === null ? (
          <span class="soft">not measured</span>
        ) : (
          <>
            <strong>{saySize(sizeMm)}</strong>
            <span class="soft"> {roundTo((sizeMm.length * sizeMm.width) / 1_000_000, 3)} m² of floor</span>
          </>
        )}
      </p>
      {open ? (
        <SizeForm
          places={[place]}
          label="Inside of this place"
          name={name}
          saves="Save the size"
          onSaved={() => setOpen(false)}
        />
      ) : (
        <button type="button" class="secondary" onClick={() => setOpen(true)}>
          {sizeMm === null ? 'Measure the inside' : 'Measure again'}
        </button>
      )}
    </>
  );
}
