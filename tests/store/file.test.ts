import { spawn, spawnSync } from 'node:child_process';
import { appendFile, mkdtemp, readFile, rm, stat, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkFile, type FileLog, fileLog } from '../../src/store/file/index.ts';
import { eventLine, MORE, readLog, writeLog } from '../../src/store/index.ts';
import { bundleForNode } from '../tools/bundle.ts';
import { contract, ids, readAll } from './contract.ts';
import { event, events, idOf } from './sample.ts';

let folder: string;
let count = 0;
const fresh = () => join(folder, `log-${count++}.ndjson`);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'tubwright-file-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

contract({ name: 'the file', durable: true, open: (place) => fileLog(join(folder, place)) });

/** Writes events in batches of one and closes. */
async function written(path: string, n: number): Promise<void> {
  const log = await fileLog(path);
  for (const one of events(0, n)) await log.append([one]);
  await log.close();
}

async function using<T>(path: string, work: (log: FileLog) => Promise<T>): Promise<T> {
  const log = await fileLog(path);
  try {
    return await work(log);
  } finally {
    await log.close();
  }
}

describe('the file', () => {
  test('is one event a line and can be read as a log', async () => {
    const path = fresh();
    await written(path, 3);
    expect(readLog(await readFile(path, 'utf8'))).toEqual({ events: events(0, 3), problems: [], sealed: false });
  });

  test('cut in its last line sets the rest aside and goes on', async () => {
    const path = fresh();
    await written(path, 3);
    const size = (await stat(path)).size;
    await rm(`${path}.seals`);
    await truncate(path, size - 20);
    await using(path, async (log) => {
      expect(log.problems.map(({ code, message }) => [code, message])).toEqual([
        ['file-cut', 'The file ends in the middle of line 3.'],
      ]);
      expect(ids(await readAll(log, 10))).toEqual(ids(events(0, 2)));
      await log.append([event(2)]);
      expect(ids(await readAll(log, 10))).toEqual(ids(events(0, 3)));
    });
    expect(await readFile(`${path}.torn`, 'utf8')).toBe(eventLine(event(2)).slice(0, -19));
  });

  test('torn in the middle of a writing of several events has none of them', async () => {
    const path = fresh();
    await written(path, 2);
    const torn = `${eventLine(event(5))}${MORE}\n${eventLine(event(6))}${MORE}\n`;
    await appendFile(path, torn);
    await using(path, async (log) => {
      expect(log.problems.map(({ code }) => code)).toEqual(['file-cut']);
      expect(ids(await readAll(log, 10))).toEqual(ids(events(0, 2)));
    });
    expect(await readFile(`${path}.torn`, 'utf8')).toBe(torn);
  });

  test('that lost confirmed events says so: its seals know better', async () => {
    const path = fresh();
    await written(path, 3);
    const whole = await readFile(path, 'utf8');
    await writeFile(path, `${whole.split('\n').slice(0, 2).join('\n')}\n`);
    expect((await checkFile(path)).problems.map(({ code }) => code)).toEqual(['file-edited']);
    await using(path, async (log) => {
      expect(log.problems.map(({ code }) => code)).toEqual(['file-edited']);
      expect(await log.head()).toBe(2);
    });
    await using(path, async (log) => expect(log.problems).toEqual([]));
  });

  test('with a broken line keeps that line’s place and passes on all others', async () => {
    const path = fresh();
    const lines = [eventLine(event(0)), '{"id": oops', eventLine(event(2))];
    await writeFile(path, `${lines.join('\n')}\n`);
    await using(path, async (log) => {
      expect(log.problems).toMatchObject([{ code: 'line-broken', message: expect.stringContaining('Line 2') }]);
      expect(await log.lines(0, 10)).toEqual({ lines: [lines[0], lines[2]], next: 3, head: 3 });
      expect(await log.lines(1, 1)).toEqual({ lines: [], next: 2, head: 3 });
    });
  });

  test('is open once at a time', async () => {
    const path = fresh();
    await using(path, async () => {
      await expect(fileLog(path)).rejects.toMatchObject({ problem: { code: 'log-in-use' } });
    });
    await writeFile(`${path}.lock`, String(process.ppid));
    await expect(fileLog(path)).rejects.toMatchObject({
      problem: { code: 'log-in-use', message: expect.stringContaining(String(process.ppid)) },
    });
    await writeFile(`${path}.lock`, '999999999');
    await using(path, async (log) => expect(await log.head()).toBe(0));
  });

  test('is not an export', async () => {
    const path = fresh();
    await writeFile(path, writeLog(events(0, 2)));
    await expect(fileLog(path)).rejects.toMatchObject({ problem: { code: 'log-is-export' } });
  });

  test('in a directory that is not there says so', async () => {
    await expect(fileLog(join(folder, 'nowhere', 'x'))).rejects.toMatchObject({ problem: { code: 'storage-failed' } });
  });

  test('gives pages that stay below a size however long the notes are', async () => {
    await using(fresh(), async (log) => {
      const long = (n: number) => event({ n, kind: 'note-written', payload: { words: 'x'.repeat(100_000) } });
      for (let n = 0; n < 200; n += 50) await log.append(Array.from({ length: 50 }, (_, at) => long(n + at)));
      const page = await log.lines(0, 5000);
      expect(page.lines.length).toBeGreaterThan(20);
      expect(page.lines.join('').length).toBeLessThan(8_000_000);
      expect((await readAll(log, 5000)).length).toBe(200);
    });
  });

  test('is proved sound, and stays provable while it grows past a seal', async () => {
    const path = fresh();
    const log = await fileLog(path);
    for (let n = 0; n < 12_000; n += 500) await log.append(events(n, n + 500));
    await log.append([event(12_000)]);
    expect(await checkFile(path)).toEqual({ events: 12_001, problems: [], proof: 'partly' });
    await log.close();
    expect(await checkFile(path)).toEqual({ events: 12_001, problems: [], proof: 'sealed' });
    const text = await readFile(path, 'utf8');
    await writeFile(path, text.replace('"weightG":107', '"weightG":106'));
    expect((await checkFile(path)).problems.map(({ code }) => code)).toEqual(['file-edited']);
  });

  test.each([
    ['an export', writeLog(events(0, 4)), [], 'sealed'],
    ['an export that was edited', writeLog(events(0, 4)).replace('"Ada"', '"Eve"'), ['file-edited'], 'unsealed'],
    ['an export that was cut', writeLog(events(0, 4)).slice(0, 700), ['file-cut'], 'unsealed'],
    [
      'an export with a byte that is no UTF-8',
      `${writeLog(events(0, 4))}`.replace('Ada', 'Ad\u00ff'),
      ['file-edited'],
      'unsealed',
    ],
    ['a plain log', `${events(0, 4).map(eventLine).join('\n')}\n`, [], 'unsealed'],
  ])('%s is checked', async (_what, text, problems, proof) => {
    const path = fresh();
    await writeFile(path, text, 'latin1');
    const checked = await checkFile(path);
    expect(checked.problems.map(({ code }) => code)).toEqual(problems);
    expect(checked.proof).toBe(proof);
  });
});

describe('a program that writes the file', () => {
  let child: string;
  beforeAll(async () => {
    child = await bundleForNode(fileURLToPath(new URL('./fileChild.ts', import.meta.url)));
  }, 60_000);
  afterAll(() => rm(dirname(child), { recursive: true, force: true }));

  test('and is killed at any time loses nothing it confirmed, and leaves no half writing', async () => {
    const path = fresh();
    let confirmed = 0;
    for (let round = 0; round < 5; round++) {
      confirmed = await killedAfter(child, path, confirmed, 40 + round * 23);
      const head = await using(path, async (log) => {
        const all = ids(await readAll(log, 1000));
        expect(all.slice(0, confirmed)).toEqual(Array.from({ length: confirmed }, (_, n) => idOf(n)));
        return log.head();
      });
      expect(head % 3).toBe(0);
      confirmed = head;
    }
  }, 60_000);

  test('onto a full disk is told so, keeps what it confirmed and nothing of the rest', async () => {
    const path = fresh();
    // A limit on the size of files stands in for a full disk: the system stops the write half way through.
    const command = `ulimit -f 64; exec "${process.execPath}" "${child}" "${path}"`;
    const { stdout } = spawnSync('bash', ['-c', command], { encoding: 'utf8' });
    const said = stdout.trim().split('\n');
    const confirmed = Number(said.at(-2));
    expect(confirmed).toBeGreaterThan(30);
    expect(said.at(-1)).toBe(`storage-full ${confirmed}`);
    await using(path, async (log) => {
      expect(log.problems).toEqual([]);
      expect(ids(await readAll(log, 1000))).toEqual(Array.from({ length: confirmed }, (_, n) => idOf(n)));
    });
  }, 60_000);
});

/** Starts the program, kills it after some confirmations and gives the last number that it had confirmed. */
function killedAfter(child: string, path: string, begin: number, lines: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const program = spawn(process.execPath, [child, path, String(begin)], { stdio: ['ignore', 'pipe', 'inherit'] });
    let said = '';
    program.stdout.on('data', (piece: Buffer) => {
      said += piece.toString();
      if (said.split('\n').length > lines) program.kill('SIGKILL');
    });
    program.once('error', reject);
    program.once('close', () => resolve(Number(said.split('\n').at(-2))));
  });
}
