import {
  type Reading,
  readShortLine,
  readStrokes,
  SCANNER_GAP_MS,
  type Stroke,
  type TypedReadOptions,
  type TypedScan,
} from './readings.ts';
import { onUsKeyboard } from './usKeyboard.ts';

/** What of a keydown event matters here; `timeStamp` in milliseconds, as the event carries it. */
export interface KeyStroke {
  readonly key: string;
  readonly code: string;
  readonly timeStamp: number;
  readonly repeat: boolean;
  readonly isComposing: boolean;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
}

/** The run of strokes so far, and what earlier scans taught. */
export interface TypedState {
  readonly run: readonly Stroke[];
  /** When the last scan had its last stroke: its Enter may still come, or a second one. */
  readonly finishedMs: number | null;
  /** When the last key before this run came; null if an Enter or a Tab ended what it belonged to. */
  readonly keyBeforeMs: number | null;
  /** The reading that was right when the two last differed. */
  readonly trusted: Reading;
}

/** What a stroke did: the state after it, a scan if one is complete, and whether this key belongs to the scan and nobody else. */
export interface TypedStep {
  readonly state: TypedState;
  readonly result?: TypedScan;
  readonly swallow: boolean;
}

/** The state before the first key. */
export const NO_STROKES: TypedState = { run: [], finishedMs: null, keyBeforeMs: null, trusted: 'key' };

/** A longer pause ends a run: radio scanners stutter, but not for longer. */
export const BREAK_MS = 250;
/** An id without a suffix is complete after this pause; anything else after {@link BREAK_MS}, for it could go on. */
export const IDLE_MS = 100;
/** A run is kept to this length; a text beyond 200 characters is refused anyway. */
const MOST = 300;

/**
 * Takes the next key and tells scanners from people by the pace of the keys alone, wherever the focus is. Enter and Tab
 * end a scan, and only then are they swallowed. Held keys, keys of an input method, and shortcuts are let through unseen.
 */
export function typedScan(state: TypedState, stroke: KeyStroke, options: TypedReadOptions = {}): TypedStep {
  if (isUnseen(stroke)) return { state, swallow: false };
  if (stroke.key === 'Enter' || stroke.key === 'Tab') return endByKey(state, stroke, options);
  const typed = asStroke(stroke);
  if (typed === null) return { state: { ...state, run: [], finishedMs: null }, swallow: false };
  const last = state.run.at(-1);
  if (last === undefined || stroke.timeStamp - last.atMs <= BREAK_MS) {
    return { state: { ...state, finishedMs: null, run: [...state.run, typed].slice(-MOST) }, swallow: false };
  }
  const step = finish(state, options) ?? { state, swallow: false };
  return { ...step, state: { ...step.state, run: [typed], finishedMs: null, keyBeforeMs: last.atMs } };
}

/**
 * The idle rule, to be asked some time after a key: finishes a scan that came without a suffix, and otherwise changes
 * nothing. `nowMs` is on the clock of the keys' `timeStamp`.
 */
export function typedIdle(state: TypedState, nowMs: number, options: TypedReadOptions = {}): TypedStep {
  const last = state.run.at(-1);
  if (last === undefined || nowMs - last.atMs < IDLE_MS) return { state, swallow: false };
  const step = finish(state, options);
  if (step === null) return { state, swallow: false };
  const whole = step.result.code.ok && step.result.code.value.kind === 'id';
  if (!whole && nowMs - last.atMs <= BREAK_MS) return { state, swallow: false };
  return { ...step, state: { ...step.state, finishedMs: last.atMs, keyBeforeMs: whole ? null : last.atMs } };
}

function endByKey(state: TypedState, stroke: KeyStroke, options: TypedReadOptions): TypedStep {
  const last = state.run.at(-1);
  if (last === undefined) {
    const late = state.finishedMs !== null && stroke.timeStamp - state.finishedMs <= SCANNER_GAP_MS;
    return { state: { ...state, finishedMs: null }, swallow: late };
  }
  const gapMs = stroke.timeStamp - last.atMs;
  const step = finish(state, options) ?? (gapMs <= SCANNER_GAP_MS ? finishShort(state, options) : null);
  if (step === null) return { state: { ...state, run: [], finishedMs: null, keyBeforeMs: null }, swallow: false };
  // After a break the scan was over without a suffix, and this key is the person's.
  if (gapMs > BREAK_MS) return step;
  // Some scales end a line with two such keys, and the second must press nothing that this scan has put there.
  return { ...step, state: { ...step.state, finishedMs: stroke.timeStamp }, swallow: true };
}

type Finished = TypedStep & { readonly result: TypedScan };

function finish(state: TypedState, options: TypedReadOptions): Finished | null {
  const result = readStrokes(state.run, state.trusted, { ...options, keyBeforeMs: state.keyBeforeMs });
  return result === null ? null : finished(state, result);
}

/** A few keys are taken for a scale's line only while somebody waits for a weight. */
function finishShort(state: TypedState, options: TypedReadOptions): Finished | null {
  const result =
    options.weighing === true
      ? readShortLine(state.run, state.trusted, { ...options, keyBeforeMs: state.keyBeforeMs })
      : null;
  return result === null ? null : finished(state, result);
}

function finished(state: TypedState, result: TypedScan): Finished {
  const differ = state.run.some((stroke) => stroke.key.toUpperCase() !== stroke.code);
  const taught = differ && result.code.ok && result.other === undefined;
  const trusted = taught ? result.reading : state.trusted;
  return { state: { run: [], finishedMs: null, keyBeforeMs: null, trusted }, result, swallow: false };
}

/** Keys that type nothing but may come with a scan, and the keys of an input method. */
const UNSEEN: readonly string[] = ['Shift', 'CapsLock', 'AltGraph', 'Process', 'Control', 'Alt', 'Meta', 'NumLock'];

function isUnseen({ repeat, isComposing, ctrlKey, metaKey, altKey, key }: KeyStroke): boolean {
  return repeat || isComposing || ctrlKey || metaKey || altKey || UNSEEN.includes(key);
}

/** Null for a key that types nothing, such as Backspace or an arrow: no scanner sends those. */
function asStroke(stroke: KeyStroke): Stroke | null {
  const dead = stroke.key === 'Dead' || stroke.key === 'Unidentified';
  if (!dead && [...stroke.key].length !== 1) return null;
  const key = dead ? '' : stroke.key;
  return { atMs: stroke.timeStamp, key, code: onUsKeyboard(stroke.code, stroke.shiftKey ? 'shifted' : 'plain') ?? key };
}
