import { useApp } from '../model/app.ts';
import { sayPieces } from './words.ts';

/** Two ways in which scanned tags mean something until they are put down: sold, and counted. */
export function ScanModes() {
  const { shelf } = useApp();
  const mode = shelf.mode.value;
  if (mode === 'count') return <Counting />;
  if (mode === 'sell')
    return (
      <div class="shop-mode">
        <p role="status">
          <strong>Selling.</strong> Each scanned tag is one piece sold, at the price in the book.
        </p>
        <button type="button" class="secondary" onClick={() => shelf.take(null)}>
          Put down
        </button>
      </div>
    );
  return (
    <div class="shop-modes">
      <button type="button" class="primary" onClick={() => shelf.take('sell')}>
        Sell by scan
      </button>
      <button type="button" class="secondary" onClick={() => shelf.take('count')}>
        Count the shelf by scan
      </button>
      <p class="soft because">This is no till: it counts pieces and takes no money.</p>
    </div>
  );
}

function Counting() {
  const { shelf, site } = useApp();
  const { items } = site.facility.value;
  const counted = [...shelf.counted.value].flatMap(([id, count]) => {
    const item = items.get(id);
    return item === undefined ? [] : [{ item, count }];
  });
  return (
    <div class="shop-mode">
      <p role="status">
        <strong>Counting.</strong> Scan each piece once; nothing is written before the end.
      </p>
      <ul class="shop-count">
        {counted.map(({ item, count }) => (
          <li key={item.id}>
            <span>
              <strong>{item.name}</strong> {count}
              {count !== item.left && <em> the book has {item.left}</em>}
            </span>
            <button
              type="button"
              class="link"
              aria-label={`One fewer of ${item.name}`}
              onClick={() => shelf.oneFewer(item.id)}
            >
              One fewer
            </button>
          </li>
        ))}
      </ul>
      <div class="shop-two">
        <button type="button" class="primary" disabled={counted.length === 0} onClick={() => void shelf.endCount()}>
          Write the count of {counted.length === 1 ? '1 item' : `${counted.length} items`}
        </button>
        <button type="button" class="secondary" onClick={() => shelf.take(null)}>
          Put down, write nothing
        </button>
      </div>
      <p class="soft because">
        {sayPieces(counted.reduce((sum, { count }) => sum + count, 0))} so far. What nobody scanned stays as it is in
        the book.
      </p>
    </div>
  );
}
