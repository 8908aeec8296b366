import { createReadStream } from 'node:fs';
import { type FileHandle, open, rename } from 'node:fs/promises';
import { type Problem, problem } from '../../core/index.ts';
import { LogFailure } from '../eventLog.ts';
import { MORE } from '../ndjson.ts';
import { appendDurably } from './durable.ts';
import { LineIndex } from './lineIndex.ts';
import { readSeals, Sealer } from './seals.ts';

/** A log file, open for appending. */
export interface OpenedFile {
  readonly file: FileHandle;
  readonly index: LineIndex;
  readonly sealer: Sealer;
  readonly problems: readonly Problem[];
}

const NEWLINE = 10;

/**
 * Opens or makes a log file. A writing that was torn by a crash was never confirmed: its bytes go to `PATH.torn`, and
 * the log ends before it. A broken line keeps its place. Problems: `file-cut`, `file-edited`, `line-broken`.
 */
export async function openFile(path: string): Promise<OpenedFile> {
  const file = await open(path, 'a+');
  try {
    const scan = await scanFile(path);
    if (scan.torn.length > 0) await setAside(path, file, scan);
    scan.sealer.readAll();
    if (!scan.sealer.broken) return { file, ...scan };
    const sealer = await sealAnew(path);
    const edited = problem('file-edited', {
      why: `${path} differs from its seals, which are now in ${path}.seals.old`,
    });
    return { file, index: scan.index, sealer, problems: [...scan.problems, edited] };
  } catch (error) {
    await file.close();
    throw error;
  }
}

interface Scan {
  readonly index: LineIndex;
  readonly sealer: Sealer;
  readonly problems: readonly Problem[];
  readonly torn: Uint8Array;
}

async function scanFile(path: string): Promise<Scan> {
  const index = new LineIndex();
  const sealer = new Sealer(`${path}.seals`, await readSeals(`${path}.seals`));
  const problems: Problem[] = [];
  // The lines of a writing are taken in only when its last one is there.
  let pending: Buffer[] = [];
  for await (const line of linesIn(path)) {
    pending.push(line);
    if (line.at(-1) !== NEWLINE || line.at(-2) === MORE.charCodeAt(0)) continue;
    for (const whole of pending) problems.push(...take(path, index, whole));
    sealer.read(Buffer.concat(pending));
    pending = [];
  }
  const torn = Buffer.concat(pending);
  if (torn.length > 0) problems.push(problem('file-cut', { line: index.size + pending.length, sound: index.size }));
  return { index, sealer, problems, torn };
}

function take(path: string, index: LineIndex, line: Buffer): Problem[] {
  const text = line.toString('utf8');
  if (index.add(text, line.length)) return [];
  if (text.startsWith('{"seal"')) throw new LogFailure(problem('log-is-export', { path }));
  return [problem('line-broken', { line: index.size, why: 'it holds no event' }, path)];
}

async function setAside(path: string, file: FileHandle, { torn, index }: Scan): Promise<void> {
  await appendDurably(`${path}.torn`, torn);
  await file.truncate(index.bytes);
  await file.sync();
}

/** Begins the seals afresh over what is there, so that later changes are noticed again. */
async function sealAnew(path: string): Promise<Sealer> {
  await rename(`${path}.seals`, `${path}.seals.old`);
  const sealer = new Sealer(`${path}.seals`, []);
  for await (const piece of createReadStream(path)) sealer.read(piece as Buffer);
  await sealer.seal();
  return sealer;
}

async function* linesIn(path: string): AsyncGenerator<Buffer> {
  let rest: Buffer = Buffer.alloc(0);
  for await (const piece of createReadStream(path, { highWaterMark: 1 << 20 })) {
    const bytes = Buffer.concat([rest, piece as Buffer]);
    let from = 0;
    for (let end = bytes.indexOf(NEWLINE); end >= 0; end = bytes.indexOf(NEWLINE, from)) {
      yield bytes.subarray(from, end + 1);
      from = end + 1;
    }
    rest = bytes.subarray(from);
  }
  if (rest.length > 0) yield rest;
}
