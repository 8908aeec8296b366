import { useMemo } from 'preact/hooks';
import { type AnimalRecord, animalsInWalkingOrder, sayAnimal } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** The animals before and after this one in the walk. */
export function Neighbours({ animal }: { readonly animal: AnimalRecord }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const walk = useMemo(() => animalsInWalkingOrder(facility), [facility]);
  const at = walk.findIndex((one) => one.id === animal.id);
  const [before, after] = at < 0 ? [undefined, undefined] : [walk[at - 1], walk[at + 1]];
  return (
    <nav class="neighbours" aria-label="Neighbours in the walk">
      {before !== undefined ? (
        <a href={`/animal/${before.id}`} rel="prev">
          ← {sayAnimal(before)}
        </a>
      ) : (
        <span />
      )}
      {after !== undefined && (
        <a href={`/animal/${after.id}`} rel="next">
          {sayAnimal(after)} →
        </a>
      )}
    </nav>
  );
}
