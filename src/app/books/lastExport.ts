import { type ReadonlySignal, signal } from '@preact/signals';

const KEY = 'exported';
const at = signal(kept(localStorage));

/** When this device last gave its log out as a file, in ms since 1970; null if it never did. */
export const lastExport: ReadonlySignal<number | null> = at;

export function markExport(nowMs: number, storage: Storage = localStorage): void {
  at.value = nowMs;
  storage.setItem(KEY, String(nowMs));
}

function kept(storage: Storage): number | null {
  const ms = Number(storage.getItem(KEY));
  return Number.isFinite(ms) && ms > 0 ? ms : null;
}
