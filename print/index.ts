export {
  type Calibration,
  calibrationFrom,
  checkCalibration,
  crossA,
  type Measured,
  type Placing,
  placing,
  type Rulers,
  rulersOf,
  TRUE,
} from './calibration/calibration.ts';
export { type CalibrationPage, type CalibrationSetting, calibrationPage, crossPlaces } from './calibration/page.ts';
export { type CalibrationOf, calibrationPayload, readCalibrationPayload } from './calibration/payload.ts';
export {
  type CalibrationPrint,
  type PrintedCalibration,
  printCalibration,
} from './calibration/printCalibration.ts';
export type { PrintedDocument } from './drawing/document.ts';
export type { Drawing, PageSize } from './drawing/drawing.ts';
export { hatchStrokes } from './drawing/operators.ts';
export { type PdfChoice, type PdfDrawing, pdfDrawing } from './drawing/pdf.ts';
export { type RecordedPage, type Recording, recording } from './drawing/recording.ts';
export { type FontBytes, openTypeface, type Typeface } from './drawing/typeface.ts';
export { type Bar, EAN_MODULES, EAN_QUIET, eanBars } from './ean/ean13.ts';
export { barBox, type EanPlace, type EanSize, eanMarks, eanModules, eanSize } from './ean/eanBlock.ts';
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
export { type HandOverPrint, printHandOver } from './handOver/printHandOver.ts';
export { type CardSetting, type Face, layCard } from './layout/card.ts';
export { type CodeRoom, cardFrame, type Frame } from './layout/frame.ts';
export { type LabelSetting, type LaidLabel, layLabel, layLabelFaces } from './layout/label.ts';
export { type LabelFrame, type LabelWay, labelFrames } from './layout/labelFrame.ts';
export type {
  BarMark,
  CodeMark,
  Cut,
  DotMark,
  HatchMark,
  Mark,
  NotchMark,
  PathMark,
  RuleMark,
  TextMark,
  TotalMark,
} from './layout/marks.ts';
export { type Measure, PT_MM } from './layout/measure.ts';
export { FORMS, type Form } from './layout/words.ts';
export { type ListsPrint, printLists } from './lists/printLists.ts';
export type {
  LeftOut,
  Manifest,
  ManifestBar,
  ManifestPage,
  ManifestPiece,
  PartOfRun,
  PieceKind,
  Warning,
} from './manifest.ts';
export { PACK_PAPERS, type PackPaper, type PackPrint, printPack } from './pack/printPack.ts';
export type { Sha256 } from './platform.ts';
export { type CardJob, layCards, printCards } from './printCards.ts';
export { drawPieces, layPieces, type PrintEnd, type PrintSink, printInto, printPieces } from './printPieces.ts';
export { qrBlocks } from './qr/blocks.ts';
export { type SymbolParts, symbolParts } from './qr/parts.ts';
export { qrPayload } from './qr/payload.ts';
export { moduleMm, moduleStep, OFFICE_600, PRINTERS, type PrinterProfile, placeMm, snapMm } from './qr/profiles.ts';
export { darkRectangles, type ModuleRect } from './qr/rectangles.ts';
export { type QrSymbol, QUIET_MODULES, qrSymbol } from './qr/symbol.ts';
export {
  type CodeFault,
  type Expected,
  type LineFault,
  type Look,
  lookDotsPerMm,
  type ReadBack,
  type ReadFault,
  readBack,
} from './readBack/readBack.ts';
export type {
  CardToPrint,
  LaidFace,
  LaidJob,
  Paper,
  PdfMaking,
  PieceJob,
  PieceToPrint,
  PlacedFace,
  SheetSide,
} from './run/job.ts';
export { planOf, type Revisions, type RunPlan, type RunProgress, runProgress } from './run/progress.ts';
export { ownSha256 } from './sha256.ts';
export { type PaperUnit, parsePaperMm, sayPaperMm } from './stocks/lengths.ts';
export { STOCKS, stockById } from './stocks/list.ts';
export {
  calibrationFor,
  findPrinter,
  findStock,
  ownPrinter,
  ownStock,
  printersOf,
  stocksOf,
} from './stocks/own.ts';
export { type Flip, mirrored, type Order, type Slot, type SlotChoice, slots } from './stocks/slots.ts';
export {
  type BoxMm,
  checkStock,
  contentInset,
  type Inset,
  labelBox,
  labelsPerPage,
  type Stock,
  takesCards,
} from './stocks/stock.ts';
