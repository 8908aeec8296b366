import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, preview } from 'vite';
import type { Raster } from './raster.ts';

/** A page with the browser part of the scanner on its window, built as the app is. */
export interface ScannerPage {
  readonly url: string;
  close(): Promise<void>;
}

const BODY = `<!doctype html><meta charset="utf-8"><div id="view" style="width: 360px"></div>
<input id="name" value="abc"><form id="form"><input id="note"></form><script type="module" src="/main.js"></script>`;

/** Builds and serves the page from a temporary directory, which goes when it is closed. */
export async function serveScanner(): Promise<ScannerPage> {
  const root = await mkdtemp(join(tmpdir(), 'tubwright-scanner-'));
  const part = (path: string) => JSON.stringify(fileURLToPath(new URL(`../../scanner/${path}`, import.meta.url)));
  const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
  await writeFile(join(root, 'index.html'), BODY);
  await writeFile(
    join(root, 'main.js'),
    `import * as web from ${part('web/index.ts')};
    import wasmUrl from ${JSON.stringify(`${wasm}?url`)};
    const makeWorker = () => new Worker(new URL(${part('worker/decodeWorker.ts')}, import.meta.url), { type: 'module' });
    const decoding = web.makeDecoding({ makeWorker, wasmUrl });
    window.scanner = { ...web, decoding, makeWorker, wasmUrl, camera: web.makeCamera({ decoding }) };`,
  );
  const common = { root, configFile: false, logLevel: 'error', worker: { format: 'es' } } as const;
  await build({ ...common, build: { outDir: 'out', target: 'es2022' } });
  const server = await preview({ ...common, build: { outDir: 'out' }, preview: { port: 0, host: 'localhost' } });
  const close = async () => {
    await server.close();
    await rm(root, { recursive: true });
  };
  return { url: server.resolvedUrls?.local[0] ?? '', close };
}

/** What a fake camera shows, over and over: a YUV4MPEG2 film (as Chromium takes it) of gray frames of one size. */
export async function writeFilm(path: string, frames: readonly Raster[]): Promise<void> {
  const [first] = frames;
  if (first === undefined) throw new RangeError('a film has a frame');
  const { width, height } = first;
  const colour = Buffer.alloc((width * height) / 2, 128);
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F20:1 Ip A1:1 C420jpeg\n`);
  const rest = frames.flatMap(({ data }) => [Buffer.from('FRAME\n'), Buffer.from(data), colour]);
  await writeFile(path, Buffer.concat([head, ...rest]));
}
