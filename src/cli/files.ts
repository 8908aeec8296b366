import { open, rename, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { refusal, systemWords } from './refused.ts';

/** A file to be, whole or in pieces. */
export interface NewFile {
  readonly path: string;
  readonly pieces: Iterable<string | Uint8Array>;
}

/**
 * Writes files so that each is there whole or not at all: beside their places first, then all are moved in.
 * Refusals: `file-unwritable`, and then no file was touched.
 */
export async function writeWhole(files: readonly NewFile[]): Promise<void> {
  await refuseFolders(files);
  const beside = files.map(({ path }, at) => join(dirname(path), `.${basename(path)}.${process.pid}-${at}.new`));
  try {
    for (const [at, file] of files.entries()) await writeBeside(file, beside[at] ?? file.path);
    for (const [at, { path }] of files.entries()) await moved(beside[at] ?? path, path);
  } finally {
    await Promise.all(beside.map((path) => rm(path, { force: true })));
  }
}

async function writeBeside({ path, pieces }: NewFile, beside: string): Promise<void> {
  try {
    const file = await open(beside, 'w');
    try {
      for (const piece of pieces) await file.writeFile(piece);
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (error) {
    throw refusal('file-unwritable', { file: path, why: systemWords(error) });
  }
}

async function moved(from: string, to: string): Promise<void> {
  try {
    await rename(from, to);
  } catch (error) {
    throw refusal('file-unwritable', { file: to, why: systemWords(error) });
  }
}

/** What would stop the second of two moves is asked before the first. */
async function refuseFolders(files: readonly NewFile[]): Promise<void> {
  const seen = new Set<string>();
  for (const { path } of files) {
    if (seen.has(resolve(path)))
      throw refusal('file-unwritable', { file: path, why: 'two files would have this name' });
    seen.add(resolve(path));
    if (await isFolder(path)) throw refusal('file-unwritable', { file: path, why: 'it is a folder' });
  }
}

/** True for a folder that is there. */
export async function isFolder(path: string): Promise<boolean> {
  return stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
}
