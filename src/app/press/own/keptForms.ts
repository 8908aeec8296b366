/** The forms about paper that keep what is half typed. */
export type FormKind = 'stock' | 'printer' | 'measured';

/** A form as it stands: lines as typed, and ready choices. */
export type FormText = Readonly<Record<string, string | boolean>>;

/** What was half typed, and how the form stood when that was begun. */
export interface KeptForm<T extends FormText = FormText> {
  readonly began: FormText;
  readonly text: T;
}

/** More half-typed forms of a kind than these are not worth the room; the oldest goes first. */
const MOST = 12;

/** What was typed into a form of a paper or printer and neither saved nor given up; null where there is nothing of `like`'s shape. */
export function keptForm<T extends FormText>(
  kind: FormKind,
  of: string,
  like: T,
  storage: Storage = localStorage,
): KeptForm<T> | null {
  const { began, text } = readAll(kind, storage).get(of) ?? {};
  return began !== undefined && text !== undefined && isLike(text, like) ? { began, text } : null;
}

/** The paper or printer whose form was typed into last; null where nothing is kept. */
export function lastKept(kind: FormKind, storage: Storage = localStorage): string | null {
  return [...readAll(kind, storage).keys()].at(-1) ?? null;
}

/** Keeps a form on this device, also when the app is closed; one that stands as it began is forgotten. */
export function keepForm(kind: FormKind, of: string, form: KeptForm, storage: Storage = localStorage): void {
  const all = readAll(kind, storage);
  all.delete(of);
  if (!isSame(form.text, form.began)) all.set(of, form);
  writeAll(kind, all, storage);
}

/** Forgets a form that was saved or given up. */
export function forgetForm(kind: FormKind, of: string, storage: Storage = localStorage): void {
  const all = readAll(kind, storage);
  if (all.delete(of)) writeAll(kind, all, storage);
}

/** Whether two forms say the same, in whatever order. */
export function isSame(a: FormText, b: FormText): boolean {
  return Object.entries(a).every(([name, value]) => b[name] === value);
}

const keyOf = (kind: FormKind): string => `own-${kind}-drafts`;

function writeAll(kind: FormKind, all: ReadonlyMap<string, KeptForm>, storage: Storage): void {
  try {
    storage.setItem(keyOf(kind), JSON.stringify([...all].slice(-MOST)));
  } catch {
    // A full device must not stop anybody from typing; the form itself stays.
  }
}

/** By what it is about, the one that was typed into last at the end; what cannot be read is nothing. */
function readAll(kind: FormKind, storage: Storage): Map<string, KeptForm> {
  try {
    const read: unknown = JSON.parse(storage.getItem(keyOf(kind)) ?? '[]');
    return new Map(Array.isArray(read) ? read.filter(isEntry) : []);
  } catch {
    return new Map();
  }
}

function isEntry(data: unknown): data is [string, KeptForm] {
  if (!Array.isArray(data) || typeof data[0] !== 'string') return false;
  const form: unknown = data[1];
  return (
    typeof form === 'object' &&
    form !== null &&
    'began' in form &&
    'text' in form &&
    isText(form.began) &&
    isText(form.text)
  );
}

function isText(data: unknown): data is FormText {
  if (typeof data !== 'object' || data === null) return false;
  return Object.values(data).every((value) => typeof value === 'string' || typeof value === 'boolean');
}

function isLike<T extends FormText>(text: FormText, like: T): text is T {
  return Object.entries(like).every(([name, value]) => typeof text[name] === typeof value);
}
