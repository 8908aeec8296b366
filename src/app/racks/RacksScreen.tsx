import { useMemo, useState } from 'preact/hooks';
import { type Id, sayAnimal } from '../../core/index.ts';
import { Lens } from '../look/Lens.tsx';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import { RackColumn } from './RackColumn.tsx';
import { RoomKey } from './RoomKey.tsx';
import './racks.css';
import { countRoom, type RoomLens, roomView, unplaced } from './roomView.ts';
import { TubPeek } from './TubPeek.tsx';

/** The room as it stands; a lens says what the tubs show, a touch lets the card peek out. */
export function RacksScreen() {
  const { site, clock } = useApp();
  const [lens, setLens] = useState<RoomLens>('due');
  const [far, setFar] = useState(false);
  const [open, setOpen] = useState<Id | null>(null);
  const facility = site.facility.value;
  const today = clock.today.value;
  const racks = useMemo(() => roomView(facility, today), [facility, today]);
  const counts = countRoom(racks);
  const tub = racks.flatMap((rack) => rack.tubs).find(({ place }) => place.id === open) ?? null;
  const homeless = unplaced(facility);
  return (
    <section class="screen racks" aria-labelledby="racks-title">
      <header class="racks-head">
        <h1 id="racks-title">Racks</h1>
        {racks.length === 0 ? null : (
          <button type="button" aria-pressed={far} onClick={() => setFar(!far)}>
            {far ? 'Step closer' : 'Whole room'}
          </button>
        )}
      </header>
      {racks.length === 0 ? (
        <p class="empty">
          No racks yet. <a href="/books">Add a rack and its tubs in Books</a>, or import a log there.
        </p>
      ) : (
        <>
          <Lens<RoomLens>
            label="Look at"
            chosen={lens}
            choose={setLens}
            choices={[
              { id: 'due', words: 'Due', count: counts.due },
              { id: 'weight', words: 'Weight', count: counts.weight },
              { id: 'empty', words: 'Empty', count: counts.empty },
            ]}
          />
          <RoomKey lens={lens} far={far} />
          <div class={far ? 'room room-far' : 'room'}>
            {racks.map((rack) => (
              <RackColumn key={rack.id ?? 'none'} rack={rack} lens={lens} far={far} open={open} touch={setOpen} />
            ))}
          </div>
        </>
      )}
      {homeless.length === 0 ? null : (
        <p class="homeless">
          Without a place:{' '}
          {homeless.map((animal, at) => (
            <>
              {at === 0 ? '' : ', '}
              <a href={`/animal/${animal.id}`}>{sayAnimal(animal)}</a>
            </>
          ))}
          . Scan the animal and then its tub.
        </p>
      )}
      {tub === null ? null : <TubPeek tub={tub} close={() => setOpen(null)} />}
    </section>
  );
}
