/** What the browser says of the room that the log lives in. */
export interface StorageState {
  readonly kept: 'kept' | 'may-be-cleared' | 'unknown';
  readonly usedBytes: number | null;
  readonly roomBytes: number | null;
}

/** Pages without https have no storage manager at all, though the types say so. */
const manager = (): StorageManager | undefined => navigator.storage as StorageManager | undefined;

export async function lookAtStorage(): Promise<StorageState> {
  const storage = manager();
  if (storage === undefined) return { kept: 'unknown', usedBytes: null, roomBytes: null };
  const [persisted, { usage, quota }] = await Promise.all([storage.persisted(), storage.estimate()]);
  return { kept: persisted ? 'kept' : 'may-be-cleared', usedBytes: usage ?? null, roomBytes: quota ?? null };
}

/** Asks the browser to keep the log even when the disk is full; true if it will. */
export async function askToPersist(): Promise<boolean> {
  return (await manager()?.persist()) ?? false;
}
