import { moduleMm, type PrinterProfile } from '../qr/profiles.ts';
import { QUIET_MODULES } from '../qr/symbol.ts';
import { contentInset, type Stock } from '../stocks/stock.ts';

/** The room on one card, in mm from the label's top left corner. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly code: CodeRoom;
  /** False when the code with its quiet zone is larger than the label. */
  readonly holdsCode: boolean;
}

/** Where the code stands: at the upper right, its dark square without the quiet zone. */
export interface CodeRoom {
  readonly xMm: number;
  readonly yMm: number;
  readonly sizeMm: number;
  readonly moduleMm: number;
  readonly insetModules: number;
  /** Text keeps left of this beside the code, and below `belowMm` under it: the quiet zone is theirs to leave alone. */
  readonly besideMm: number;
  readonly belowMm: number;
}

/** A code of this width with its quiet zone reads at a quarter of a metre (ten times the symbol, web guides only). */
const BLOCK_MM = 25.2;
/** The quiet zone stays this far inside the cut edge, which may creep. */
const EDGE_MM = 0.5;
/** Whole dots move the symbol by up to half a dot; text keeps clear of that. */
const SNAP_MM = 0.1;

/** The frame of a stock's labels for symbols of `symbolSize` modules. */
export function cardFrame(stock: Stock, symbolSize: number, printer: PrinterProfile): Frame {
  const inset = contentInset(stock);
  const module = moduleMm(symbolSize, BLOCK_MM, printer);
  const quiet = module * QUIET_MODULES;
  const sizeMm = module * symbolSize;
  const xMm = stock.labelWidthMm - Math.max(inset.right, quiet + EDGE_MM) - sizeMm;
  const yMm = Math.max(inset.top, quiet + EDGE_MM);
  return {
    left: inset.left,
    top: inset.top,
    right: stock.labelWidthMm - inset.right,
    bottom: stock.labelHeightMm - inset.bottom,
    holdsCode: yMm + sizeMm + quiet <= stock.labelHeightMm && xMm - quiet >= inset.left,
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
