import { useEffect, useRef } from 'preact/hooks';
import { sayDayShort, sayPlace } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import type { Spot } from './layout.ts';
import { nodeWords, sayAgain } from './nodeWords.ts';
import { SexShape } from './SexShape.tsx';
import { sayWay } from './walk.ts';

interface PeekProps {
  readonly spot: Spot;
  /** Goes to where the ancestors of an animal that stands here again are drawn. */
  readonly toFirst: () => void;
  readonly close: () => void;
}

/** One animal of the drawing, looked at: at the thumb on a phone, at the side on a desk. */
export function Peek({ spot, toFirst, close }: PeekProps) {
  const { site } = useApp();
  const facility = site.facility.value;
  const title = useRef<HTMLHeadingElement>(null);
  const words = nodeWords(facility, spot.id);
  useEffect(() => title.current?.focus({ preventScroll: true }), [spot.way]);
  if (words === null) return null;
  const { animal, name, id, traitsLong } = words;
  const again = sayAgain(spot);
  const where =
    animal.left === null ? sayPlace(facility, animal.place) : `${animal.left.how} ${sayDayShort(animal.left.day)}`;
  const lines = [
    animal.hatchedOn === null ? 'hatching day unknown' : `hatched ${sayDayShort(animal.hatchedOn)}`,
    traitsLong || 'no traits written',
    where ?? 'in no place',
  ];
  return (
    <aside class="tree-peek" aria-labelledby="tree-peek-title" onKeyDown={(event) => event.key === 'Escape' && close()}>
      <header>
        <h2 id="tree-peek-title" ref={title} tabIndex={-1}>
          <SexShape sex={animal.sex} /> {name}
        </h2>
        <button type="button" class="secondary" onClick={close}>
          Close
        </button>
      </header>
      <p>
        <span class="tree-peek-id">{id}</span> · {sayWay(spot.way)} · {animal.sex}
      </p>
      <p class="soft">{lines.join(' · ')}</p>
      {again !== null && (
        <p class="tree-again">
          {spot.is === 'ring'
            ? 'It is its own ancestor: the ring closes here.'
            : 'It stands in this pedigree more than once.'}{' '}
          <button type="button" class="link" onClick={toFirst}>
            To where its ancestors are drawn
          </button>
        </p>
      )}
      <p class="tree-peek-links">
        <a class="secondary" href={`/animal/${animal.id}`}>
          Record
        </a>
        {spot.way !== '' && (
          <a class="secondary" href={`/pedigree/${animal.id}`}>
            Its pedigree
          </a>
        )}
      </p>
    </aside>
  );
}
