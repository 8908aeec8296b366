import type { ChildProcess } from 'node:child_process';
import { begin } from '../cli/tubwright.ts';

/** A running `tubwright start`. */
export interface RunningApp {
  readonly url: string;
  stop(): Promise<void>;
}

const READY_MS = 60_000;

/** Starts the built program as a keeper does, on any free port, and waits until it says where it is. */
export async function startApp(args: readonly string[] = ['--demo']): Promise<RunningApp> {
  const child = begin(['start', '--port', '0', ...args]);
  const url = await addressOf(child);
  return { url, stop: () => stopped(child) };
}

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    const timer = setTimeout(() => reject(new Error(`The app did not start: ${said}`)), READY_MS);
    const hear = (piece: Buffer): void => {
      said += piece.toString();
      const url = /https?:\/\/[\w.:[\]-]+/.exec(said)?.[0];
      if (url === undefined) return;
      clearTimeout(timer);
      resolve(url);
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('exit', () => reject(new Error(`The app ended before it was ready: ${said}`)));
  });
}

function stopped(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGINT');
  });
}
