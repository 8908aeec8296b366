import { PRINTERS } from '../../../print/qr/profiles.ts';
import { labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';
import type { Paper } from './paper.ts';
import { SheetPicker } from './SheetPicker.tsx';

interface ChoosePaperProps {
  readonly paper: Paper;
  readonly papers: readonly Stock[];
  readonly lay: (paper: Paper) => void;
  readonly count: number;
}

/** The paper in the printer: stock, printer, order, and the first free label of the sheet on top. */
export function ChoosePaper({ paper, papers, lay, count }: ChoosePaperProps) {
  const many = labelsPerPage(paper.stock) > 1;
  return (
    <fieldset class="press-paper">
      <legend>Paper</legend>
      <div class="field">
        <label for="paper-stock">Stock</label>
        <select
          id="paper-stock"
          value={paper.stock.id}
          onChange={(event) => {
            const stock = papers.find(({ id }) => id === event.currentTarget.value);
            if (stock !== undefined) lay({ ...paper, stock, first: 1 });
          }}
        >
          {papers.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="paper-printer">Printer</label>
        <select
          id="paper-printer"
          value={paper.printer.id}
          onChange={(event) => {
            const printer = PRINTERS.find(({ id }) => id === event.currentTarget.value);
            if (printer !== undefined) lay({ ...paper, printer });
          }}
        >
          {PRINTERS.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      {many ? (
        <>
          <div class="field">
            <label for="paper-order">Order</label>
            <select
              id="paper-order"
              value={paper.order}
              onChange={(event) => lay({ ...paper, order: event.currentTarget.value === 'stack' ? 'stack' : 'walk' })}
            >
              <option value="walk">Along each sheet, in walking order</option>
              <option value="stack">Cut the pile at once: stacks in walking order</option>
            </select>
          </div>
          <SheetPicker paper={paper} count={count} touch={(first) => lay({ ...paper, first })} />
        </>
      ) : null}
    </fieldset>
  );
}
