import type { Id } from '../ids.ts';
import { ok, type Result, refuse } from '../problems.ts';

/** A number of a trade item, whole with its check digit: GTIN-8, 12, 13 or 14 (GS1 General Specifications). */
export interface Gtin {
  readonly full: string;
  readonly check: number;
  /** False where the number came with another check digit than it should have. */
  readonly ok: boolean;
}

/** Numbers that begin so are for use within one company only (GS1 General Specifications, 2.1.13.2); we keep to 04. */
export const OWN_PREFIX = '04';
const OWN_DIGITS = 10;
const BODIES: readonly number[] = [7, 11, 12, 13];
const WHOLE: readonly number[] = [8, 12, 13, 14];

/** Rule SHOP-CHECK: the check digit of a number without it: weights 3 and 1 from the right, up to the next ten (GS1 General Specifications, 7.9). */
export function checkDigit(body: string): number {
  let sum = 0;
  for (let at = body.length - 1, weight = 3; at >= 0; at--, weight = 4 - weight) sum += Number(body[at]) * weight;
  return (10 - (sum % 10)) % 10;
}

/**
 * Reads a number with or without its check digit; blanks and hyphens do not matter. Seven and eleven digits lack it.
 * Twelve digits are a whole GTIN-12 where their last digit fits, else a GTIN-13 without its last.
 * Errors: `gtin-malformed`.
 */
export function readGtin(text: string): Result<Gtin> {
  const digits = text.replace(/[\s-]/g, '');
  if (!/^\d+$/.test(digits))
    return refuse('gtin-malformed', { text: text.slice(0, 40), why: 'it has other signs than digits' });
  const body = digits.slice(0, -1);
  const check = checkDigit(body);
  const fits = Number(digits.at(-1)) === check;
  if (WHOLE.includes(digits.length) && (fits || digits.length !== 12))
    return ok({ full: `${body}${check}`, check, ok: fits });
  if (!BODIES.includes(digits.length))
    return refuse('gtin-malformed', { text: text.slice(0, 40), why: `it has ${digits.length} digits` });
  const own = checkDigit(digits);
  return ok({ full: `${digits}${own}`, check: own, ok: true });
}

/** Thirteen digits as a bar code holds them, whatever length the number has; null for a GTIN-14, which no EAN-13 holds. */
export function asEan13(full: string): string | null {
  if (full.length <= 13) return full.padStart(13, '0');
  return full.startsWith('0') ? full.slice(1) : null;
}

/**
 * Rule SHOP-OWN: the item's own EAN-13: prefix 04, ten digits worked out of its id, check digit. Ids are many more than
 * ten digits can tell apart, so two may meet; whoever makes an item takes another id then (see {@link itemsByNumber}).
 */
export function ownNumber(id: Id): string {
  let value = 0n;
  for (const letter of id.slice(0, 7)) value = value * 32n + BigInt('0123456789ABCDEFGHJKMNPQRSTVWXYZ'.indexOf(letter));
  const body = `${OWN_PREFIX}${String(value % 10n ** BigInt(OWN_DIGITS)).padStart(OWN_DIGITS, '0')}`;
  return `${body}${checkDigit(body)}`;
}
