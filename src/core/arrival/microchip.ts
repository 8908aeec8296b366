import { ok, type Result, refuse } from '../problems.ts';

/** A chip's number as it is written down: `iso` has the form of ISO 11784, anything else is kept with a note. */
export interface Microchip {
  readonly code: string;
  readonly form: 'iso' | 'other';
  /** Whom its first three digits name; null where the form is another. */
  readonly issuer: 'country' | 'manufacturer' | 'test' | null;
  /** What the keeper is told of it; null where there is nothing. */
  readonly note: string | null;
}

/** The largest national number: 38 bits (ISO 11784). */
const MOST_NATIONAL = 2 ** 38 - 1;
const ISO_DIGITS = 15;
/** Old and foreign chips have other letters and lengths; shorter or longer ones are slips of typing (common practice, no source). */
const OTHER = /^(?=.*\d)[0-9A-Z*]{5,30}$/;

/**
 * Rule CARE-CHIP: reads a chip's number as typed or scanned. ISO 11784: 15 digits, the first three a country (001-899,
 * ISO 3166) or a manufacturer (900-998; 999 is for tests), then twelve digits of at most 38 bits. Other numbers are taken
 * with a note. Error: `microchip-malformed`.
 */
export function readMicrochip(text: string): Result<Microchip> {
  const code = text
    .trim()
    .toUpperCase()
    .replace(/[\s.-]/g, '');
  if (!OTHER.test(code)) return refuse('microchip-malformed', { text: text.trim() });
  if (!/^\d{15}$/.test(code)) return ok({ code, form: 'other', issuer: null, note: otherNote(code) });
  const first = Number(code.slice(0, 3));
  const doubt = isoDoubt(first, Number(code.slice(3)));
  if (doubt !== null) return ok({ code, form: 'other', issuer: null, note: doubt });
  const issuer = first < 900 ? 'country' : first === 999 ? 'test' : 'manufacturer';
  const note = issuer === 'test' ? 'Numbers with 999 are for tests of readers: read the chip again.' : null;
  return ok({ code, form: 'iso', issuer, note });
}

/** `981 0200 0123 4567`: the digits in groups that can be compared with a reader's. */
export function sayMicrochip(code: string): string {
  return /^\d{15}$/.test(code) ? `${code.slice(0, 3)} ${code.slice(3).replace(/(\d{4})(?=\d)/g, '$1 ')}` : code;
}

function isoDoubt(first: number, national: number): string | null {
  if (first === 0) return 'No country and no manufacturer has the number 000: read the chip again.';
  return national > MOST_NATIONAL
    ? 'Its last twelve digits are more than ISO 11784 has room for: read the chip again.'
    : null;
}

function otherNote(code: string): string {
  const digits = /^\d+$/.test(code) ? `${code.length} digits` : `${code.length} letters and digits`;
  return `It has ${digits}, not the ${ISO_DIGITS} digits of ISO 11784; it was kept as it stands. Read an older chip twice.`;
}
