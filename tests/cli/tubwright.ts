import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

/** The folder of the repository. */
export const ROOT = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
/** The built program, as npm links it. */
export const MAIN = join(ROOT, 'dist', 'src', 'cli', 'main.js');

/** What a run left behind. */
export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Where a run takes place and what is typed into it. */
export interface Setting {
  readonly input?: string;
  readonly cwd?: string;
  readonly main?: string;
}

/** Runs the built program to its end. */
export function tubwright(args: readonly string[], setting: Setting = {}): Promise<Ran> {
  const child = begin(args, setting);
  child.stdin?.on('error', () => undefined);
  child.stdin?.end(setting.input ?? '');
  return ended(child);
}

/** Starts the built program and leaves it running. */
export function begin(args: readonly string[], { cwd = ROOT, main = MAIN }: Setting = {}): ChildProcess {
  refuseStale();
  return spawn(process.execPath, [main, ...args], { cwd, stdio: ['pipe', 'pipe', 'pipe'] });
}

/** What a running program leaves behind when it ends. */
export function ended(child: ChildProcess): Promise<Ran> {
  let [out, err] = ['', ''];
  child.stdout?.setEncoding('utf8').on('data', (piece: string) => {
    out += piece;
  });
  child.stderr?.setEncoding('utf8').on('data', (piece: string) => {
    err += piece;
  });
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

/** A folder for the files of one test file, gone afterwards. */
export function freshFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'tubwright-cli-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

let isFresh = false;

/** A test of yesterday's program proves nothing. */
function refuseStale(): void {
  if (isFresh) return;
  const sources = join(ROOT, 'src', 'cli');
  const newest = Math.max(
    ...readdirSync(sources, { recursive: true }).map((name) => statSync(join(sources, String(name))).mtimeMs),
  );
  const info = join(ROOT, 'dist', '.build', 'cli.tsbuildinfo');
  if (!existsSync(MAIN) || statSync(info).mtimeMs < newest)
    throw new Error('The program is not built: run `npx tsc -b` first.');
  isFresh = true;
}
