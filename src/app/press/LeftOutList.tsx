import type { LeftOut } from '../../../print/index.ts';
import { nameOf, parseId } from '../../core/index.ts';
import { useApp } from '../model/app.ts';

/** What was asked for and is not on the paper, each with its reason. */
export function LeftOutList({ left }: { readonly left: readonly LeftOut[] }) {
  const { site } = useApp();
  if (left.length === 0) return null;
  const name = (id: string): string => {
    const read = parseId(id);
    return read.ok ? nameOf(site.facility.value, read.value.id) : id;
  };
  return (
    <div class="left-out" role="alert">
      <h3>
        {left.length} {left.length === 1 ? 'card is' : 'cards are'} not on the paper
      </h3>
      <ul>
        {left.map(({ id, why }) => (
          <li key={id}>
            <a href={`/animal/${id}`}>{name(id)}</a> {why}
          </li>
        ))}
      </ul>
    </div>
  );
}
