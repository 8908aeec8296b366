import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { build } from 'vite';

/** A page that runs one bundled script, on an address of its own. */
export interface ServedPage {
  readonly url: string;
  close(): Promise<void>;
}

/** Bundles a TypeScript entry for the browser and serves it as `http://localhost:…/`. */
export async function serveEntry(entry: string): Promise<ServedPage> {
  const script = await bundle(entry);
  const server = createServer((request, response) => {
    const asked = request.url === '/entry.js';
    response.setHeader('content-type', asked ? 'text/javascript' : 'text/html; charset=utf-8');
    response.end(asked ? script : '<!doctype html><title>test</title><script type="module" src="/entry.js"></script>');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  const close = () => new Promise<void>((resolve) => void server.close(() => resolve()));
  return { url: `http://localhost:${port}/`, close };
}

async function bundle(entry: string): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    build: { write: false, minify: false, target: 'es2023', rollupOptions: { input: entry, output: { format: 'es' } } },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((one) => ('output' in one ? one.output : []));
  const script = outputs.find((one) => one.type === 'chunk');
  if (script === undefined) throw new Error(`Nothing was bundled from ${entry}.`);
  return script.code;
}
