export { cardContent, isCardStale } from './card.ts';
export { CARD_SLOTS, type CardContent, type CardFlag, type CardLine, type CardSlot, type Forms } from './content.ts';
