export { animalRecord, type GramsOf } from './fold.ts';
export { LEDGER_CHIPS, type LedgerChip, type LedgerLine, ledger, type NameOf, sayEvent } from './ledger.ts';
export type { GivenDose, PrescriptionRecord } from './prescriptions.ts';
export {
  type AnimalRecord,
  KEPT_OFFERS,
  KEPT_WEIGHTS,
  lastWeight,
  type Offer,
  type OwnPlan,
  type PlacedHold,
  type SeasonMark,
  sayAnimal,
  saySex,
  type Weighing,
} from './record.ts';
