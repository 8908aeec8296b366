import { useId, useRef, useState } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { Payload, Problem } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';
import type { Back } from './back.ts';
import { FormLine, goToFault } from './FormLine.tsx';
import { ownId } from './ownId.ts';
import {
  type DotsPer,
  type PrinterField,
  type PrinterText,
  printerFrom,
  printerPayload,
  READY_DOTS,
  sayPrinter,
  textOfPrinter,
} from './printerDraft.ts';
import { TakenUpLine } from './TakenUpLine.tsx';
import { useFormDraft } from './useFormDraft.ts';
import { useLines } from './useLines.ts';
import { layNew, useOwn } from './useOwn.ts';

interface PrinterFormProps {
  /** The printer that is set anew; null for a new one. */
  readonly changes: Payload<'own-printer-set'> | null;
  readonly back: Back;
}

const NEW: PrinterText = { name: '', dots: '203', per: 'inch', insetDots: '0.25' };

/** How a printer lays its dots; saving goes back to Print with it chosen. */
export function PrinterForm({ changes, back }: PrinterFormProps) {
  const { site } = useApp();
  const { route } = useLocation();
  const start = changes === null ? NEW : textOfPrinter(changes);
  const { text, takenUp, put, anew, forget } = useFormDraft('printer', changes?.printer ?? '', start, isPer);
  const [failed, setFailed] = useState<Problem | null>(null);
  const lines = useLines<PrinterField>();
  const form = useRef<HTMLFormElement>(null);
  const write = useOwn();
  const { printer, problems } = printerFrom(text, 'new');
  const line = (name: PrinterField) => ({
    name,
    value: text[name],
    fault: lines.fault(problems, name),
    put: (value: string) => put({ ...text, [name]: value }),
    onLeave: () => lines.leave(name),
  });
  async function save(): Promise<void> {
    lines.tried();
    if (printer === null) return goToFault(form.current);
    const taken = site.facility.value.site.paper.printers.map((one) => one.printer);
    const id = changes?.printer ?? ownId(printer.name, String(Math.round(printer.dotsPerMm * 25.4)), taken);
    const why = await write(
      { kind: 'own-printer-set', payload: printerPayload({ ...printer, id }) },
      printer.name,
      'printer saved',
    );
    if (why !== null) return setFailed(why);
    forget();
    layNew(back.what, { printer: id });
    route(back.address);
  }
  async function remove(): Promise<void> {
    if (changes === null) return;
    const payload = { ...changes, removed: true };
    const why = await write({ kind: 'own-printer-set', payload }, changes.name, 'printer taken off the list');
    if (why !== null) return setFailed(why);
    forget();
    route(back.address);
  }
  return (
    <form
      ref={form}
      class="own-lines own-printer"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <TakenUpLine
        takenUp={takenUp}
        anew={() => {
          anew();
          lines.anew();
          setFailed(null);
        }}
      />
      <FormLine {...line('name')} label="Name" most={80} isFigure={false} hint="As you will look for it in the list." />
      <Dots text={text} put={put} />
      <FormLine
        {...line('dots')}
        label="Dots"
        unit={`per ${text.per}`}
        hint="It stands in the printer’s manual, often as its resolution in dpi. 203 per inch and 8 per mm (203.2) are two printers: with the wrong one codes come out blurred."
      />
      <FormLine
        {...line('insetDots')}
        label="Dots taken off each edge of a code’s dark squares"
        unit="dots"
        hint="Thermal printers make dark squares a little too large: 0.25 sets that right (measured). 0 for laser and inkjet."
      />
      <p class="own-means" role="status">
        {printer === null ? null : sayPrinter(printer)}
      </p>
      {failed === null ? null : <ProblemLine problem={failed} />}
      <button type="submit" class="primary">
        {changes === null ? 'Save this printer' : 'Save the changes'}
      </button>
      {changes === null ? null : (
        <button type="button" class="secondary" onClick={() => void remove()}>
          Take it off the list
        </button>
      )}
    </form>
  );
}

function isPer({ per }: PrinterText): boolean {
  return per === 'inch' || per === 'mm';
}

interface DotsProps {
  readonly text: PrinterText;
  readonly put: (text: PrinterText) => void;
}

/** Ready choices; the line below takes any other figure. */
function Dots({ text, put }: DotsProps) {
  const id = useId();
  const ready = text.per === 'inch' && READY_DOTS.some(([dpi]) => dpi === text.dots) ? text.dots : `other-${text.per}`;
  const pick = (value: string): void => {
    const per: DotsPer = value === 'other-mm' ? 'mm' : 'inch';
    put(value.startsWith('other-') ? { ...text, dots: '', per } : { ...text, dots: value, per });
  };
  return (
    <div class="field">
      <label for={id}>Resolution</label>
      <select id={id} value={ready} onChange={(event) => pick(event.currentTarget.value)}>
        {READY_DOTS.map(([dpi, words]) => (
          <option key={dpi} value={dpi}>
            {words}
          </option>
        ))}
        <option value="other-inch">Another, in dots per inch</option>
        <option value="other-mm">Another, in dots per mm</option>
      </select>
    </div>
  );
}
