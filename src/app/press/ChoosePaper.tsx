import { labelsPerPage, type Stock } from '../../../print/stocks/stock.ts';
import { SpokenDay } from '../look/SpokenDay.tsx';
import { useApp } from '../model/app.ts';
import type { What } from './batch.ts';
import { MorePaper } from './MorePaper.tsx';
import { aboutPaper } from './own/back.ts';
import { PrinterPick, StockPick } from './PaperPicks.tsx';
import type { Paper } from './paper.ts';
import { SheetPicker } from './SheetPicker.tsx';

interface ChoosePaperProps {
  readonly what: What;
  readonly paper: Paper;
  readonly papers: readonly Stock[];
  readonly lay: (paper: Paper) => void;
  readonly count: number;
}

/** The paper in the printer: stock, printer, order, and the first free label of the sheet on top. */
export function ChoosePaper({ what, paper, papers, lay, count }: ChoosePaperProps) {
  const many = labelsPerPage(paper.stock) > 1;
  return (
    <fieldset class="press-paper">
      <legend>Paper</legend>
      <StockPick stock={paper.stock} papers={papers} choose={(stock) => lay({ ...paper, stock, first: 1 })} />
      <PrinterPick printer={paper.printer} choose={(printer) => lay({ ...paper, printer })} />
      <Calibrated what={what} paper={paper} />
      {many ? (
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
      ) : null}
      <MorePaper what={what} paper={paper} lay={lay} />
      {many ? <SheetPicker paper={paper} count={count} touch={(first) => lay({ ...paper, first })} /> : null}
    </fieldset>
  );
}

/** Says that a run is set right, and since when; nothing where the two were never calibrated. */
function Calibrated({ what, paper: { stock, printer } }: Pick<ChoosePaperProps, 'what' | 'paper'>) {
  const { site, clock } = useApp();
  const known = site.facility.value.site.paper.calibrations.find(
    (one) => one.stock === stock.id && one.printer === printer.id,
  );
  if (known === undefined) return null;
  return (
    <p class="calibrated">
      <a href={aboutPaper('calibration', what, { stock: stock.id, printer: printer.id })}>
        Calibrated <SpokenDay day={known.day} today={clock.today.value} />
      </a>
    </p>
  );
}
