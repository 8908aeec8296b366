import type { ChildProcess } from 'node:child_process';

/** A running `tubwright start`. */
export interface RunningApp {
  readonly url: string;
  stop(): Promise<void>;
}

const READY_MS = 60_000;

/** Waits until a started program says where it is. */
export async function whenReady(child: ChildProcess): Promise<RunningApp> {
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
    if (child.exitCode !== null) return resolve();
    child.once('exit', () => resolve());
    child.kill('SIGINT');
  });
}
