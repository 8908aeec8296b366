import type { Id } from '../../core/index.ts';
import { StateDot } from '../look/StateDot.tsx';
import { useApp } from '../model/app.ts';
import { type RackView, type RoomLens, sayTub, type TubView } from './roomView.ts';

interface RackColumnProps {
  readonly rack: RackView;
  readonly lens: RoomLens;
  readonly far: boolean;
  readonly open: Id | null;
  touch(id: Id): void;
}

/** A rack drawn to count: as many fronts as it has tubs, the top one on top. */
export function RackColumn({ rack, lens, far, open, touch }: RackColumnProps) {
  const title = `column-${rack.id ?? 'none'}`;
  return (
    <section class="rack" aria-labelledby={title}>
      <h2 id={title}>
        {rack.id === null ? (
          rack.name
        ) : (
          <a href={`/place/${rack.id}`} aria-label={rack.name} title={rack.name}>
            {far ? shortName(rack.name) : rack.name}
          </a>
        )}
      </h2>
      <ol>
        {rack.tubs.map((tub) => (
          <li key={tub.place.id}>
            <Tub tub={tub} lens={lens} far={far} isOpen={tub.place.id === open} touch={touch} />
          </li>
        ))}
      </ol>
    </section>
  );
}

/** `Rack 12` is `12` and `Front Hall` is `FH` where there is no room for more. */
function shortName(name: string): string {
  const number = /(\d+)$/.exec(name)?.[1];
  return number ?? [...name.matchAll(/(?:^|\s)(\S)/g)].map((word) => word[1]).join('');
}

/** Names up to this length stay on one line; `3-14` must not break at its hyphen. */
const SHORT = 7;

interface TubProps {
  readonly tub: TubView;
  readonly lens: RoomLens;
  readonly far: boolean;
  readonly isOpen: boolean;
  touch(id: Id): void;
}

function Tub({ tub, lens, far, isOpen, touch }: TubProps) {
  const { site, clock } = useApp();
  const { place, animals } = tub;
  const marks = ['tub', animals.length === 0 ? 'tub-empty' : '', tub.held && lens === 'due' ? 'tub-held' : ''];
  return (
    <button
      type="button"
      class={marks.filter(Boolean).join(' ')}
      aria-label={sayTub(site.facility.value, tub, clock.today.value)}
      aria-expanded={isOpen}
      onClick={() => touch(place.id)}
    >
      <span class={place.name.length <= SHORT ? 'tub-name tub-name-short' : 'tub-name'}>{place.name}</span>
      <Front tub={tub} lens={lens} far={far} />
      {animals.length > 1 ? <span class="tub-more">×{animals.length}</span> : null}
    </button>
  );
}

function Front({ tub, lens, far }: Pick<TubProps, 'tub' | 'lens' | 'far'>) {
  switch (lens) {
    case 'due':
      return tub.dot === 'empty' ? null : <StateDot state={tub.dot} silent />;
    case 'weight':
      if (tub.animals.length === 0) return null;
      if (far) return tub.weighNow ? <span class="tub-far-weigh" /> : null;
      return <Weights tub={tub} />;
    case 'empty':
      return tub.animals.length === 0 ? (
        <span class="tub-word">{far ? '' : 'empty'}</span>
      ) : (
        <StateDot state="soon" silent />
      );
    default:
      return lens satisfies never;
  }
}

function Weights({ tub }: { readonly tub: TubView }) {
  const kind = tub.weighNow ? 'tub-weight tub-weigh' : 'tub-weight';
  if (tub.weights.length === 0) return <span class={kind}>weigh</span>;
  return (
    <span class="tub-weights">
      {tub.weights.map((weight, at) => (
        <span key={`${at} ${weight}`} class={kind}>
          {weight}
        </span>
      ))}
    </span>
  );
}
