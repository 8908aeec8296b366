import '../../look/parts.css';
import '../press.css';
import './own.css';
import { useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { OFFICE_600 } from '../../../../print/qr/profiles.ts';
import { findPrinter, findStock } from '../../../../print/stocks/own.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import { Opening } from '../../shell/Opening.tsx';
import { PrinterPick, StockPick } from '../PaperPicks.tsx';
import { laidPaper, rememberedPaper } from '../paper.ts';
import { backFrom } from './back.ts';
import { CalibrationNow } from './CalibrationNow.tsx';
import { lastKept } from './keptForms.ts';
import { MakePage } from './MakePage.tsx';
import { MeasuredForm } from './MeasuredForm.tsx';

/** What a printer does to a paper: a page to print, what is measured on it, and what that means. */
export function CalibrationScreen() {
  const { query } = useLocation();
  // Another page's code, scanned while this one is open, is about another paper.
  return <Calibrating key={[query['stock'], query['printer']].join()} query={query} />;
}

function Calibrating({ query }: { readonly query: Readonly<Record<string, string>> }) {
  const { site } = useApp();
  const known = site.facility.value.site.paper;
  const back = backFrom(query);
  const [halfTyped] = useState(() => lastKept('measured')?.split(' ') ?? []);
  const isAsked = query['stock'] !== undefined || query['printer'] !== undefined;
  const [picked, pick] = useState<{ readonly stock?: string; readonly printer?: string }>({});
  if (site.state.value === 'opening') return <Opening />;
  const usual = laidPaper(back.what, rememberedPaper(back.what), null, known);
  const [lastStock, lastPrinter] = isAsked ? [] : halfTyped;
  const stock = findStock(picked.stock ?? query['stock'] ?? lastStock ?? usual.stock.id, known);
  const printer = findPrinter(picked.printer ?? query['printer'] ?? lastPrinter ?? usual.printer.id, known);
  const [onStock, onPrinter] = [stock.ok ? stock.value : usual.stock, printer.ok ? printer.value : OFFICE_600];
  return (
    <section class="screen press own-paper" aria-labelledby="own-title">
      <p class="own-back">
        <a href={back.address}>Print</a>
      </p>
      <h1 id="own-title">Calibration</h1>
      <p class="own-lead">
        Every printer puts things a little beside their place. Print a page, measure four figures on it, and all that is
        printed on this paper with this printer is set right from then on.
      </p>
      {stock.ok ? null : <ProblemLine problem={stock.problem} />}
      {printer.ok ? null : <ProblemLine problem={printer.problem} />}
      <div class="calibration-body">
        <div class="own-lines calibration-of">
          <StockPick stock={onStock} choose={(next) => pick({ ...picked, stock: next.id })} />
          <PrinterPick printer={onPrinter} choose={(next) => pick({ ...picked, printer: next.id })} />
          <CalibrationNow stock={onStock} printer={onPrinter} />
        </div>
        <MakePage stock={onStock} printer={onPrinter} />
        <MeasuredForm
          key={`${onStock.id} ${onPrinter.id}`}
          stock={onStock}
          printer={onPrinter}
          back={stock.ok && printer.ok ? back : null}
        />
      </div>
    </section>
  );
}
