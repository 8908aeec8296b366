import { PRINTERS, type PrinterProfile } from '../../../print/qr/profiles.ts';
import { STOCKS } from '../../../print/stocks/list.ts';
import { ownPrinter, stocksOf } from '../../../print/stocks/own.ts';
import type { Stock } from '../../../print/stocks/stock.ts';
import { useApp } from '../model/app.ts';

interface StockPickProps {
  readonly stock: Stock;
  /** What can be picked; all that the site knows where it is left out. */
  readonly papers?: readonly Stock[];
  readonly choose: (stock: Stock) => void;
}

/** The list of stocks, the site's own first. */
export function StockPick({ stock, papers, choose }: StockPickProps) {
  const { site } = useApp();
  const all = papers ?? stocksOf(site.facility.value.site.paper);
  const [own, ours] = parted(all, STOCKS);
  return (
    <Pick id="paper-stock" label="Stock" value={stock.id} own={own} ours={ours} pick={(id) => find(all, id, choose)} />
  );
}

interface PrinterPickProps {
  readonly printer: PrinterProfile;
  readonly choose: (printer: PrinterProfile) => void;
}

/** The list of printers, the site's own first. */
export function PrinterPick({ printer, choose }: PrinterPickProps) {
  const { site } = useApp();
  const own = site.facility.value.site.paper.printers.map(ownPrinter);
  const all = [...own, ...PRINTERS];
  return (
    <Pick
      id="paper-printer"
      label="Printer"
      value={printer.id}
      own={own}
      ours={PRINTERS}
      pick={(id) => find(all, id, choose)}
    />
  );
}

interface Named {
  readonly id: string;
  readonly name: string;
}

interface PickProps {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly own: readonly Named[];
  readonly ours: readonly Named[];
  readonly pick: (id: string) => void;
}

function Pick({ id, label, value, own, ours, pick }: PickProps) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => pick(event.currentTarget.value)}>
        {own.length === 0 ? null : (
          <optgroup label="Your own">
            <Options of={own} />
          </optgroup>
        )}
        {own.length === 0 ? (
          <Options of={ours} />
        ) : (
          <optgroup label="Common ones">
            <Options of={ours} />
          </optgroup>
        )}
      </select>
    </div>
  );
}

function Options({ of }: { readonly of: readonly Named[] }) {
  return (
    <>
      {of.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </>
  );
}

function find<T extends Named>(all: readonly T[], id: string, choose: (one: T) => void): void {
  const found = all.find((one) => one.id === id);
  if (found !== undefined) choose(found);
}

function parted(
  all: readonly Stock[],
  ours: readonly Stock[],
): readonly [own: readonly Stock[], ours: readonly Stock[]] {
  return [all.filter((one) => !ours.includes(one)), all.filter((one) => ours.includes(one))];
}
