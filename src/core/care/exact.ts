/**
 * Drops what binary arithmetic adds: twelve significant digits, so that 20 lb x 5 mg/kg / 10 mg/mL is 4.5359237 and
 * 0.175 is a tie between two marks. No scale or syringe has that many digits, so nothing is rounded that anybody measured.
 */
export function exact(value: number): number {
  return Number(value.toPrecision(12));
}
