import type { LabelKind } from '../../src/core/index.ts';
import { moduleMm, moduleStep, type PrinterProfile } from '../qr/profiles.ts';
import { QUIET_MODULES } from '../qr/symbol.ts';
import { contentInset, type Inset, type Stock } from '../stocks/stock.ts';
import type { Frame } from './frame.ts';

/**
 * Where the code stands. `strip`: at the right, the text left of it. `corner`: at the upper right, the text beside and
 * below it. `tower`: in the middle of the top, the text under it, as on a label that is high rather than wide.
 */
export type LabelWay = 'strip' | 'corner' | 'tower';

/** The room on one label for one size of its code. */
export interface LabelFrame extends Frame {
  readonly way: LabelWay;
}

/** Modules of less are hard for phones, and for whoever checks a page at 150 dots per inch (measured: 0.37 mm reads). */
const LEAST_MODULE_MM = 0.335;
/** The quiet zone stays this far inside the cut edge; it is blank itself, so a creeping sheet takes nothing that counts. */
const EDGE_MM = 0.24;
/** Whole dots move the symbol by up to half a dot; text keeps clear of that. */
const SNAP_MM = 0.1;
/** Blocks that are tried below the ideal one: as on a card, and as on a small label. */
const SMALLER_MM = [25.2, 18] as const;
/** From this ratio of height to width on a label is high. */
const HIGH = 0.72;

/** The ways and code sizes that a stock's labels offer, the best first; empty where the code is too large for them. */
export function labelFrames(
  kind: LabelKind,
  stock: Stock,
  symbolSize: number,
  printer: PrinterProfile,
): readonly LabelFrame[] {
  const inset = contentInset(stock, paddingMm(stock));
  const frames: LabelFrame[] = [];
  for (const way of waysOf(kind, stock)) {
    const ideal = evenModule(moduleMm(symbolSize, idealMm(way, stock), printer), printer);
    const least = leastModule(printer);
    const smaller = SMALLER_MM.map((mm) => evenModule(moduleMm(symbolSize, mm, printer), printer));
    const modules = [ideal, ...smaller, least];
    const tried = [...new Set(modules)].filter((module) => module <= ideal && module >= least);
    for (const module of tried) {
      const frame = frameOf(way, { stock, inset, symbolSize, module, printer });
      if (frame.holdsCode) frames.push(frame);
    }
  }
  return frames;
}

/** The free rim: less on a small label, where three millimetres would be half of it. */
function paddingMm({ labelWidthMm, labelHeightMm }: Stock): number {
  const side = Math.min(labelWidthMm, labelHeightMm);
  if (side >= 45) return 3;
  return side >= 30 ? 2.2 : 1.5;
}

/** What says much and is read in hand has its code in a corner. */
const IN_HAND: readonly LabelKind[] = ['clutch', 'pairing', 'treatment', 'tube', 'lot'];

/** A clutch says much and is read with the tag in hand; what else there is has a word for the distance. */
function waysOf(kind: LabelKind, { labelWidthMm, labelHeightMm }: Stock): readonly LabelWay[] {
  if (IN_HAND.includes(kind)) return ['corner'];
  return labelHeightMm / labelWidthMm >= HIGH ? ['tower', 'strip'] : ['strip'];
}

/** The side of the code with its quiet zone where nothing stands against it. */
function idealMm(way: LabelWay, { labelWidthMm, labelHeightMm }: Stock): number {
  const across = labelWidthMm - 2 * EDGE_MM;
  const down = labelHeightMm - 2 * EDGE_MM;
  switch (way) {
    case 'strip':
      return Math.min(down, 0.46 * labelWidthMm, 38);
    case 'corner':
      return Math.min(down, Math.max(17, 0.31 * labelWidthMm));
    case 'tower':
      return Math.min(across, 0.55 * labelHeightMm, 60);
    default:
      return way satisfies never;
  }
}

function evenModule(module: number, printer: PrinterProfile): number {
  const step = moduleStep(printer);
  return (Math.floor(Math.round(module * printer.dotsPerMm) / step) * step) / printer.dotsPerMm;
}

function leastModule(printer: PrinterProfile): number {
  // A block too small for anything gives the fewest dots that the printer may use.
  const fewest = moduleMm(1, 0, printer);
  const step = moduleStep(printer);
  return Math.max(fewest, (Math.ceil((LEAST_MODULE_MM * printer.dotsPerMm) / step) * step) / printer.dotsPerMm);
}

interface Parts {
  readonly stock: Stock;
  readonly inset: Inset;
  readonly symbolSize: number;
  readonly module: number;
  readonly printer: PrinterProfile;
}

function frameOf(way: LabelWay, { stock, inset, symbolSize, module, printer }: Parts): LabelFrame {
  const { labelWidthMm: width, labelHeightMm: height } = stock;
  const quiet = module * QUIET_MODULES;
  const sizeMm = module * symbolSize;
  const rim = quiet + EDGE_MM;
  const xMm = way === 'tower' ? (width - sizeMm) / 2 : width - Math.max(inset.right, rim) - sizeMm;
  const yMm = way === 'strip' ? (height - sizeMm) / 2 : Math.max(inset.top, rim);
  const slack = 1e-6;
  return {
    way,
    left: inset.left,
    top: inset.top,
    right: width - inset.right,
    bottom: height - inset.bottom,
    holdsCode: yMm + sizeMm + rim <= height + slack && yMm >= rim - slack && xMm >= rim - slack,
    code: {
      xMm,
      yMm,
      sizeMm,
      moduleMm: module,
      insetModules: printer.insetDots / (module * printer.dotsPerMm),
      besideMm: xMm - quiet - SNAP_MM,
      belowMm: yMm + sizeMm + quiet + SNAP_MM,
    },
  };
}
