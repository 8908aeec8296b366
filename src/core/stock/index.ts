/** What prey is. Lots, forecast and order know of care and the facility, which know of prey; so core’s face takes them straight from their files. */
export { gramsOfPrey, type Mark, PREY_CLASSES, type PreyClass, preyClass, sayPrey } from './prey.ts';
