import { ok, type Result, refuse } from './problems.ts';

declare const gramsBrand: unique symbol;
declare const millimetresBrand: unique symbol;

/** A mass in grams. */
export type Grams = number & { readonly [gramsBrand]: true };
/** A length in millimetres. */
export type Millimetres = number & { readonly [millimetresBrand]: true };

/** The exact pound, in grams (international yard and pound agreement of 1959; NIST SP 811, appendix B.8). */
export const POUND_G = 453.59237;

/** The lightest and heaviest weighing that is taken at all: a newborn thread snake and a record anaconda lie inside (common practice, no source). */
export const WEIGHT_LIMITS_G = { least: 0.5, most: 150_000 } as const;

const PER_UNIT_G: Readonly<Record<string, number>> = {
  '': 1,
  g: 1,
  kg: 1000,
  lb: POUND_G,
  lbs: POUND_G,
  oz: POUND_G / 16,
};
/** `1,480` is 1480 as this program prints it and 1.480 where a comma stands before the parts: in grams nobody can tell. */
const AMBIGUOUS = /^[1-9]\d{0,2},\d{3}$/;
const TYPED = /^\s*([0-9]+(?:[.,][0-9]+)?|[.,][0-9]+)\s*([a-z]*)\s*$/i;

/** Brands a number of grams; a bug, not data, if it is not finite. */
export function grams(value: number): Grams {
  if (!Number.isFinite(value)) throw new RangeError(`grams must be finite, got ${value}`);
  return value as Grams;
}

/** Brands a number of millimetres; a bug, not data, if it is not finite. */
export function millimetres(value: number): Millimetres {
  if (!Number.isFinite(value)) throw new RangeError(`millimetres must be finite, got ${value}`);
  return value as Millimetres;
}

/**
 * Reads a weight as typed: `900`, `1.2kg`, `1,2 kg`, `2 lb`; without a unit it is grams, as the scales show them.
 * Errors: `not-a-number`, `unit-missing`, `number-ambiguous`, and those of {@link weightInRange}.
 */
export function parseWeight(text: string): Result<Grams> {
  const found = TYPED.exec(text);
  if (!found) return refuse('not-a-number', { text, example: '900 or 1.2 kg' });
  const factor = PER_UNIT_G[(found[2] ?? '').toLowerCase()];
  if (factor === undefined) return refuse('unit-missing', { text, example: '900 g or 1.2 kg' });
  const figure = found[1] ?? '';
  if (factor === 1 && AMBIGUOUS.test(figure)) {
    const [thousands, parts] = [figure.replace(',', ''), Number(figure.replace(',', '.'))];
    return refuse('number-ambiguous', { text: text.trim(), thousands, parts });
  }
  return weightInRange(Number(figure.replace(',', '.')) * factor);
}

/** Takes a number of grams if a snake can weigh that. */
export function weightInRange(weightG: number): Result<Grams> {
  if (!Number.isFinite(weightG)) return refuse('not-finite', { what: 'weight' });
  if (weightG <= 0) return refuse('not-positive', { what: 'weight' });
  const possible = weightG >= WEIGHT_LIMITS_G.least && weightG <= WEIGHT_LIMITS_G.most;
  return possible ? ok(grams(roundTo(weightG, 2))) : refuse('weight-impossible', { weightG: roundTo(weightG, 2) });
}

/** `85 g`, `1,480 g`; a tenth only below 20 g, where it matters. */
export function sayGrams(weightG: number): string {
  return `${sayNumber(weightG < 20 ? roundTo(weightG, 1) : Math.round(weightG))} g`;
}

/** `60-100 g`, and one figure when both ends are the same. */
export function sayGramRange(range: readonly [number, number]): string {
  const low = sayGrams(range[0]);
  const high = sayGrams(range[1]);
  return low === high ? high : `${low.slice(0, -2)}–${high}`;
}

/** Below this a scaled number is off by less than a tenth of {@link PLAIN_AWAY}, so its side of a half is certain. */
const PLAIN_BELOW = 1e8;
const PLAIN_AWAY = 1e-6;

/** `85.5 cm`, and from two metres on `4.21 m`. */
export function sayLength(lengthMm: number): string {
  return lengthMm < 2000 ? `${roundTo(lengthMm / 10, 1)} cm` : `${roundTo(lengthMm / 1000, 2)} m`;
}

/** Rounds half away from zero to so many decimals; decimal text keeps 1.005 from becoming 1.00. */
export function roundTo(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const near = Math.abs(value) * scale;
  // Away from a half no text is needed: a whole number by a power of ten is what its decimal text reads as.
  if (decimals >= 0 && near < PLAIN_BELOW && Math.abs(near - Math.floor(near) - 0.5) > PLAIN_AWAY)
    return Math.sign(value) * (Math.round(near) / scale);
  const text = String(Math.abs(value));
  // Figures that are written with an exponent are too small or too large for the text to matter.
  const shifted = Math.round(text.includes('e') ? Math.abs(value) * 10 ** decimals : Number(`${text}e${decimals}`));
  if (!Number.isFinite(shifted) || shifted >= 1e21) return value;
  return Math.sign(value) * Number(`${shifted}e-${decimals}`);
}

/** A number with a comma between thousands, as printed on cards. */
export function sayNumber(value: number): string {
  const [whole = '0', part] = String(value).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return part === undefined ? grouped : `${grouped}.${part}`;
}
