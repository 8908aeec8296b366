export { type Dose, type Mass, massInG, mgPerKgOf, mgPerMlOf, type Strength } from './amount.ts';
export { CAP_PERCENT, isTubeRoute, type Way, wayOf } from './cap.ts';
export { type ConfirmedDose, type DoseRules, decideDose } from './decideDose.ts';
export {
  decideOutcome,
  decidePrescription,
  decideStop,
  type OutcomeWord,
  type StopWord,
  type WithPapers,
} from './decidePrescription.ts';
export {
  DOSE_CAUTION,
  type DoseAnswer,
  type DoseQuestion,
  doseVolume,
  type WrittenQuestion,
  writtenVolume,
} from './dose.ts';
export { FLUIDS_CAUTION, FLUIDS_ML_PER_KG, type Fluids, fluidsPerDay } from './fluids.ts';
export {
  type Amount,
  type DoseSetting,
  type Prescription,
  type PrescriptionDays,
  type PrescriptionState,
  prescribedDose,
  prescriptionFault,
  prescriptionState,
} from './prescription.ts';
export {
  COURSE_SHARES,
  type Course,
  DOUBLED_WORDS,
  type DoseSchedule,
  doseCloseFault,
  doseSchedule,
  doseTimeFault,
} from './schedule.ts';
export { enteredDose, type Treatment, treatmentBy, treatmentsOn, weightFor } from './standing.ts';
export {
  type Drawn,
  drawUp,
  MOST_DIFFERENCE_PERCENT,
  markOf,
  roundToMark,
  SYRINGES_ML,
  sayMl,
  syringesFault,
} from './syringe.ts';
export { TENFOLD_FROM, tenfoldFault } from './tenfold.ts';
export {
  FLUSH_ML,
  STOMACH_SHARE,
  TUBE_CAUTION,
  type TubeQuestion,
  type TubeSheet,
  tubeSheet,
} from './tube.ts';
export { isTreated, isUnderWay, prescriptionOf, withholdsFood } from './underWay.ts';
export { isYoung, WEIGHT_DAYS, type Weighed, type WeighedFor, weightFault, weightGoodUntil } from './weighed.ts';
export {
  sayAmount,
  sayCourse,
  sayDaily,
  sayDifference,
  sayEvery,
  sayFluids,
  sayPaperDays,
  saySyringe,
  saySyringes,
  sayWritten,
} from './words.ts';
