import { useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type Stock, takesCards } from '../../../../print/stocks/stock.ts';
import type { Problem } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import type { Back } from './back.ts';
import { goToFault } from './FormLine.tsx';
import { ownId } from './ownId.ts';
import { StockDrawing } from './StockDrawing.tsx';
import { StockLines } from './StockLines.tsx';
import { type StockStart, textOfStart } from './starts.ts';
import { readLines, type StockField, type StockText, stockFrom, stockPayload } from './stockDraft.ts';
import { stockPicture } from './stockPicture.ts';
import { TakenUpLine } from './TakenUpLine.tsx';
import { useFormDraft } from './useFormDraft.ts';
import { useLines } from './useLines.ts';
import { layNew, useOwn } from './useOwn.ts';

interface StockFormProps {
  readonly start: StockStart;
  readonly back: Back;
}

/** The lines of a stock beside its drawing; saving goes back to Print with the new paper laid in. */
export function StockForm({ start, back }: StockFormProps) {
  const { site } = useApp();
  const { route } = useLocation();
  const own = site.facility.value.site.paper.stocks;
  const changes = own.find(({ stock }) => stock === start);
  const { text, takenUp, put, anew, forget } = useFormDraft('stock', start, textOfStart(start, own), isUnit);
  const [failed, setFailed] = useState<Problem | null>(null);
  const lines = useLines<StockField>();
  const form = useRef<HTMLFormElement>(null);
  const write = useOwn();
  const { stock: read, problems } = stockFrom(text, 'new');
  async function save(): Promise<void> {
    lines.tried();
    const { stock } = stockFrom(text, 'new');
    if (stock === null) return goToFault(form.current);
    const id =
      changes?.stock ??
      idFor(
        stock,
        own.map((one) => one.stock),
      );
    const payload = stockPayload({ ...stock, id }, text.unit);
    const why = await write({ kind: 'own-stock-set', payload }, stock.name, 'paper saved');
    if (why !== null) return setFailed(why);
    forget();
    layNew(back.what, { stock: { ...stock, id } });
    route(back.address);
  }
  async function remove(): Promise<void> {
    if (changes === undefined) return;
    const payload = { ...changes, removed: true };
    const why = await write({ kind: 'own-stock-set', payload }, changes.name, 'paper taken off the list');
    if (why !== null) return setFailed(why);
    forget();
    route(back.address);
  }
  return (
    <form
      ref={form}
      class="own-body"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <StockDrawing picture={stockPicture(readLines(text))} unit={text.unit} />
      <div class="own-lines">
        <TakenUpLine
          takenUp={takenUp}
          anew={() => {
            anew();
            lines.anew();
            setFailed(null);
          }}
        />
        <StockLines text={text} put={put} fault={(field) => lines.fault(problems, field)} leave={lines.leave} />
        <p class="own-means" role="status">
          {read === null || takesCards(read)
            ? null
            : 'Too small for tub cards, so it is not in their list; labels and tags print on it as far as they fit.'}
        </p>
        {failed === null ? null : <ProblemLine problem={failed} />}
        <button type="submit" class="primary">
          {changes === undefined ? 'Save this paper' : 'Save the changes'}
        </button>
        {changes === undefined ? null : (
          <button type="button" class="secondary" onClick={() => void remove()}>
            Take it off the list
          </button>
        )}
      </div>
    </form>
  );
}

function isUnit({ unit }: StockText): boolean {
  return unit === 'mm' || unit === 'inch';
}

function idFor({ name, labelWidthMm, labelHeightMm }: Stock, taken: readonly string[]): string {
  return ownId(name, `${Math.round(labelWidthMm)}x${Math.round(labelHeightMm)}`, taken);
}
