import { useSignal } from '@preact/signals';
import { addDays, type LogEvent, type Offered, saleCsv, salesCsv, standingEvents, stockCsv } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { saveText } from '../model/files.ts';

/** The table of sales goes back so many days. */
const SALES_DAYS = 31;

/** The shop’s tables as CSV: stock, sales, and the sale list for the site’s own web shop. */
export function SaveTables({ offered }: { readonly offered: readonly Offered[] }) {
  const { site, clock } = useApp();
  const said = useSignal('');
  const facility = site.facility.value;
  const { currency } = facility.site;
  if (currency === null) return null;
  const today = clock.today.value;
  function save(name: string, text: string): void {
    saveText(`${name}-${today}.csv`, text);
    said.value = `${name}-${today}.csv has ${text.split('\r\n').length - 2} lines.`;
  }
  async function saveSales(money: string): Promise<void> {
    const histories: LogEvent[] = [];
    for (const id of facility.items.keys()) histories.push(...standingEvents(await site.history(id)));
    const events = histories.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
    save('sales', salesCsv(facility, events, { from: addDays(today, 1 - SALES_DAYS), to: today, currency: money }));
  }
  return (
    <section class="shop-tables" aria-labelledby="tables-title">
      <h2 id="tables-title">Tables</h2>
      <div class="shop-two">
        <button type="button" class="secondary" onClick={() => save('stock', stockCsv(facility, currency))}>
          Save the stock
        </button>
        <button type="button" class="secondary" onClick={() => void saveSales(currency)}>
          Save the sales of {SALES_DAYS} days
        </button>
        <button
          type="button"
          class="secondary"
          disabled={offered.length === 0}
          onClick={() => save('on-offer', saleCsv(offered, currency))}
        >
          Save the sale list
        </button>
        <a class="secondary" href="/print?what=sale-list">
          Print the sale list
        </a>
      </div>
      <p class="soft because">
        CSV after RFC 4180; a text that a spreadsheet could take for a formula is made harmless.
      </p>
      <p role="status">{said.value}</p>
    </section>
  );
}
