import {
  type Calibration,
  calibrationFrom,
  checkCalibration,
  type Measured,
  placing,
  type Rulers,
  rulersOf,
} from '../../../../print/calibration/calibration.ts';
import type { PrinterProfile } from '../../../../print/qr/profiles.ts';
import { parsePaperMm } from '../../../../print/stocks/lengths.ts';
import type { Stock } from '../../../../print/stocks/stock.ts';
import { type Payload, type Problem, problem } from '../../../core/index.ts';

export type MeasuredField = keyof Measured;

/** What was measured on a calibration page, as typed. */
export type MeasuredText = Readonly<Record<MeasuredField, string>>;

export const NOTHING_MEASURED: MeasuredText = { rightMm: '', downMm: '', acrossMm: '', alongMm: '' };

/** By what the figures of a stock and a printer are kept. */
export function measuredOf(stock: string, printer: string): string {
  return `${stock} ${printer}`;
}

const WORDS: Readonly<Record<MeasuredField, string>> = {
  rightMm: 'figure for how far right the cross is',
  downMm: 'figure for how far down the cross is',
  acrossMm: 'length of the ruler across',
  alongMm: 'length of the ruler down',
};

/** The figures that a stock's page asks for: a small one has no ruler, or only one. */
export function measuredFields(stock: Stock): readonly MeasuredField[] {
  const { acrossMm, alongMm } = rulersOf(stock);
  return [
    ...(['rightMm', 'downMm'] as const),
    ...(acrossMm === null ? [] : ['acrossMm' as const]),
    ...(alongMm === null ? [] : ['alongMm' as const]),
  ];
}

/** A calibration, or every problem with the figure at which it stands; what leaves the page stands at none. */
export function calibrationIn(
  text: MeasuredText,
  stock: Stock,
  printer: PrinterProfile,
): { readonly calibration: Calibration | null; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const read = (field: MeasuredField): number => {
    const typed = text[field].trim();
    const length = parsePaperMm(typed, 'mm');
    if (length.ok) return length.value;
    problems.push(
      typed === '' ? problem('text-missing', { what: WORDS[field] }, field) : { ...length.problem, path: field },
    );
    return 0;
  };
  const asked = measuredFields(stock);
  const ruler = (field: 'acrossMm' | 'alongMm'): number | null => (asked.includes(field) ? read(field) : null);
  const measured = {
    rightMm: read('rightMm'),
    downMm: read('downMm'),
    acrossMm: ruler('acrossMm'),
    alongMm: ruler('alongMm'),
  };
  if (problems.length > 0) return { calibration: null, problems };
  return sound(measured, rulersOf(stock), stock, printer);
}

function sound(measured: Measured, rulers: Rulers, stock: Stock, printer: PrinterProfile) {
  const made = calibrationFrom(measured, rulers);
  if (!made.ok) return { calibration: null, problems: [made.problem] };
  const fits = checkCalibration(stock, placing(stock, printer, made.value));
  return fits.ok ? { calibration: made.value, problems: [] } : { calibration: null, problems: [fits.problem] };
}

/** What the log keeps. */
export function calibratedPayload(
  { offsetXMm, offsetYMm, scaleX, scaleY }: Calibration,
  stock: Stock,
  printer: PrinterProfile,
): Payload<'printer-calibrated'> {
  return { printer: printer.id, stock: stock.id, offsetXMm, offsetYMm, scaleX, scaleY };
}

/** What a calibration means: how the page came out, and what printing does about it from now on. */
export function sayCalibration({ offsetXMm, offsetYMm, scaleX, scaleY }: Calibration): readonly string[] {
  const off = [moved(offsetXMm, ['right', 'left']), moved(offsetYMm, ['low', 'high'])].filter((one) => one !== null);
  const set = [moved(-offsetXMm, ['right', 'left']), moved(-offsetYMm, ['down', 'up'])].filter((one) => one !== null);
  const came = off.map(([mm, way]) => `${mm} mm too ${way === 'right' || way === 'left' ? `far ${way}` : way}`);
  const goes = set.map(([mm, way]) => `${mm} mm ${way}`);
  const sizes = [sized(scaleX, 'across', 'side by side'), sized(scaleY, 'down', 'above each other')];
  return [
    off.length === 0
      ? 'The page came out in its place: nothing moves.'
      : `It came out ${came.join(' and ')}: everything moves ${goes.join(' and ')}.`,
    ...(sizes.some((one) => one !== null) ? sizes.filter((one) => one !== null) : ['Its lengths are right.']),
  ];
}

type Way = readonly [more: string, less: string];

function moved(mm: number, [more, less]: Way): readonly [mm: number, way: string] | null {
  const figure = Math.round(Math.abs(mm) * 100) / 100;
  return figure === 0 ? null : [figure, mm > 0 ? more : less];
}

/** Rule PRINT-CALIBRATE in words: labels are moved, and nothing on them is stretched. */
function sized(scale: number, way: string, labels: string): string | null {
  const percent = Math.round(Math.abs(scale - 1) * 1e4) / 100;
  if (percent === 0) return null;
  const [size, set] = scale > 1 ? ['larger', 'closer together'] : ['smaller', 'further apart'];
  return `It came out ${percent} % ${size} ${way}: labels ${labels} are set that much ${set}; what is on them keeps its size.`;
}
