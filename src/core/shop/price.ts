import { ok, type Result, refuse } from '../problems.ts';
import { roundTo } from '../units.ts';

/** The most that a price may be, in the smallest unit. */
export const MOST_MINOR = 1_000_000_000;
/** Signs that our type has and everybody reads; other currencies stand with their code. */
const SIGNS: Readonly<Record<string, string>> = { EUR: '€', GBP: '£', USD: '$', JPY: '¥' };

/** True for a currency of ISO 4217 as the platform's tables have it. */
export function isCurrency(code: string): boolean {
  return /^[A-Z]{3}$/.test(code) && Intl.supportedValuesOf('currency').includes(code);
}

/** How many decimals a currency has: 2 for EUR, 0 for JPY, 3 for KWD (ISO 4217, by the platform's tables). */
export function minorDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** `€12.50`, `CHF 12.50`, `¥1,200`: the same letters on every platform, since they are printed. */
export function sayPrice(priceMinor: number, currency: string): string {
  const digits = minorDigits(currency);
  const amount = new Intl.NumberFormat('en', { minimumFractionDigits: digits, maximumFractionDigits: digits });
  const sign = SIGNS[currency];
  const text = amount.format(priceMinor / 10 ** digits);
  return sign === undefined ? `${currency} ${text}` : `${sign}${text}`;
}

/** `12.50` as a table has it, without sign or thousands. */
export function plainPrice(priceMinor: number, currency: string): string {
  return (priceMinor / 10 ** minorDigits(currency)).toFixed(minorDigits(currency));
}

/**
 * Reads a price as typed: `12.50`, `12,50`, `€ 12.5`, `1200`. A comma or point before exactly three digits could be
 * either and is asked about. Errors: `currency-missing`, `price-malformed`, `price-too-fine`, `price-impossible`.
 */
export function parsePrice(text: string, currency: string | null): Result<number> {
  if (currency === null) return refuse('currency-missing');
  const digits = minorDigits(currency);
  const plain = text
    .replace(currency, '')
    .replace(SIGNS[currency] ?? currency, '')
    .trim();
  const found = /^(\d{1,9})(?:[.,](\d+))?$/.exec(plain);
  if (found === null || (found[2]?.length === 3 && digits !== 3))
    return refuse('price-malformed', { text: text.slice(0, 40), example: plainPrice(1250, currency) });
  if ((found[2]?.length ?? 0) > digits) return refuse('price-too-fine', { text: text.slice(0, 40), currency, digits });
  const minor = roundTo(Number(`${found[1]}.${found[2] ?? '0'}`) * 10 ** digits, 0);
  return minor <= MOST_MINOR ? ok(minor) : refuse('price-impossible', { text: text.slice(0, 40) });
}
