// The code's text is core's, as that of stamps is: the scanner reads it without print.
export { type CalibrationOf, calibrationPayload, readCalibrationPayload } from '../../src/core/index.ts';
