import { begin } from '../cli/tubwright.ts';
import { type RunningApp, whenReady } from './runningApp.ts';

export type { RunningApp } from './runningApp.ts';

/** Starts the built program as a keeper does, on any free port, and waits until it says where it is. */
export function startApp(args: readonly string[] = ['--demo']): Promise<RunningApp> {
  return whenReady(begin(['start', '--port', '0', ...args]));
}
