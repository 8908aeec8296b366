import { QUIET_MODULES } from './symbol.ts';

/**
 * How a printer lays dots. Dots per mm and not per inch: 203 per inch is 7.992 per mm, and 8 per mm is another printer.
 * `insetDots` is taken off each edge of a dark rectangle where dots grow by about one (measured in four renderers).
 */
export interface PrinterProfile {
  readonly id: string;
  readonly name: string;
  readonly dotsPerMm: number;
  readonly insetDots: number;
}

/** The printers that are known; the first is the default. */
export const PRINTERS = [
  { id: 'office-600', name: 'Laser or inkjet, 600 dots per inch', dotsPerMm: 600 / 25.4, insetDots: 0 },
  { id: 'thermal-203', name: 'Thermal, 203 dots per inch', dotsPerMm: 203 / 25.4, insetDots: 0.25 },
  { id: 'thermal-8mm', name: 'Thermal, 8 dots per mm', dotsPerMm: 8, insetDots: 0.25 },
  { id: 'thermal-300', name: 'Thermal, 300 dots per inch', dotsPerMm: 300 / 25.4, insetDots: 0.25 },
  { id: 'thermal-12mm', name: 'Thermal, 12 dots per mm', dotsPerMm: 12, insetDots: 0.25 },
  { id: 'thermal-600', name: 'Thermal, 600 dots per inch', dotsPerMm: 600 / 25.4, insetDots: 0.25 },
] as const satisfies readonly PrinterProfile[];

/** Laser or inkjet sheets at 600 dots per inch. */
export const OFFICE_600: PrinterProfile = PRINTERS[0];

/** The QR maker's own advice for print: at least four dots a module. */
const FEWEST_DOTS = 4;

/** The largest module in mm, in whole dots, whose symbol with its quiet zone stays within `blockMm`; never below four dots. */
export function moduleMm(symbolSize: number, blockMm: number, printer: PrinterProfile): number {
  const dots = Math.floor((blockMm / (symbolSize + 2 * QUIET_MODULES)) * printer.dotsPerMm + 1e-6);
  return Math.max(FEWEST_DOTS, dots) / printer.dotsPerMm;
}

/** The nearest place on the printer's dot grid, in mm from the page's corner. */
export function snapMm(mm: number, printer: PrinterProfile): number {
  return Math.round(mm * printer.dotsPerMm) / printer.dotsPerMm;
}

/** From here on a dot is too small to matter: 508 dots per inch. */
const FINE_DOTS_PER_MM = 20;

/** On a fine printer a module is an even number of dots: at half or a quarter of them, as on screens and in checks, it stays sharp. */
export function moduleStep({ dotsPerMm }: PrinterProfile): 1 | 2 {
  return dotsPerMm >= FINE_DOTS_PER_MM ? 2 : 1;
}

/**
 * The nearest place for a label or a code in it, in mm: a dot, and on a fine printer every fourth, so that the corner of
 * a code is a whole pixel at a quarter of the dots (measured: a reader then finds all four corners to 0.12 mm).
 */
export function placeMm(mm: number, printer: PrinterProfile): number {
  const step = moduleStep(printer) ** 2 / printer.dotsPerMm;
  return Math.round(mm / step) * step;
}
