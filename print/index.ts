export type { Drawing, PageSize } from './drawing/drawing.ts';
export { hatchStrokes } from './drawing/operators.ts';
export { type PdfChoice, type PdfDrawing, type PdfPage, pdfDrawing } from './drawing/pdf.ts';
export { type RecordedPage, type Recording, recording } from './drawing/recording.ts';
export { type FontBytes, openTypeface, type Typeface } from './drawing/typeface.ts';
export {
  type AtDay,
  type FeedBar,
  firstDayOf,
  type GrowthPicture,
  growthPicture,
  type PeakLine,
  type PlotPoint,
  type PlotRoom,
} from './growth/geometry.ts';
export { type CardSetting, type Face, layCard } from './layout/card.ts';
export { type CodeRoom, cardFrame, type Frame } from './layout/frame.ts';
export { type LabelSetting, type LaidLabel, layLabel } from './layout/label.ts';
export { type LabelFrame, type LabelWay, labelFrames } from './layout/labelFrame.ts';
export type {
  CodeMark,
  Cut,
  DotMark,
  HatchMark,
  Mark,
  NotchMark,
  PathMark,
  RuleMark,
  TextMark,
} from './layout/marks.ts';
export { type Measure, PT_MM } from './layout/measure.ts';
export { FORMS, type Form } from './layout/words.ts';
export type { LeftOut, Manifest, ManifestPiece, PieceKind } from './manifest.ts';
export { PACK_PAPERS, type PackPaper, type PackPrint, type PrintedPack, printPack } from './pack/printPack.ts';
export type { Sha256 } from './platform.ts';
export { type CardJob, layCards, printCards } from './printCards.ts';
export {
  type CardToPrint,
  drawPieces,
  type LaidFace,
  type LaidJob,
  layPieces,
  type Paper,
  type PdfMaking,
  type PieceJob,
  type PieceToPrint,
  printPieces,
} from './printPieces.ts';
export { qrBlocks } from './qr/blocks.ts';
export { qrPayload } from './qr/payload.ts';
export { moduleMm, OFFICE_600, PRINTERS, type PrinterProfile, snapMm } from './qr/profiles.ts';
export { darkRectangles, type ModuleRect } from './qr/rectangles.ts';
export { type QrSymbol, QUIET_MODULES, qrSymbol } from './qr/symbol.ts';
export { ownSha256 } from './sha256.ts';
export { STOCKS, stockById } from './stocks/list.ts';
export { type Order, type Slot, type SlotChoice, slots } from './stocks/slots.ts';
export {
  type BoxMm,
  checkStock,
  contentInset,
  type Inset,
  labelBox,
  labelsPerPage,
  type Stock,
} from './stocks/stock.ts';
