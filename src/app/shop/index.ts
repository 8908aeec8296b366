export { ItemScreen } from './ItemScreen.tsx';
export { OfferPart } from './OfferPart.tsx';
export { ShedItemScreen } from './ShedItemScreen.tsx';
export { ShopScreen } from './ShopScreen.tsx';
