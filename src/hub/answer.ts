import type { IncomingMessage, ServerResponse } from 'node:http';
import { promisify } from 'node:util';
import { constants, gzip } from 'node:zlib';
import type { Problem } from '../core/index.ts';
import type { AppFile } from './appFiles.ts';

const pack = promisify(gzip);
/** Below this packing costs more than it saves. */
const WORTH_PACKING = 2_000;

/** Sends JSON text, packed for who accepts that. */
export async function sendJson(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  json: string,
): Promise<void> {
  const plain = Buffer.from(json);
  const packed = acceptsGzip(request) && plain.length >= WORTH_PACKING;
  const body = packed ? await pack(plain, { level: constants.Z_BEST_SPEED }) : plain;
  response.writeHead(status, {
    'content-type': 'application/json; charset=utf-8',
    'content-length': body.length,
    'cache-control': 'no-store',
    vary: 'accept-encoding',
    ...(packed ? { 'content-encoding': 'gzip' } : {}),
  });
  response.end(request.method === 'HEAD' ? undefined : body);
}

/** Says no in words. */
export function sendProblem(
  request: IncomingMessage,
  response: ServerResponse,
  status: number,
  problem: Problem,
): Promise<void> {
  return sendJson(request, response, status, JSON.stringify({ problem }));
}

/** Sends a plain line. */
export function sendText(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' });
  response.end(`${text}\n`);
}

/** Sends a file of the app, or that it has not changed. */
export function sendFile(request: IncomingMessage, response: ServerResponse, file: AppFile): void {
  const head = { 'cache-control': file.cache, etag: file.tag, vary: 'accept-encoding' };
  if (request.headers['if-none-match'] === file.tag) {
    response.writeHead(304, head);
    response.end();
    return;
  }
  const packed = acceptsGzip(request) ? file.packed : null;
  const body = packed ?? file.plain;
  const encoding = packed === null ? {} : { 'content-encoding': 'gzip' };
  response.writeHead(200, { ...head, ...encoding, 'content-type': file.type, 'content-length': body.length });
  response.end(request.method === 'HEAD' ? undefined : body);
}

function acceptsGzip({ headers }: IncomingMessage): boolean {
  return /\bgzip\b/.test(String(headers['accept-encoding'] ?? ''));
}
