import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';

/** Bundles a TypeScript entry into one program for Node, in a temporary directory; gives its path. */
export async function bundleForNode(entry: string): Promise<string> {
  const outDir = await mkdtemp(join(tmpdir(), 'tubwright-child-'));
  await build({
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true, target: 'node' },
    build: { ssr: entry, outDir, minify: false, rollupOptions: { output: { entryFileNames: 'child.mjs' } } },
  });
  return join(outDir, 'child.mjs');
}
