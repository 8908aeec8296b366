export { asEan13, checkDigit, type Gtin, OWN_PREFIX, ownNumber, readGtin } from './gtin.ts';
export {
  decideItem,
  editionLeft,
  type ItemAction,
  isSoldOut,
  itemsByNumber,
  makeShedItem,
  numberOf,
  SHED_DAYS,
  setWare,
} from './items.ts';
export { endOffer, LONG_OFFER_DAYS, type Offered, offerAnimal, offerFault, saleList } from './offers.ts';
export { isCurrency, MOST_MINOR, minorDigits, parsePrice, plainPrice, sayPrice } from './price.ts';
export { saleCsv } from './saleCsv.ts';
export { salesCsv, stockCsv } from './stockCsv.ts';
