export { askedLabels, LABEL_SHEETS, type LabelSheet } from './askedLabels.ts';
export { type AskedAgain, askedSheet, asksOf, isTagSheet, PRINT_SHEETS, type PrintSheet } from './askedSheet.ts';
export { askedTags, TAG_SHEETS, type TagSheet } from './askedTags.ts';
export { prescriptionNumber } from './askedTreatments.ts';
export {
  type CalibrationOf,
  calibrationPayload,
  isCalibrationCode,
  readCalibrationPayload,
} from './calibrationCode.ts';
export { cardContent, isCardStale } from './card.ts';
export { clutchTag } from './clutchTag.ts';
export { CARD_SLOTS, type CardContent, type CardFlag, type CardLine, type CardSlot, type Forms } from './content.ts';
export {
  type HandOver,
  type HandOverLine,
  type HandOverQuestion,
  type HandOverTraits,
  handOver,
} from './handOver.ts';
export type { Caution } from './handOverCautions.ts';
export type { FeedingWords } from './handOverFeeding.ts';
export {
  type AskedLabels,
  LABEL_KINDS,
  type LabelCode,
  type LabelContent,
  type LabelKind,
  type LabelLeft,
  type LabelLine,
  type LabelSlot,
} from './label.ts';
export { eggMark, LAYOUT_TEST, layoutTest, placeLabel, STAMP_PREFIX, stampSheet } from './labels.ts';
export { type ListColumn, type ListSheet, rackSheet, saleListSheet } from './lists.ts';
export { lotLabel } from './lotLabel.ts';
export { pairingCard } from './pairingCard.ts';
export { exhibitSign, hangTag, isTagStale, saleTag, shedTag, shelfTag, wareTag } from './shopTags.ts';
export { treatmentCard } from './treatmentCard.ts';
export { MOST_SIGN_LINES, SIGN_COLUMNS } from './treatmentLines.ts';
export { measuredBody, tubeFeedingSheet } from './tubeSheet.ts';
