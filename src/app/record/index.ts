export { CardFace } from './CardFace.tsx';
export { RECENT_DAYS } from './Ledger.tsx';
export { LedgerRow } from './LedgerRow.tsx';
export { RecordScreen } from './RecordScreen.tsx';
