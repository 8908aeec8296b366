import { type Facility, type Id, nameOf } from '../../core/index.ts';
import type { RingLink } from './ring.ts';

interface RingProps {
  readonly facility: Facility;
  readonly ring: readonly RingLink[];
}

/** Every animal of a ring of parents, so that the wrong one can be found. */
export function Ring({ facility, ring }: RingProps) {
  const first = ring[0];
  if (first === undefined) return null;
  return (
    <div class="ring">
      <p>The ring, from young to parent. One of these lines is wrong:</p>
      <ol>
        {ring.map(({ id, above }, at) => (
          <li key={id}>
            <a href={`/animal/${id}`}>{nameOf(facility, id as Id)}</a>, whose {above} is{' '}
            {nameOf(facility, (ring[at + 1] ?? first).id as Id)}
          </li>
        ))}
      </ol>
    </div>
  );
}
