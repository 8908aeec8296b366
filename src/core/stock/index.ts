export { gramsOfPrey, type Mark, PREY_CLASSES, type PreyClass, preyClass, sayPrey } from './prey.ts';
