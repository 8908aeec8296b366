export { animalRecord, type GramsOf } from './fold.ts';
export { LEDGER_CHIPS, type LedgerChip, type LedgerLine, ledger, type NameOf, sayEvent, sayTask } from './ledger.ts';
export type { GivenDose, Outcome, PrescriptionRecord } from './prescriptions.ts';
export {
  type AnimalRecord,
  KEPT_OFFERS,
  KEPT_WEIGHTS,
  type KeptPaper,
  type Look,
  lastWeight,
  type Measured,
  type Offer,
  type OwnPlan,
  type PlacedHold,
  type SeasonMark,
  type Skip,
  sayAnimal,
  saySex,
  type Weighing,
  withSkip,
} from './record.ts';
