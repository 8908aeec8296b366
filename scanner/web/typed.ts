import type { PayloadOptions } from '../payload.ts';
import { BREAK_MS, IDLE_MS, NO_STROKES, type TypedStep, typedIdle, typedScan } from '../typed/machine.ts';
import type { TypedScan } from '../typed/readings.ts';
import { holdBlanks } from './heldBlank.ts';
import { type Snapshot, snapshotOf } from './snapshot.ts';

/** How typed scans are listened to. */
export interface TypedOptions extends PayloadOptions {
  readonly onScan: (scan: TypedScan) => void;
  /** Whether somebody waits for a weight now, which lets short lines of a scale count. */
  readonly weighs?: () => boolean;
}

interface Kept {
  readonly atMs: number;
  readonly snapshot: Snapshot;
}

/** A timer this late means that the page was busy, and keys may be waiting behind it. */
const LATE_MS = 50;
/** Timers may fire a little early, and a little early is too early for the idle rule. */
const MARGIN_MS = 10;

/**
 * Listens for scanners that type, whatever has the focus, until the returned function is called. A field that the scan
 * wrote into gets back what it held; only a scan's own Enter or Tab is kept from the page.
 */
export function listenForTypedScans(target: Window, options: TypedOptions): () => void {
  let state = NO_STROKES;
  let kept: readonly Kept[] = [];
  let timer: ReturnType<typeof setTimeout> | undefined;
  let cameMs = 0;
  const weighs = options.weighs ?? (() => false);
  const blanks = holdBlanks(weighs);

  const take = (step: TypedStep, before: readonly Kept[]) => {
    state = step.state;
    const { result } = step;
    if (result === undefined) return;
    before.find(({ atMs }) => atMs >= result.startedMs)?.snapshot.restore();
    options.onScan(result);
  };
  const wait = (ms: number) => {
    clearTimeout(timer);
    const dueMs = performance.now() + ms;
    timer = setTimeout(() => (performance.now() - dueMs > LATE_MS ? wait(ms) : rest(ms)), ms);
  };
  const rest = (ms: number) => {
    // Counted from when the key came in, not from its own time: a busy browser hands keys over late.
    const lastMs = state.run.at(-1)?.atMs ?? 0;
    take(typedIdle(state, lastMs + performance.now() - cameMs, options), kept);
    if (state.run.length > 0 && ms <= IDLE_MS + MARGIN_MS) wait(BREAK_MS - IDLE_MS);
  };
  const onKey = (event: KeyboardEvent) => {
    blanks.down(event);
    // A scan that a break ends needs the fields as they were before it; the new key belongs to the next run.
    const before = kept;
    const { run } = state;
    const step = typedScan(state, event, { ...options, weighing: weighs() });
    if (step.swallow) {
      event.preventDefault();
      event.stopImmediatePropagation();
    }
    take(step, before);
    if (state.run === run) return;
    cameMs = performance.now();
    const now: Kept = { atMs: event.timeStamp, snapshot: snapshotOf(target.document.activeElement) };
    kept = state.run.length > 1 ? [...kept, now] : [now];
    if (state.run.length > 0) wait(IDLE_MS + MARGIN_MS);
  };

  target.addEventListener('keydown', onKey, { capture: true });
  target.addEventListener('keyup', blanks.up, { capture: true });
  return () => {
    clearTimeout(timer);
    blanks.stop();
    target.removeEventListener('keydown', onKey, { capture: true });
    target.removeEventListener('keyup', blanks.up, { capture: true });
  };
}
