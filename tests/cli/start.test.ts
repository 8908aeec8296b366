import type { ChildProcess } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { begin, ended, freshFolder, MAIN, type Ran, ROOT, tubwright } from './tubwright.ts';

const folder = freshFolder();
const running: ChildProcess[] = [];
afterEach(() => {
  for (const child of running.splice(0)) child.kill('SIGKILL');
});

interface Started {
  readonly url: string;
  readonly child: ChildProcess;
  readonly end: Promise<Ran>;
  readonly said: () => string;
}

/** Starts the hub on a free port and waits until it says that it is ready. */
async function start(...more: string[]): Promise<Started> {
  const child = begin(['start', '--port', '0', ...more], { cwd: folder });
  running.push(child);
  const end = ended(child);
  let said = '';
  const ready = new Promise<string>((resolve, reject) => {
    child.stdout?.on('data', (piece: string) => {
      said += piece;
      const url = /Tubwright is at (\S+)/.exec(said)?.[1];
      if (url !== undefined && said.includes('Ctrl-C closes it')) resolve(url);
    });
    end.then(({ err }) => reject(new Error(`It ended before it was ready: ${err}`)), reject);
  });
  return { url: await ready, child, end, said: () => said };
}

describe('start', () => {
  it('serves the app, shows its address as a code, and ends cleanly on Ctrl-C', async () => {
    const { url, child, end, said } = await start('--data', join(folder, 'data'));
    const page = await fetch(url);
    expect([page.status, await page.text()]).toEqual([200, expect.stringMatching(/<html/i)]);
    expect(said()).toMatch(/█ ▄▄▄▄▄ █/);
    expect(said()).toContain(`Kept in ${join(folder, 'data')}`);
    expect(existsSync(join(folder, 'data', 'events.ndjson.lock'))).toBe(true);
    child.kill('SIGINT');
    expect(await end).toMatchObject({ code: 0, err: '', out: expect.stringMatching(/closing …\n$/) });
    expect(existsSync(join(folder, 'data', 'events.ndjson.lock'))).toBe(false);
  });

  it('shows the demo facility without leaving anything behind', async () => {
    const { url, child, end, said } = await start('--demo');
    expect((await fetch(url)).status).toBe(200);
    expect(said()).toMatch(/Kept in memory only/);
    expect(existsSync(join(folder, 'tubwright-data'))).toBe(false);
    child.kill('SIGTERM');
    expect((await end).code).toBe(0);
  });

  it('tells a whole network where it is, and that a camera needs https or localhost', async () => {
    const { url, said } = await start('--demo', '--host', '0.0.0.0');
    expect(url).toMatch(/^http:\/\/localhost:\d+\/$/);
    expect(said()).toMatch(/the camera only over https or on localhost/);
  });

  it('says that the port is taken and how to take another', async () => {
    const other = createServer();
    const port = await new Promise<number>((resolve) => {
      other.listen(0, '127.0.0.1', () => resolve((other.address() as { port: number }).port));
    });
    const ran = await tubwright(['start', '--port', String(port), '--data', join(folder, 'taken')]);
    other.close();
    expect(ran).toMatchObject({ code: 1, out: '', err: expect.stringContaining(`Port ${port} on 127.0.0.1 is taken`) });
    expect(ran.err).toContain(`--port ${port + 1}`);
  });

  it('says that another hub has the folder', async () => {
    mkdirSync(join(folder, 'held'));
    writeFileSync(join(folder, 'held', 'events.ndjson.lock'), String(process.pid));
    const ran = await tubwright(['start', '--port', '0', '--data', join(folder, 'held')]);
    expect(ran).toMatchObject({ code: 1, err: expect.stringMatching(/is in use by process/) });
  });

  it('says how to build the app where it is not built', async () => {
    const bare = join(folder, 'bare');
    for (const part of ['src', 'print', 'scanner'])
      cpSync(join(ROOT, 'dist', part), join(bare, 'dist', part), { recursive: true });
    cpSync(join(ROOT, 'package.json'), join(bare, 'package.json'));
    symlinkSync(join(ROOT, 'node_modules'), join(bare, 'node_modules'));
    const ran = await tubwright(['start', '--demo'], { main: MAIN.replace(ROOT, bare), cwd: bare });
    expect(ran).toMatchObject({
      code: 1,
      out: '',
      err: expect.stringMatching(/The app is not built: .*\. Run `npm run build`/),
    });
  });
});
