export { askedLabels, LABEL_SHEETS, type LabelSheet } from './askedLabels.ts';
export { cardContent, isCardStale } from './card.ts';
export { clutchTag } from './clutchTag.ts';
export { CARD_SLOTS, type CardContent, type CardFlag, type CardLine, type CardSlot, type Forms } from './content.ts';
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
export { pairingCard } from './pairingCard.ts';
