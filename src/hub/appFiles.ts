import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { cacheOf, isPackable, typeOf } from './headers.ts';

/** One file of the built app, ready to be sent. */
export interface AppFile {
  readonly type: string;
  readonly cache: string;
  readonly tag: string;
  readonly plain: Buffer;
  /** Packed with gzip where that helps. */
  readonly packed: Buffer | null;
}

/** The built app by path. Only what was there when the hub started can be asked for, so no path leads outside. */
export interface AppFiles {
  find(path: string): Promise<AppFile | null>;
}

const pack = promisify(gzip);

/** Lists a directory of built files; an app that is not built yet has none. */
export async function appFiles(directory: string): Promise<AppFiles> {
  const paths = new Set(await list(directory));
  const ready = new Map<string, Promise<AppFile>>();
  const load = (path: string) => {
    const loading = ready.get(path) ?? read(directory, path);
    ready.set(path, loading);
    return loading;
  };
  return {
    async find(path) {
      const asked = path === '/' || (!paths.has(path) && isPageName(path)) ? '/index.html' : path;
      return paths.has(asked) ? load(asked) : null;
    },
  };
}

/** The app draws its own pages, such as `/a/7RMBN615`; a name with a dot is a file and must be there. */
function isPageName(path: string): boolean {
  return !path.slice(path.lastIndexOf('/')).includes('.');
}

async function list(directory: string): Promise<string[]> {
  const entries = await readdir(directory, { recursive: true, withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(directory.length).split(sep).join('/'));
}

async function read(directory: string, path: string): Promise<AppFile> {
  const plain = await readFile(join(directory, path));
  const tag = `"${createHash('sha256').update(plain).digest('base64url').slice(0, 22)}"`;
  const packed = isPackable(path) ? await pack(plain) : null;
  return { type: typeOf(path), cache: cacheOf(path), tag, plain, packed };
}
