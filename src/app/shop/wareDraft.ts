import { ok, type Payload, parsePrice, type Result, readGtin, refuse } from '../../core/index.ts';

/** A ware as it stands on the form, all of it as typed. */
export interface WareText {
  readonly name?: string;
  readonly price?: string;
  readonly gtin?: string;
  readonly words?: string;
  readonly lowAt?: string;
  readonly edition?: string;
}

/** Reads the form of a ware. Errors, each at its line: `item-unnamed`, `gtin-malformed`, `not-whole`, and those of a price. */
export function wareOf(text: WareText, currency: string | null): Result<Payload<'ware-set'>> {
  const line = (name: keyof WareText): string => (text[name] ?? '').trim();
  if (line('name') === '') return refuse('item-unnamed', {}, 'name');
  const price = parsePrice(line('price'), currency);
  if (!price.ok) return at(price, 'price');
  const gtin = line('gtin') === '' ? null : readGtin(line('gtin'));
  if (gtin !== null && !gtin.ok) return at(gtin, 'gtin');
  if (gtin !== null && !gtin.value.ok)
    return refuse('gtin-check', { text: line('gtin'), full: gtin.value.full }, 'gtin');
  const lowAt = wholeOf(line('lowAt'), 0);
  if (lowAt === null) return refuse('not-whole', { what: 'number at which it is low' }, 'lowAt');
  const edition = wholeOf(line('edition'), 1);
  if (edition === null) return refuse('not-whole', { what: 'size of the edition' }, 'edition');
  return ok({
    name: line('name'),
    priceMinor: price.value,
    ...(gtin === null ? {} : { gtin: gtin.value.full }),
    ...(line('words') === '' ? {} : { words: line('words') }),
    ...(lowAt === undefined ? {} : { lowAt }),
    ...(edition === undefined ? {} : { edition }),
  });
}

/** Undefined for an empty line, null for what is no whole number. */
function wholeOf(text: string, least: number): number | undefined | null {
  if (text === '') return undefined;
  const value = Number(text);
  return /^\d{1,5}$/.test(text) && value >= least ? value : null;
}

function at<T>(refused: Extract<Result<T>, { ok: false }>, path: string): Extract<Result<T>, { ok: false }> {
  return { ok: false, problem: { ...refused.problem, path } };
}
