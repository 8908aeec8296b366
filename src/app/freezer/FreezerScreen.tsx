import { useMemo, useState } from 'preact/hooks';
import { lotsInFreezer, STOCK_CAUTION, type StockLot, sayNumber, thawList } from '../../core/index.ts';
import '../look/parts.css';
import { useApp } from '../model/app.ts';
import './freezer.css';
import { PreyShelf } from './PreyShelf.tsx';
import { Received } from './Received.tsx';
import { ReceiveForm } from './ReceiveForm.tsx';
import { SessionPart } from './SessionPart.tsx';

/** What lies in the freezer, by class of prey, the oldest lot first; lots come in here, and are opened from here. */
export function FreezerScreen() {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  const stock = useMemo(() => lotsInFreezer(facility, today), [facility, today]);
  const thaw = useMemo(() => thawList(facility, today), [facility, today]);
  const lots = [...stock.values()].flat();
  // On a desk the form stands beside the shelves; on a phone it would push them down.
  const [open, setOpen] = useState(lots.length === 0 || matchMedia('(min-width: 900px)').matches);
  return (
    <section class="screen freezer" aria-labelledby="freezer-title">
      <h1 id="freezer-title">Freezer</h1>
      <p class="soft">{sayStock(lots, facility.site.rules.freezerItems)}</p>
      <p class="freezer-links">
        <a class="secondary" href="/freezer/order">
          What to order
        </a>
        <a class="secondary" href="/rounds">
          Thaw list
        </a>
        {lots.length > 0 && (
          <a class="secondary" href="/print?what=lot">
            Print lot labels
          </a>
        )}
      </p>
      <Received />
      <SessionPart day={today} lines={thaw} />
      <div class="freezer-body">
        <details class="receive-part" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary>Receive a lot</summary>
          <ReceiveForm />
        </details>
        <div>
          {lots.length === 0 && (
            <p class="empty">
              Nothing lies in the freezer by the book. Receive a lot when a box comes, and it is here.
            </p>
          )}
          {[...stock].map(([prey, of]) => (
            <PreyShelf key={prey} prey={prey} lots={of} today={today} />
          ))}
        </div>
      </div>
      <p class="caution">{STOCK_CAUTION}</p>
    </section>
  );
}

function sayStock(lots: readonly StockLot[], space: number | null): string {
  const items = lots.reduce((sum, lot) => sum + lot.left, 0);
  const past = lots.filter(({ state }) => state === 'past').length;
  const said = [`${sayNumber(items)} items in ${lots.length} ${lots.length === 1 ? 'lot' : 'lots'}`];
  if (past > 0) said.push(`${past} past ${past === 1 ? 'its' : 'their'} day`);
  if (space !== null) said.push(`room for ${sayNumber(Math.max(0, space - items))} more`);
  return said.join(' · ');
}
