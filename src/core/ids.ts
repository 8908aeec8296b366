import { ok, type Result, refuse } from './problems.ts';

declare const idBrand: unique symbol;
declare const eventIdBrand: unique symbol;

/**
 * The printed id of an animal, place, clutch or item: seven Crockford Base32 characters and their mod-37 check symbol
 * (Crockford, "Base 32", 2002). Kept without the hyphen that people read.
 */
export type Id = string & { readonly [idBrand]: true };

/** The id of an event: a UUIDv7 (RFC 9562, 5.7) in lower case. */
export type EventId = string & { readonly [eventIdBrand]: true };

/** Crockford's alphabet: no I, L, O, U. */
export const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const CHECKS = `${ALPHABET}*~$=U`;
const BODY_LENGTH = 7;
const VALUES = 2 ** 35;
const NO_DIGIT = 255;
/** What each letter of the alphabet is worth, by its code. */
const DIGITS = new Uint8Array(128).fill(NO_DIGIT);
for (let digit = 0; digit < ALPHABET.length; digit++) DIGITS[ALPHABET.charCodeAt(digit)] = digit;
const LOOKALIKES: Readonly<Record<string, string>> = { I: '1', L: '1', O: '0' };

/** Numbers below 2^35 whose check is a plain letter or digit; only these are ever minted. */
const MINTABLE = 32 * Math.floor(VALUES / 37) + Math.min(32, VALUES % 37);
const STRIDE = 18_364_758_545n;
const OFFSET = 7_215_440_261n;

/** What enrolled devices may use: a 10-bit device number and a 24-bit counter, all of it. */
export const ENROLLED = { devices: 2 ** 10, counters: 2 ** 24 } as const;
/** What devices without a hub use: 17 random bits and what is left of the numbers, shared evenly. */
export const UNENROLLED = {
  devices: 2 ** 17,
  counters: Math.floor((MINTABLE - ENROLLED.devices * ENROLLED.counters) / 2 ** 17),
} as const;

/** How a read id came out: as written, or with a look-alike letter set right. */
export interface ReadId {
  readonly id: Id;
  readonly corrected: boolean;
}

/** Reads an id as typed or scanned: case and hyphens do not matter, I and L are 1, O is 0. Errors: `not-an-id`, `check-failed`. */
export function parseId(text: string): Result<ReadId> {
  const plain = text.trim().toUpperCase().replace(/[-\s]/g, '');
  const swapped = plain.replace(/[ILO]/g, (letter) => LOOKALIKES[letter] ?? letter);
  if (swapped.length !== BODY_LENGTH + 1) return refuse('not-an-id', { text: clip(text) });
  const body = decodeBase32(swapped.slice(0, BODY_LENGTH));
  const check = swapped.slice(BODY_LENGTH);
  if (body === null || !CHECKS.includes(check)) return refuse('not-an-id', { text: clip(text) });
  if (checkSymbol(body) !== check || !ALPHABET.includes(check)) return refuse('check-failed', { text: clip(text) });
  return ok({ id: swapped as Id, corrected: swapped !== plain });
}

/** True for an id in its stored form. Every event that is read asks it, so it makes no new text on the way. */
export function isId(text: string): text is Id {
  if (text.length !== BODY_LENGTH + 1) return false;
  let body = 0;
  for (let at = 0; at < BODY_LENGTH; at++) {
    const digit = DIGITS[text.charCodeAt(at)] ?? NO_DIGIT;
    if (digit === NO_DIGIT) return false;
    body = body * 32 + digit;
  }
  const check = DIGITS[text.charCodeAt(BODY_LENGTH)] ?? NO_DIGIT;
  return check !== NO_DIGIT && check === body % 37;
}

/** `7RMB-N615`: the form people read, in groups of four. */
export function sayId(id: Id): string {
  return `${id.slice(0, 4)}-${id.slice(4)}`;
}

/**
 * The id of a device's n-th thing. Different (device, counter) never give the same id, and every one has a check symbol
 * that is a letter or digit: the counters run over the mintable numbers only, in an order scrambled by a fixed
 * bijection, so that neighbours look different. Errors: `device-number`, `counter-spent`.
 */
export function mintId(device: number, counter: number): Result<Id> {
  return mint(device, counter, ENROLLED, 0);
}

/** The same for a device that no hub has enrolled; `device` is its 17 random bits, drawn once. */
export function mintUnenrolledId(device: number, counter: number): Result<Id> {
  return mint(device, counter, UNENROLLED, ENROLLED.devices * ENROLLED.counters);
}

/** Crockford's Base32 of a whole number, without leading zeros. */
export function encodeBase32(value: number): string {
  let rest = Math.trunc(value);
  let text = '';
  do {
    text = (ALPHABET[rest % 32] ?? '') + text;
    rest = Math.floor(rest / 32);
  } while (rest > 0);
  return text;
}

/** The check symbol of a whole number: the number modulo 37. */
export function checkSymbol(value: number): string {
  return CHECKS[value % 37] ?? '';
}

function decodeBase32(text: string): number | null {
  let value = 0;
  for (const letter of text) {
    const digit = ALPHABET.indexOf(letter);
    if (digit < 0) return null;
    value = value * 32 + digit;
  }
  return value;
}

interface Share {
  readonly devices: number;
  readonly counters: number;
}

function mint(device: number, counter: number, share: Share, first: number): Result<Id> {
  if (!inRange(device, share.devices)) return refuse('device-number', { device, most: share.devices - 1 });
  if (!inRange(counter, share.counters)) return refuse('counter-spent', { device, counter });
  const place = first + device * share.counters + counter;
  const scrambled = Number((BigInt(place) * STRIDE + OFFSET) % BigInt(MINTABLE));
  const value = Math.floor(scrambled / 32) * 37 + (scrambled % 32);
  return ok((encodeBase32(value).padStart(BODY_LENGTH, '0') + checkSymbol(value)) as Id);
}

function inRange(value: number, end: number): boolean {
  return Number.isInteger(value) && value >= 0 && value < end;
}

const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** True for a UUIDv7 in lower case. */
export function isEventId(text: string): text is EventId {
  return UUID_V7.test(text);
}

/** A UUIDv7 from milliseconds since 1970 and ten random bytes (RFC 9562, 5.7); time and chance are the caller's. */
export function eventIdFrom(ms: number, random: Uint8Array): EventId {
  const time = Math.trunc(ms).toString(16).padStart(12, '0').slice(-12);
  const hex = Array.from(random.slice(0, 10), (byte) => byte.toString(16).padStart(2, '0'))
    .join('')
    .padEnd(20, '0');
  const variant = ((Number.parseInt(hex[3] ?? '0', 16) & 3) | 8).toString(16);
  return `${time.slice(0, 8)}-${time.slice(8)}-7${hex.slice(0, 3)}-${variant}${hex.slice(4, 7)}-${hex.slice(7, 19)}` as EventId;
}

/** Milliseconds since 1970 in a UUIDv7, by the clock of whoever made it (RFC 9562, 5.7). */
export function eventIdMs(id: EventId): number {
  return Number.parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
