export { ARRIVAL_DAYS, type Arrival, type Arriving, arrive, usualArrival } from './arrive.ts';
export { type AnimalFlag, decideFlags, sayFlag } from './flags.ts';
export { type Microchip, readMicrochip, sayMicrochip } from './microchip.ts';
export { decideMicrochip, decideOrigin, type Origin } from './origin.ts';
export {
  decideLookedWell,
  decideQuarantine,
  decideQuarantineEnd,
  moveTo,
  QUARANTINE_DAYS,
  type QuarantineLine,
  type QuarantineStart,
  quarantineBoard,
  quarantineOf,
} from './quarantine.ts';
