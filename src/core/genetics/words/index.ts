export { type ComboOffer, offerCombo } from './combos.ts';
export { pairAside } from './contribution.ts';
export { readTrade, type TradeReading } from './readTrade.ts';
export { type LocusWords, locusWords, sayChance, sayTrade, type TradeWords } from './sayTrade.ts';
