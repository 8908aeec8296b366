import type { PrinterProfile } from '../../../../print/qr/profiles.ts';
import type { Stock } from '../../../../print/stocks/stock.ts';
import { SpokenDay } from '../../look/SpokenDay.tsx';
import { useApp } from '../../model/app.ts';
import { sayCalibration } from './calibrationDraft.ts';

interface CalibrationNowProps {
  readonly stock: Stock;
  readonly printer: PrinterProfile;
}

/** What is known of the two already, and since when. */
export function CalibrationNow({ stock, printer }: CalibrationNowProps) {
  const { site, clock } = useApp();
  const known = site.facility.value.site.paper.calibrations.find(
    (one) => one.stock === stock.id && one.printer === printer.id,
  );
  if (known === undefined)
    return <p class="soft">These two are not calibrated yet: what is printed stands where it is drawn.</p>;
  return (
    <div class="calibrated">
      <p>
        <strong>
          Calibrated <SpokenDay day={known.day} today={clock.today.value} />.
        </strong>
      </p>
      {sayCalibration(known).map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
