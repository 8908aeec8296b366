import { type Problem, problem, type Result } from '../../src/core/index.ts';
import { type PayloadOptions, readPayload, type ScannedCode } from '../payload.ts';
import { readScaleLine, type ScaleReading } from './scaleReading.ts';

/** One stroke of a run: what its key says here, and what the same place says on a US keyboard. */
export interface Stroke {
  readonly atMs: number;
  readonly key: string;
  readonly code: string;
}

/** Which of the two readings of a typed scan was taken: what the keys say here, or where they lie on a US keyboard. */
export type Reading = 'key' | 'code';

/** A scan that came by typing. */
export interface TypedScan {
  readonly text: string;
  readonly reading: Reading;
  /** What the text says, or why it says nothing to us. */
  readonly code: Result<ScannedCode>;
  /** The other reading, when it is a sound code too and says something else: ask the keeper which one. */
  readonly other?: Extract<Result<ScannedCode>, { ok: true }>;
  /** What the whole run says as a scale's line, if it is one. A sound code is a code first: it has a check letter, a weight has none. */
  readonly scale?: Result<ScaleReading>;
  /** The `timeStamp` of the scan's first key; what was typed earlier is a person's and stays in the field. */
  readonly startedMs: number;
}

/** What a typed code is read by. */
export interface TypedReadOptions extends PayloadOptions {
  /** When the last key before this run came, if no Enter or Tab ended what it belonged to. */
  readonly keyBeforeMs?: number | null;
  /** A weight is waited for, so that a scale's line counts even if it is shorter than any code. */
  readonly weighing?: boolean;
}

/** A scanner's median gap is at most this; people type at 90 to 180 ms a key (measured). */
export const SCANNER_GAP_MS = 40;
/** Nothing of ours is shorter than an id. */
const FEWEST = 8;
/** A gap of a person's. With one in it, part of a scale's line may be the person's: it is asked for again. */
const PERSON_GAP_MS = 90;
/** A line that begins sooner after another key may be the rest of one that stuttered. */
const ALONE_MS = 1000;

/**
 * Reads the scan at the end of a run of strokes, or null if its pace is a person's. The scan is the longest stretch with
 * a scanner's median gap; if that is no sound code, what follows each longer gap in it is tried, for a person may have
 * typed just before. Both readings are tried; `trusted` is the one that was right when the two last differed.
 */
export function readStrokes(run: readonly Stroke[], trusted: Reading, options: TypedReadOptions): TypedScan | null {
  const starts = startsOf(run);
  const longest = starts.findIndex((start) => hasScannerPace(run.slice(start)));
  const first = starts[longest];
  if (first === undefined) return null;
  const scale = scaleIn(run, options.keyBeforeMs ?? null);
  for (const start of starts.slice(longest)) {
    const scan = readFrom(run.slice(start), trusted, options);
    if (scan.code.ok) return start === 0 && scale !== null ? { ...scan, scale } : scan;
  }
  if (scale !== null) return { ...readFrom(run, trusted, options), scale };
  return readFrom(run.slice(first), trusted, options);
}

/** A scale's line that is shorter than any code: only where every key of it came at a scanner's pace. */
export function readShortLine(run: readonly Stroke[], trusted: Reading, options: TypedReadOptions): TypedScan | null {
  if (run.length < 2 || run.length >= FEWEST || largestGap(run) > SCANNER_GAP_MS) return null;
  const scale = scaleIn(run, options.keyBeforeMs ?? null);
  return scale === null ? null : { ...readFrom(run, trusted, options), scale };
}

/**
 * A run as a scale's line, or null. It is taken whole or not at all: what a check letter tells of a code, nothing tells
 * of a weight that lost its first digits or got one from a person. Of two readings the refused one wins.
 */
function scaleIn(run: readonly Stroke[], keyBeforeMs: number | null): Result<ScaleReading> | null {
  const [key, code] = [readScaleLine(textOf(run, 'key')), readScaleLine(textOf(run, 'code'))];
  if (key === null || code === null) return unbroken(run, keyBeforeMs, key ?? code);
  if (!key.ok || !code.ok) return key.ok ? code : key;
  if (key.value.weightG === code.value.weightG) return unbroken(run, keyBeforeMs, key);
  const { text, weightG } = key.value;
  return { ok: false, problem: problem('number-ambiguous', { text, thousands: weightG, parts: code.value.weightG }) };
}

function unbroken(
  run: readonly Stroke[],
  keyBeforeMs: number | null,
  read: Result<ScaleReading> | null,
): Result<ScaleReading> | null {
  const sinceMs = (run[0]?.atMs ?? 0) - (keyBeforeMs ?? Number.NEGATIVE_INFINITY);
  if (read?.ok !== true || (largestGap(run) < PERSON_GAP_MS && sinceMs > ALONE_MS)) return read;
  return { ok: false, problem: problem('scale-broken', { text: read.value.text }) };
}

function largestGap(strokes: readonly Stroke[]): number {
  return Math.max(0, ...gapsOf(strokes));
}

function gapsOf(strokes: readonly Stroke[]): readonly number[] {
  return strokes.slice(1).map((stroke, i) => stroke.atMs - (strokes[i]?.atMs ?? stroke.atMs));
}

function hasScannerPace(strokes: readonly Stroke[]): boolean {
  if (strokes.length < FEWEST) return false;
  const gaps = [...gapsOf(strokes)].sort((a, b) => a - b);
  return (gaps[Math.floor(gaps.length / 2)] ?? 0) <= SCANNER_GAP_MS;
}

/** Where a scan can start: at the first stroke, and after each gap that is long for a scanner. */
function startsOf(run: readonly Stroke[]): readonly number[] {
  return run.flatMap((stroke, i) => {
    const last = run[i - 1];
    return last === undefined || stroke.atMs - last.atMs > SCANNER_GAP_MS ? [i] : [];
  });
}

function readFrom(strokes: readonly Stroke[], trusted: Reading, options: PayloadOptions): TypedScan {
  const startedMs = strokes[0]?.atMs ?? 0;
  const untrusted: Reading = trusted === 'key' ? 'code' : 'key';
  const first = attempt(strokes, trusted, options);
  const second = attempt(strokes, untrusted, options);
  if (!first.code.ok) return { ...(second.code.ok ? second : telling(first, second)), startedMs };
  if (second.code.ok && sayCode(first.code.value) !== sayCode(second.code.value)) {
    return { ...first, other: second.code, startedMs };
  }
  return { ...first, startedMs };
}

type Attempt = Pick<TypedScan, 'text' | 'reading' | 'code'>;

function attempt(strokes: readonly Stroke[], reading: Reading, options: PayloadOptions): Attempt {
  const text = textOf(strokes, reading);
  return { text, reading, code: readPayload(text, options) };
}

function textOf(strokes: readonly Stroke[], reading: Reading): string {
  return strokes.map((stroke) => stroke[reading]).join('');
}

/** Of two failures the one that names more: another site's address, or an id with a wrong character. */
function telling(first: Attempt, second: Attempt): Attempt {
  return rank(second.code) > rank(first.code) ? second : first;
}

function rank(code: Result<ScannedCode>): number {
  return code.ok ? 0 : (RANKS[code.problem.code] ?? 0);
}

const RANKS: Readonly<Partial<Record<Problem['code'], number>>> = {
  'scanner-layout': 4,
  'foreign-host': 3,
  'check-failed': 2,
  'hostile-code': 1,
};

/** One text for each thing a code can say, to tell whether two codes say the same. */
export function sayCode(code: ScannedCode): string {
  switch (code.kind) {
    case 'id':
      return `id ${code.id}`;
    case 'stamp':
      return `stamp ${code.stamp}`;
    case 'layout-test':
      return 'layout-test';
    case 'calibration':
      return `calibration ${code.stock}/${code.printer}`;
    case 'ware':
      return `ware ${code.digits}`;
    default:
      return code satisfies never;
  }
}
