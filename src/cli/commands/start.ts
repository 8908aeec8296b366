import { existsSync, readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join, resolve } from 'node:path';
import { qrBlocks } from '../../../print/index.ts';
import { addDays, parseDay } from '../../core/index.ts';
import { startHub } from '../../hub/index.ts';
import { type Given, noWords, wholeOf } from '../args.ts';
import type { Command, ExitCode } from '../command.ts';
import { type Io, say, warn } from '../io.ts';
import { inWords, refusal } from '../refused.ts';
import { packageRoot } from '../root.ts';

const PORT = 8137;
const HOST = '127.0.0.1';
const EVERYWHERE = ['0.0.0.0', '::'];

const HELP = `tubwright start [--port ${PORT}] [--host ${HOST}] [--data DIR] [--demo]

Starts the hub with the app, prints its address, and the address as a code for a phone. Ctrl-C closes it cleanly.

  --port N     the port (default ${PORT}; 0 takes any free one)
  --host HOST  who can reach it: ${HOST} is this computer only (default), 0.0.0.0 is the whole network
  --data DIR   where the log is kept (default ./tubwright-data)
  --demo       an invented facility; without --data it lives in memory and is gone afterwards`;

/** The hub with the app. */
export const start: Command = {
  help: HELP,
  options: { port: 'text', host: 'text', data: 'text', demo: 'bare' },
  run: runStart,
};

async function runStart(given: Given, io: Io): Promise<ExitCode> {
  noWords(given);
  const port = wholeOf(given, 'port', [0, 65_535]) ?? PORT;
  const host = given.texts['host'] ?? HOST;
  const demo = given.bare.has('demo');
  const data = given.texts['data'] ?? (demo ? undefined : 'tubwright-data');
  const stop = waitForStop();
  const hub = await startHub({
    port,
    host,
    appDir: appFolder(),
    ...(data !== undefined && { dataDir: resolve(data) }),
    ...(demo && { seedFile: demoFile(), demoDay: dayAfter(demoFile()) }),
  });
  for (const one of hub.problems) warn(io, inWords(one));
  await sayWhere(io, hub.url, host, data);
  await stop;
  say(io, 'closing …');
  await hub.close();
  return 0;
}

function appFolder(): string {
  const folder = join(packageRoot(), 'dist', 'app');
  if (!existsSync(join(folder, 'index.html'))) throw refusal('app-missing', { folder });
  return folder;
}

function demoFile(): string {
  const file = join(packageRoot(), 'demo-data', 'site.ndjson');
  if (!existsSync(file)) throw refusal('demo-missing', { file });
  return file;
}

/** The demo stands on the day after its last event, whenever it is started; its file is in order and ends with a seal. */
function dayAfter(file: string): string {
  const found = readFileSync(file, 'utf8').matchAll(/"day":"(\d{4}-\d\d-\d\d)"/g);
  const last = [...found].reduce((latest, [, day = '']) => (day > latest ? day : latest), '1970-01-01');
  const read = parseDay(last);
  return read.ok ? addDays(read.value, 1) : last;
}

async function sayWhere(io: Io, url: string, host: string, data: string | undefined): Promise<void> {
  const open = EVERYWHERE.includes(host);
  const { port } = new URL(url);
  const local = open ? `http://localhost:${port}/` : `${url}/`;
  const others = open ? networkAddresses().map((address) => `http://${address}:${port}/`) : [];
  say(io, `Tubwright is at ${local}`);
  for (const address of others) say(io, `  and at ${address}`);
  say(io, data === undefined ? 'Kept in memory only: nothing stays when it is closed.' : `Kept in ${resolve(data)}`);
  say(io, qrBlocks(others[0] ?? local));
  if (open) for (const line of CAMERA_WORDS) say(io, line);
  say(io, 'Ctrl-C closes it.');
}

const CAMERA_WORDS = [
  'A browser gives a page the camera only over https or on localhost. On a phone that opens one of the addresses above',
  'the camera stays off: put an https proxy before the hub, or use a typing scanner, a photo or typed ids there.',
];

/** This computer's addresses that others on the network can reach. */
function networkAddresses(): readonly string[] {
  const all = Object.values(networkInterfaces()).flatMap((found) => found ?? []);
  return all.filter(({ internal, family }) => !internal && family === 'IPv4').map(({ address }) => address);
}

/** Resolves at the first Ctrl-C or request to end; a second one ends the program at once, as usual. */
function waitForStop(): Promise<void> {
  return new Promise((done) => {
    process.once('SIGINT', () => done());
    process.once('SIGTERM', () => done());
  });
}
