import {
  type CalibrationOf,
  type Id,
  isCalibrationCode,
  LAYOUT_TEST,
  ok,
  parseId,
  type ReadId,
  type Result,
  readCalibrationPayload,
  readGtin,
  refuse,
  STAMP_PREFIX,
} from '../src/core/index.ts';

export { LAYOUT_TEST, STAMP_PREFIX };

/**
 * What a code says: an id, a stamp from a wall sheet, the keyboard layout test of the settings sheet, the paper and printer
 * of a calibration page, or the number of a ware as thirteen digits, our own or a maker’s; what of it the site knows, only
 * the site can say.
 */
export type ScannedCode =
  | { readonly kind: 'id'; readonly id: Id; readonly corrected: boolean }
  | { readonly kind: 'stamp'; readonly stamp: string }
  | { readonly kind: 'layout-test' }
  | ({ readonly kind: 'calibration' } & CalibrationOf)
  | { readonly kind: 'ware'; readonly digits: string };

/** The site's own host (with its port if it has one), as printed in `HTTPS://HOST/ID`; case does not matter. */
export interface PayloadOptions {
  readonly host?: string | undefined;
}

const LONGEST = 200;
const STAMP_NAME = /^[A-Z-]{2,30}$/i;
const SCHEME = /^[a-z][a-z0-9+.-]*:/i;
const AUTHORITY = /^[a-z0-9.-]{1,253}(:\d{1,5})?$/i;
const ID_LETTERS = /^[0-9A-Z*~$= -]*$/i;
/** O, U and T stand at the same place on every Latin keyboard, so a garbled test still has them. */
const GARBLED_LAYOUT_TEST = /^L..OUT.{11}$/i;

/**
 * Reads the text of a scanned code; it is only ever read, never opened as an address. Errors: `hostile-code`,
 * `foreign-host`, `foreign-code`, `scanner-layout`, and those of an id, `not-an-id` and `check-failed`.
 */
export function readPayload(text: string, options: PayloadOptions = {}): Result<ScannedCode> {
  const why = hostility(text);
  if (why !== null) return refuse('hostile-code', { why });
  const plain = text.trim();
  if (startsWith(plain, STAMP_PREFIX)) return readStamp(plain.slice(STAMP_PREFIX.length));
  if (isCalibrationCode(plain)) return readCalibration(plain);
  if (plain.toUpperCase() === LAYOUT_TEST) return ok({ kind: 'layout-test' });
  if (GARBLED_LAYOUT_TEST.test(plain)) return refuse('scanner-layout', { text: plain });
  if (startsWith(plain, 'HTTPS://')) return readAddress(plain.slice('HTTPS://'.length), options.host);
  const scheme = SCHEME.exec(plain)?.[0];
  if (scheme !== undefined)
    return refuse('hostile-code', { why: `it is an address that starts with “${clip(scheme)}”` });
  return readWare(plain) ?? readBareId(plain);
}

/** Why a text can be no code of ours and may mean harm, or null. */
function hostility(text: string): string | null {
  if (text.length > LONGEST) return `it is longer than ${LONGEST} characters`;
  if (/\p{Cc}/u.test(text)) return 'it has control characters';
  if (/\p{Bidi_Control}/u.test(text)) return 'it has signs that turn the direction of reading';
  if (/[\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]/u.test(text)) return 'it has characters that cannot be seen';
  return null;
}

function readStamp(name: string): Result<ScannedCode> {
  return STAMP_NAME.test(name) ? ok({ kind: 'stamp', stamp: name.toUpperCase() }) : refuse('foreign-code');
}

function readCalibration(text: string): Result<ScannedCode> {
  const of = readCalibrationPayload(text);
  return of === null ? refuse('foreign-code') : ok({ kind: 'calibration', ...of });
}

/** The id after the last slash, if the address is the site's own. */
function readAddress(rest: string, ownHost: string | undefined): Result<ScannedCode> {
  const end = rest.search(/[/\\?#]/);
  const host = end < 0 ? rest : rest.slice(0, end);
  if (!AUTHORITY.test(host)) return refuse('hostile-code', { why: 'it is an address that hides its host' });
  if (ownHost === undefined || host.toLowerCase() !== ownHost.trim().toLowerCase()) {
    return refuse('foreign-host', { host: clip(host.toLowerCase()) });
  }
  return asCode(parseId(rest.slice(rest.lastIndexOf('/') + 1)));
}

/** Twelve or thirteen digits with a sound check digit: a bar code of a ware. Eight digits are an id before they are anything else. */
function readWare(text: string): Result<ScannedCode> | null {
  if (!/^\d{12,13}$/.test(text)) return null;
  const read = readGtin(text);
  if (!read.ok || !read.value.ok || read.value.full !== text) return refuse('ware-misread', { text });
  return ok({ kind: 'ware', digits: text.padStart(13, '0') });
}

/** An id with no address; what is far from an id's length belongs to somebody else. */
function readBareId(text: string): Result<ScannedCode> {
  const letters = text.replace(/[ -]/g, '').length;
  if (!ID_LETTERS.test(text) || letters > 9) return refuse('foreign-code');
  return asCode(parseId(text));
}

function asCode(read: Result<ReadId>): Result<ScannedCode> {
  return read.ok ? ok({ kind: 'id', ...read.value }) : read;
}

function startsWith(text: string, prefix: string): boolean {
  return text.slice(0, prefix.length).toUpperCase() === prefix;
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
