import { useEffect, useRef, useState } from 'preact/hooks';
import type { Manifest } from '../../../../print/manifest.ts';
import type { PrinterProfile } from '../../../../print/qr/profiles.ts';
import type { Stock } from '../../../../print/stocks/stock.ts';
import type { Problem } from '../../../core/index.ts';
import { useApp } from '../../model/app.ts';
import { releaseLater } from '../../model/files.ts';
import type { PrintAnswer } from '../../workers/printMessages.ts';
import { type Printing, startPrinting } from '../printing.ts';

/** The calibration page on its way to a PDF. */
export type PageState =
  | { readonly at: 'idle' }
  | { readonly at: 'working' }
  | { readonly at: 'ready'; readonly url: string; readonly pdf: Blob; readonly manifest: Manifest }
  | { readonly at: 'failed'; readonly problem: Problem };

/** Makes the calibration page of a stock and a printer in the worker; another stock or printer puts it away. */
export function usePage(stock: Stock, printer: PrinterProfile): { readonly page: PageState; make(): void } {
  const { clock } = useApp();
  const [page, setPage] = useState<PageState>({ at: 'idle' });
  const printing = useRef<Printing | null>(null);
  const key = JSON.stringify([stock, printer]);
  useEffect(
    () => () => {
      printing.current?.stop();
      printing.current = null;
      setPage({ at: 'idle' });
    },
    [key],
  );
  useEffect(() => {
    if (page.at !== 'ready') return undefined;
    const { url } = page;
    return () => releaseLater(url);
  }, [page]);
  function make(): void {
    printing.current?.stop();
    const started = startPrinting({ calibrate: { stock, printer, printedOn: clock.today.value } });
    printing.current = started;
    setPage({ at: 'working' });
    void started.answer.then((answer) => {
      if (printing.current !== started) return;
      if (answer.kind === 'failed') setPage({ at: 'failed', problem: answer.problem });
      else setPage(readyPage(answer));
    });
  }
  return { page, make };
}

function readyPage({ pdf: bytes, manifest }: Extract<PrintAnswer, { kind: 'printed' }>): PageState {
  const pdf = new Blob([bytes], { type: 'application/pdf' });
  return { at: 'ready', url: URL.createObjectURL(pdf), pdf, manifest };
}
