/**
 * Drops what binary arithmetic adds: twelve significant digits, so that 20 lb x 5 mg/kg / 10 mg/mL is 4.5359237 and
 * 0.175 is a tie between two marks. No scale or syringe has that many digits, so nothing is rounded that anybody measured.
 */
export function exact(value: number): number {
  return Number(value.toPrecision(12));
}

/** A share that lies less than this part over a limit is the limit: 9/0.95 mL is 5 % off a mark of 1 and no hair more. */
const SLACK = 1e-9;

/** Whether a figure lies over a limit by more than binary arithmetic can have added. */
export function isOver(value: number, limit: number): boolean {
  return value > limit * (1 + SLACK);
}
