import '../../look/parts.css';
import '../press.css';
import './own.css';
import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { STOCKS } from '../../../../print/stocks/list.ts';
import { useApp } from '../../model/app.ts';
import { Opening } from '../../shell/Opening.tsx';
import { backFrom } from './back.ts';
import { lastKept } from './keptForms.ts';
import { StockForm } from './StockForm.tsx';
import { type StockStart, startOf } from './starts.ts';

/** A paper of the site's own: new, to change, or a copy of one that is known. */
export function StockScreen() {
  const { query } = useLocation();
  const { site } = useApp();
  const own = site.facility.value.site.paper.stocks;
  const [picked, pick] = useState<StockStart | null>(null);
  // As it was when the screen opened: what is typed now makes no other form of it.
  const [halfTyped] = useState(() => lastKept('stock'));
  const back = backFrom(query);
  if (site.state.value === 'opening') return <Opening />;
  const start = picked ?? startOf(query, own, halfTyped);
  return (
    <section class="screen press own-paper" aria-labelledby="own-title">
      <p class="own-back">
        <a href={back.address}>Print</a>
      </p>
      <h1 id="own-title">Paper of your own</h1>
      <div class="field press-kind">
        <label for="own-start">Begin with</label>
        <select id="own-start" value={start} onChange={(event) => pick(event.currentTarget.value as StockStart)}>
          <option value="sheet">A new sheet of labels</option>
          <option value="roll">A new roll, or single cards</option>
          {own.length === 0 ? null : (
            <optgroup label="Change one of yours">
              {own.map(({ stock, name }) => (
                <option key={stock} value={stock}>
                  {name}
                </option>
              ))}
            </optgroup>
          )}
          <optgroup label="A copy of">
            {own.map(({ stock, name }) => (
              <option key={stock} value={`copy ${stock}`}>
                {name}
              </option>
            ))}
            {STOCKS.map(({ id, name }) => (
              <option key={id} value={`copy ${id}`}>
                {name}
              </option>
            ))}
          </optgroup>
        </select>
      </div>
      <StockForm key={start} start={start} back={back} />
    </section>
  );
}
