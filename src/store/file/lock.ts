import { open, readFile, rm } from 'node:fs/promises';
import { problem } from '../../core/index.ts';
import { LogFailure } from '../eventLog.ts';

const mine = new Set<string>();

/** Makes this program the only writer of a file; gives back how to let go. Rejects with `log-in-use`. */
export async function lock(path: string): Promise<() => Promise<void>> {
  const note = `${path}.lock`;
  if (mine.has(note)) throw inUse(path, process.pid);
  mine.add(note);
  try {
    await take(path, note);
  } catch (error) {
    mine.delete(note);
    throw error;
  }
  return async () => {
    mine.delete(note);
    await rm(note, { force: true });
  };
}

async function take(path: string, note: string): Promise<void> {
  const holder = Number.parseInt(await readFile(note, 'utf8').catch(() => ''), 10);
  if (Number.isInteger(holder) && holder !== process.pid && isAlive(holder)) throw inUse(path, holder);
  // Left by a program that was killed, or not there: either way the file is free.
  await rm(note, { force: true });
  const file = await open(note, 'wx');
  await file.writeFile(String(process.pid));
  await file.close();
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

function inUse(path: string, pid: number): LogFailure {
  return new LogFailure(problem('log-in-use', { path, pid, lock: `${path}.lock` }));
}
