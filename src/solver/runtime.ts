import type { Highs } from 'highs';

let running: Promise<Highs> | null = null;

/** The solver, loaded at its first use and kept: it takes 3.5 MB. */
export function loadSolver(locate?: (file: string) => string): Promise<Highs> {
  running ??= load(locate);
  return running;
}

/** After a failure the next use begins with a fresh one. */
export function forgetSolver(): void {
  running = null;
}

async function load(locate?: (file: string) => string): Promise<Highs> {
  const { default: highs } = await import('highs');
  return highs(locate === undefined ? {} : { locateFile: locate });
}
