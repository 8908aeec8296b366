export { type Dose, type Mass, massInG, mgPerKgOf, mgPerMlOf, type Strength } from './amount.ts';
export { CAP_PERCENT, type Way, wayOf } from './cap.ts';
export {
  type ConfirmedDose,
  type DoseRules,
  decideDose,
  decidePrescription,
  decideStop,
} from './decideDose.ts';
export {
  DOSE_CAUTION,
  type DoseAnswer,
  type DoseQuestion,
  doseVolume,
  type WrittenQuestion,
  writtenVolume,
} from './dose.ts';
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
export { COURSE_SHARES, type Course, type DoseSchedule, doseSchedule, doseTimeFault } from './schedule.ts';
export { enteredDose, type Treatment, treatmentBy, treatmentsOn } from './standing.ts';
export { type Drawn, drawUp, MOST_DIFFERENCE_PERCENT, markOf, roundToMark, SYRINGES_ML, sayMl } from './syringe.ts';
export { TENFOLD_FROM, tenfoldFault } from './tenfold.ts';
export {
  FLUSH_ML,
  fluidsPerDay,
  STOMACH_SHARE,
  TUBE_CAUTION,
  type TubeQuestion,
  type TubeSheet,
  tubeSheet,
} from './tube.ts';
export { isTreated, prescriptionOf, withholdsFood } from './underWay.ts';
export { isYoung, WEIGHT_DAYS, type Weighed, type WeighedFor, weightFault } from './weighed.ts';
