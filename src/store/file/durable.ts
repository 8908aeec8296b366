import { open, rename } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Makes the names in a directory durable, after files were made or renamed in it. */
export async function syncDirectory(path: string): Promise<void> {
  const directory = await open(path, 'r');
  try {
    await directory.sync();
  } finally {
    await directory.close();
  }
}

/** Puts text at the end of a file and waits for the disk. */
export async function appendDurably(path: string, bytes: Uint8Array): Promise<void> {
  const file = await open(path, 'a');
  try {
    await file.appendFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Replaces a file whole: after a crash it has the old text or the new one, never half of either. */
export async function replaceDurably(path: string, text: string): Promise<void> {
  const file = await open(`${path}.new`, 'w');
  try {
    await file.writeFile(text);
    await file.sync();
  } finally {
    await file.close();
  }
  await rename(`${path}.new`, path);
  await syncDirectory(dirname(path));
}
