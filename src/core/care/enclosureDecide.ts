import type { Day } from '../days.ts';
import { keptPlace, type PlaceRecord } from '../facility/index.ts';
import { problem } from '../problems.ts';
import type { Decision } from './decide.ts';
import { type SizeMm, saySize } from './enclosureSize.ts';

/**
 * Writes the inside size of places, all alike, and keeps whatever else is known of each. A place that has this size
 * already is left as it is. Refused where no place is left: `size-same`.
 */
export function decideSizes(places: readonly PlaceRecord[], sizeMm: SizeMm, day: Day): Decision {
  const others = places.filter((place) => place.sizeMm === null || !isSame(place.sizeMm, sizeMm));
  if (others.length === 0) return { kind: 'refused', problem: problem('size-same', { size: saySize(sizeMm) }) };
  const many = others.length === 1 ? '' : ` in ${others.length} places`;
  return {
    kind: 'accepted',
    said: `${saySize(sizeMm)} inside${many}`,
    drafts: others.map((place) => ({
      kind: 'place-set',
      subjects: [place.id],
      payload: { ...keptPlace(place), sizeMm: { ...sizeMm } },
      day,
    })),
  };
}

function isSame(a: SizeMm, b: SizeMm): boolean {
  return a.length === b.length && a.width === b.width && a.height === b.height;
}
