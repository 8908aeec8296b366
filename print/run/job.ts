import type { CardContent, Day, LabelContent } from '../../src/core/index.ts';
import type { Calibration } from '../calibration/calibration.ts';
import type { FontBytes } from '../drawing/typeface.ts';
import type { Face } from '../layout/card.ts';
import type { CodeRoom } from '../layout/frame.ts';
import type { LeftOut, PieceKind, Warning } from '../manifest.ts';
import type { Sha256 } from '../platform.ts';
import type { PrinterProfile } from '../qr/profiles.ts';
import type { QrSymbol } from '../qr/symbol.ts';
import type { Flip, Order, Slot } from '../stocks/slots.ts';
import type { Stock } from '../stocks/stock.ts';

/** A card to print; `place` stands on it when the content has no line for the place. */
export interface CardToPrint {
  readonly content: CardContent;
  readonly place?: string | undefined;
}

/** Anything that goes on a label of a stock. */
export type PieceToPrint = { readonly card: CardToPrint } | { readonly label: LabelContent };

/** On what, and how. */
export interface Paper {
  readonly stock: Stock;
  readonly printer?: PrinterProfile | undefined;
  /** What a calibration page showed of this printer with this stock. */
  readonly calibration?: Calibration | undefined;
  /** The first free label of a used sheet, from 1. */
  readonly first?: number | undefined;
  readonly order?: Order | undefined;
  /** Second faces go on the back of the first: the edge over which the printer turns its sheets. */
  readonly flip?: Flip | undefined;
  /** Marks to cut along, for sheets that are not cut already. */
  readonly cutMarks?: boolean | undefined;
  /** The site's own host, for codes that a phone's camera can follow. */
  readonly host?: string | undefined;
  readonly printedOn: Day;
}

/** What to print, on what, and how. Pieces come in the order in which they are put up. */
export interface PieceJob extends Paper {
  readonly pieces: readonly PieceToPrint[];
  /** Only these pages of the run, from 1: the rest of a run that was broken off. They are drawn as in the whole run. */
  readonly pages?: readonly [from: number, to: number] | undefined;
}

/** What makes a file of a job. */
export interface PdfMaking {
  readonly fonts: FontBytes;
  readonly compress?: boolean | undefined;
  /** Taken instead of the platform's. */
  readonly sha256?: Sha256 | undefined;
}

/** A face ready for a label. */
export interface LaidFace {
  readonly kind: PieceKind;
  readonly id: string;
  readonly face: Face;
  readonly code: CodeRoom;
  readonly symbol: QrSymbol;
  /** True where a bar code belongs on it and had no room. */
  readonly lacksBar?: boolean;
}

/** A face on its label; `at` counts the faces of a run in the order of its pieces. */
export interface PlacedFace extends LaidFace {
  readonly at: number;
  readonly slot: Slot;
}

/** One side of a sheet, with what stands on it. */
export interface SheetSide {
  /** Of the run, from 1. */
  readonly page: number;
  /** The sheet, from 1; each has two pages where second faces go on its back. */
  readonly sheet: number;
  readonly isBack: boolean;
  readonly faces: readonly PlacedFace[];
}

/** Faces on their slots, and what was left out or is printed otherwise than it was written. */
export interface LaidJob {
  readonly faces: readonly PlacedFace[];
  readonly pageCount: number;
  readonly left: readonly LeftOut[];
  readonly warnings: readonly Warning[];
}
