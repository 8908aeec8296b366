import type { Id } from '../../core/index.ts';
import { occupants, sayPlace } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** One place: who lives there. */
export function PlaceScreen({ id }: { readonly id: Id }) {
  const { site } = useApp();
  const facility = site.facility.value;
  return (
    <main>
      <h1>{sayPlace(facility, id)}</h1>
      <p>{occupants(facility, id).length} animals live here.</p>
    </main>
  );
}
