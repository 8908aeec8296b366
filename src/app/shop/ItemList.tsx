import { type ItemRecord, isTagStale } from '../../core/index.ts';
import { Notch } from '../look/Notch.tsx';
import { useApp } from '../model/app.ts';
import { itemStanding, priceWords } from './words.ts';

interface ItemListProps {
  readonly items: readonly ItemRecord[];
  readonly empty: string;
}

/** Items as lines: name, what is left, price; a line opens the item. */
export function ItemList({ items, empty }: ItemListProps) {
  if (items.length === 0) return <p class="empty">{empty}</p>;
  return (
    <ul class="shop-lines">
      {items.map((item) => (
        <ItemLine key={item.id} item={item} />
      ))}
    </ul>
  );
}

function ItemLine({ item }: { readonly item: ItemRecord }) {
  const { site } = useApp();
  const facility = site.facility.value;
  const { state, words } = itemStanding(item);
  return (
    <li>
      <a href={`/item/${item.id}`} class={`shop-line shop-${state}`}>
        <span>
          <strong>{item.kind === 'shed' ? `Shed of ${item.name}` : item.name}</strong>
          {isTagStale(facility, item) && <Notch kind="look" word="tag out of date" />}
          <small>{words}</small>
        </span>
        <span class="shop-price">{priceWords(item.priceMinor, facility.site.currency)}</span>
      </a>
    </li>
  );
}
