import type { PrinterProfile } from '../../../../print/qr/profiles.ts';
import type { Stock } from '../../../../print/stocks/stock.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { PdfPreview } from '../PdfPreview.tsx';
import { ReadBackLine } from '../ReadBackLine.tsx';
import { documentFault } from '../readBackWords.ts';
import { usePage } from './usePage.ts';

interface MakePageProps {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
}

/** The page to print; it is drawn true, whatever was measured before. */
export function MakePage({ stock, printer }: MakePageProps) {
  const { page, make } = usePage(stock, printer);
  return (
    <section class="run" aria-labelledby="page-title">
      <h2 id="page-title">The page</h2>
      {page.at === 'ready' ? null : (
        <button type="button" class="primary" disabled={page.at === 'working'} onClick={make}>
          {page.at === 'working' ? 'Making the page …' : 'Make the calibration page'}
        </button>
      )}
      <div aria-live="polite">
        {page.at === 'failed' ? <ProblemLine problem={page.problem} /> : null}
        {page.at === 'ready' ? (
          <>
            <p class="at-100">
              Print it at 100 %, never “fit to page”, on the paper itself. What to measure stands on it; its code opens
              this entry.
            </p>
            <ReadBackLine
              pdf={page.pdf}
              manifest={page.manifest}
              printer={printer}
              what="the page"
              say={documentFault}
            />
          </>
        ) : null}
      </div>
      {page.at === 'ready' ? <PdfPreview url={page.url} name="calibration" /> : null}
    </section>
  );
}
