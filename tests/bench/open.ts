import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { envelopeSchema } from '../../src/core/events/event.ts';
import { PAYLOADS } from '../../src/core/events/payloads.ts';
import { type EventKind, foldFacility, type LogEvent } from '../../src/core/index.ts';
import { nodeSha256 } from '../../src/store/file/index.ts';
import { logReader } from '../../src/store/index.ts';
import { leastMs, sayCount, sayMs, sayRatio } from './timing.ts';

const DEMO = fileURLToPath(new URL('../../../demo-data/site.ndjson', import.meta.url));
const MAIN = fileURLToPath(new URL('../../src/cli/main.js', import.meta.url));
const ROUNDS = 5;
interface Parsed {
  readonly kind: EventKind;
  readonly payload: unknown;
}

/** A program that parses every line and does nothing with it. */
const PARSES = `for (const line of require('node:fs').readFileSync(${JSON.stringify(DEMO)}, 'utf8').trim().split('\\n')) JSON.parse(line)`;
/** As the commands read it. */
const PIECE = 1 << 18;

/**
 * Opening the demo's log against the bare parsing of its lines, and a command from its start to its end against a program that
 * only parses; in turns, so that what else the machine does hits both.
 */
export function benchOpen(): string[] {
  const text = readFileSync(DEMO, 'utf8');
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('{"seal"'));
  const parsed = lines.map((line) => JSON.parse(line) as Parsed);
  const events = opened(text);
  const { parse, open, schemas, fold } = inTurns({
    parse: () => leastMs(1, () => lines.map((line) => JSON.parse(line) as unknown)),
    open: () => leastMs(1, () => opened(text)),
    schemas: () => leastMs(1, () => parsed.map(bySchemas)),
    fold: () => leastMs(1, () => foldFacility(events)),
  });
  const { bare, command } = inTurns({
    bare: () => wallMs(['-e', PARSES]),
    command: () => wallMs([MAIN, 'due', '--site', DEMO, '--on', '2026-11-25', '--json']),
  });
  return [
    `the demo's log of ${sayCount(events.length)} events, read with every line judged and its seal proven: ${sayMs(open)} of processor time`,
    `against JSON.parse of its lines (${sayMs(parse)}): ${sayRatio(open, parse)} (goal 3)`,
    `judging them by the schemas alone, after that parsing: ${sayMs(schemas)}`,
    `its fold: ${sayMs(fold)}, ${sayRatio(fold, parse)}`,
    `\`due\` on it, from start to end: ${sayMs(command)}`,
    `against a program of Node that only parses the lines (${sayMs(bare)}): ${sayRatio(command, bare)} (goal 5)`,
  ];
}

/** The least that each measuring gives, one after the other and so many rounds over. */
function inTurns<K extends string>(measurings: Readonly<Record<K, () => number>>): Record<K, number> {
  const names = Object.keys(measurings) as K[];
  const least = new Map<K, number>();
  for (let round = 0; round < ROUNDS; round++)
    for (const name of names)
      least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, measurings[name]()));
  return Object.fromEntries(least) as Record<K, number>;
}

function opened(text: string): readonly LogEvent[] {
  const reader = logReader(nodeSha256());
  const events: LogEvent[] = [];
  for (let at = 0; at < text.length; at += PIECE)
    for (const event of reader.push(text.slice(at, at + PIECE))) events.push(event);
  const { problems, sealed } = reader.end();
  if (problems.length > 0 || !sealed) throw new Error('The demo log is not sound: make it anew with `npm run build`.');
  return events;
}

function bySchemas(data: Parsed): boolean {
  return envelopeSchema.safeParse(data).success && PAYLOADS[data.kind].safeParse(data.payload).success;
}

/** How long a program took from its start to its end. */
function wallMs(args: readonly string[]): number {
  const start = performance.now();
  const { status } = spawnSync(process.execPath, args, { stdio: ['ignore', 'ignore', 'inherit'] });
  if (status !== 0) throw new Error(`the program ended with ${status}`);
  return performance.now() - start;
}
