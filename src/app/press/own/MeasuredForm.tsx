import { useRef, useState } from 'preact/hooks';
import { crossA, rulersOf } from '../../../../print/calibration/calibration.ts';
import type { PrinterProfile } from '../../../../print/qr/profiles.ts';
import type { Stock } from '../../../../print/stocks/stock.ts';
import type { Problem } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import type { Back } from './back.ts';
import {
  calibratedPayload,
  calibrationIn,
  type MeasuredField,
  measuredFields,
  measuredOf,
  NOTHING_MEASURED,
  sayCalibration,
} from './calibrationDraft.ts';
import { FormLine, goToFault } from './FormLine.tsx';
import { TakenUpLine } from './TakenUpLine.tsx';
import { useFormDraft } from './useFormDraft.ts';
import { useLines } from './useLines.ts';
import { useOwn } from './useOwn.ts';

interface MeasuredFormProps {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
  /** Null while the address asks for a paper or printer that is not here: then nothing can be saved of it. */
  readonly back: Back | null;
}

/** The figures off a calibration page, said back in words before they are saved. */
export function MeasuredForm({ stock, printer, back }: MeasuredFormProps) {
  const draft = useFormDraft('measured', measuredOf(stock.id, printer.id), NOTHING_MEASURED);
  const { text, takenUp, put, anew, forget } = draft;
  const [failed, setFailed] = useState<Problem | null>(null);
  const [isSaved, setSaved] = useState(false);
  const lines = useLines<MeasuredField>();
  const form = useRef<HTMLFormElement>(null);
  const write = useOwn();
  const { calibration, problems } = calibrationIn(text, stock, printer);
  async function save(): Promise<void> {
    lines.tried();
    if (calibration === null) return goToFault(form.current);
    const payload = calibratedPayload(calibration, stock, printer);
    const why = await write({ kind: 'printer-calibrated', payload }, `${printer.name} on ${stock.name}`, 'calibrated');
    setFailed(why);
    setSaved(why === null);
    if (why === null) forget();
  }
  const whole = problems.find(({ path }) => path === undefined) ?? null;
  return (
    <form
      ref={form}
      class="own-lines"
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
      <fieldset>
        <legend>What you measured</legend>
        <p class="soft">In millimetres, on the printed page. Left and up count as less than nothing: -0.8.</p>
        {measuredFields(stock).map((field) => (
          <FormLine
            key={field}
            name={field}
            label={label(field)}
            hint={hint(field, stock)}
            unit="mm"
            value={text[field]}
            fault={lines.fault(problems, field)}
            put={(value) => {
              put({ ...text, [field]: value });
              setSaved(false);
            }}
            onLeave={() => text[field].trim() !== '' && lines.leave(field)}
          />
        ))}
      </fieldset>
      <div class="own-means" role="status">
        {calibration === null || isSaved ? null : sayCalibration(calibration).map((line) => <p key={line}>{line}</p>)}
      </div>
      {whole === null ? null : <ProblemLine problem={whole} />}
      {failed === null ? null : <ProblemLine problem={failed} />}
      <button type="submit" class="primary" disabled={back === null}>
        Save what you measured
      </button>
      {isSaved && back !== null ? (
        <p class="done-line" role="status">
          Saved: it is applied to all that this printer prints on this paper. <a href={back.address}>Back to Print</a>
        </p>
      ) : null}
    </form>
  );
}

function label(field: MeasuredField): string {
  switch (field) {
    case 'rightMm':
      return 'Cross A: how much further right';
    case 'downMm':
      return 'Cross A: how much further down';
    case 'acrossMm':
      return 'Ruler across: its length';
    case 'alongMm':
      return 'Ruler down: its length';
    default:
      return field satisfies never;
  }
}

function hint(field: MeasuredField, stock: Stock): string {
  const [x, y] = crossA(stock).map((mm) => Math.round(mm * 100) / 100);
  const { acrossMm, alongMm } = rulersOf(stock);
  switch (field) {
    case 'rightMm':
      return `Its middle should be ${x} mm from the left edge of the paper.`;
    case 'downMm':
      return `Its middle should be ${y} mm from the top edge.`;
    case 'acrossMm':
      return `Drawn ${acrossMm} mm long from end to end.`;
    case 'alongMm':
      return `Drawn ${alongMm} mm long from end to end.`;
    default:
      return field satisfies never;
  }
}
