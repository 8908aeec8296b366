import { useEffect, useRef } from 'preact/hooks';
import { sayPlace } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { Occupant } from './Occupant.tsx';
import type { TubView } from './roomView.ts';

interface TubPeekProps {
  readonly tub: TubView;
  close(): void;
}

/** The card of the touched tub, peeking out at the thumb (phone) or at the side (desk). */
export function TubPeek({ tub, close }: TubPeekProps) {
  const { site } = useApp();
  const title = useRef<HTMLHeadingElement>(null);
  const { place, animals } = tub;
  useEffect(() => title.current?.focus(), [place.id]);
  return (
    <aside class="peek" aria-labelledby="peek-title" onKeyDown={(event) => event.key === 'Escape' && close()}>
      <header>
        <h2 id="peek-title" ref={title} tabIndex={-1}>
          {sayPlace(site.facility.value, place.id)}
        </h2>
        <button type="button" class="secondary" onClick={close}>
          Close
        </button>
      </header>
      {animals.length === 0 ? <p>Empty. With the stamp “moved”, scan an animal and then this tub.</p> : null}
      {animals.map((animal) => (
        <Occupant key={animal.id} animal={animal} />
      ))}
      <a class="secondary" href={`/place/${place.id}`}>
        The place itself
      </a>
    </aside>
  );
}
