import type { Problem, Result } from '../../src/core/index.ts';
import { type PayloadOptions, readPayload, type ScannedCode } from '../payload.ts';

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
  /** The `timeStamp` of the scan's first key; what was typed earlier is a person's and stays in the field. */
  readonly startedMs: number;
}

/** A scanner's median gap is at most this; people type at 90 to 180 ms a key (measured). */
export const SCANNER_GAP_MS = 40;
/** Nothing of ours is shorter than an id. */
const FEWEST = 8;

/**
 * Reads the scan at the end of a run of strokes, or null if its pace is a person's. The scan is the longest stretch with
 * a scanner's median gap; if that is no sound code, what follows each longer gap in it is tried, for a person may have
 * typed just before. Both readings are tried; `trusted` is the one that was right when the two last differed.
 */
export function readStrokes(run: readonly Stroke[], trusted: Reading, options: PayloadOptions): TypedScan | null {
  const starts = startsOf(run);
  const longest = starts.findIndex((start) => hasScannerPace(run.slice(start)));
  const first = starts[longest];
  if (first === undefined) return null;
  for (const start of starts.slice(longest)) {
    const scan = readFrom(run.slice(start), trusted, options);
    if (scan.code.ok) return scan;
  }
  return readFrom(run.slice(first), trusted, options);
}

function hasScannerPace(strokes: readonly Stroke[]): boolean {
  if (strokes.length < FEWEST) return false;
  const gaps = strokes.slice(1).map((stroke, i) => stroke.atMs - (strokes[i]?.atMs ?? stroke.atMs));
  return (gaps.sort((a, b) => a - b)[Math.floor(gaps.length / 2)] ?? 0) <= SCANNER_GAP_MS;
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
  const text = strokes.map((stroke) => stroke[reading]).join('');
  return { text, reading, code: readPayload(text, options) };
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
    default:
      return code satisfies never;
  }
}
