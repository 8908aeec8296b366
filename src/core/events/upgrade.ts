/**
 * Brings an event of an older shape up to the present one. It is pure, and called when reading only: what is stored
 * stays as it was written. Version 1 is the first, so nothing older exists; an event without a version is read as 1.
 */
export function upgrade(data: unknown): unknown {
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return data;
  return 'v' in data ? data : { ...data, v: 1 };
}
