import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import { SECURITY_HEADERS } from '../../src/hub/headers.ts';

/** A page with the season planner on its window, built as the app is and served under the hub's own headers. */
export interface PlannerPage {
  readonly url: string;
  close(): Promise<void>;
}

const BODY = '<!doctype html><meta charset="utf-8"><title>plan</title><script type="module" src="/main.js"></script>';

/** Builds and serves the page from a temporary directory, which goes when it is closed. */
export async function servePlanner(): Promise<PlannerPage> {
  const root = await mkdtemp(join(tmpdir(), 'tubwright-planner-'));
  const part = fileURLToPath(new URL('../../src/app/season/planning.ts', import.meta.url));
  await writeFile(join(root, 'index.html'), BODY);
  await writeFile(
    join(root, 'main.js'),
    `import { startPlan } from ${JSON.stringify(part)};
    window.startPlan = startPlan;`,
  );
  const common = { root, configFile: false, logLevel: 'error', worker: { format: 'es' } } as const;
  await build({ ...common, build: { outDir: 'out', target: 'es2022', assetsInlineLimit: 0 } });
  const server = await preview({
    ...common,
    build: { outDir: 'out' },
    preview: { port: 0, host: 'localhost', headers: SECURITY_HEADERS },
  });
  const close = async () => {
    await server.close();
    await rm(root, { recursive: true });
  };
  return { url: server.resolvedUrls?.local[0] ?? '', close };
}
