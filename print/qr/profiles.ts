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
