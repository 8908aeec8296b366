import { randomUUID } from 'node:crypto';
import { access, mkdir, readFile, rename } from 'node:fs/promises';
import { join } from 'node:path';
import { ENROLLED, type LogEvent, ok, type Problem, problem, type Result, refuse } from '../core/index.ts';
import { type FileLog, fileLog, type LinePage, nodeSha256, replaceDurably } from '../store/file/index.ts';
import { type Appended, type Cursor, eventLine, memoryLog, readLog } from '../store/index.ts';
import type { Enrolled } from '../sync/index.ts';
import { HubFailure } from './failure.ts';
import { heardMeta, type Meta, newMeta, readMeta } from './meta.ts';

/** The hub's log within its directory. */
export const EVENTS_FILE = 'events.ndjson';
const META_FILE = 'meta.json';

/** What a hub holds: the site's log, its epoch and its devices. */
export interface HubData {
  readonly problems: readonly Problem[];
  meta(): Meta;
  append(events: readonly LogEvent[]): Promise<Appended>;
  lines(after: Cursor, limit: number): Promise<LinePage>;
  head(): Promise<Cursor>;
  /** Gives the next number, once and for good. Errors: `device-number`. */
  enrol(name: string): Promise<Result<Enrolled>>;
  close(): Promise<void>;
}

/** Where a hub's data are and what an empty one begins with. */
export interface DataPlace {
  /** Without one the hub remembers only as long as it runs. */
  readonly dataDir?: string;
  /** A log whose events an empty hub begins with; it is only read. */
  readonly seedFile?: string;
}

/** Opens a hub's data. Rejects with a LogFailure as {@link fileLog} does, or a HubFailure (`file-unreadable`). */
export async function openData({ dataDir, seedFile }: DataPlace): Promise<HubData> {
  const data = dataDir === undefined ? memoryData() : await directoryData(dataDir);
  try {
    if (seedFile !== undefined && (await data.head()) === 0) await seed(data, seedFile);
    return data;
  } catch (error) {
    await data.close();
    throw error;
  }
}

/**
 * Puts a backup in the place of a hub's log: a new epoch begins, so every device offers all it holds. The log before
 * is kept beside it; device numbers are never given again. The hub must not be running.
 */
export async function restoreData(dataDir: string, events: readonly LogEvent[]): Promise<void> {
  await mkdir(dataDir, { recursive: true });
  const log = join(dataDir, EVENTS_FILE);
  const stamp = new Date().toISOString().replace(/[:.]/g, '-');
  const running = await fileLog(log);
  await running.close();
  for (const end of ['', '.seals', '.parked', '.parked.seals']) {
    if (await exists(log + end)) await rename(log + end, `${log}${end}.before-${stamp}`);
  }
  const meta = (await readMeta(join(dataDir, META_FILE))) ?? newMeta();
  await replaceDurably(join(dataDir, META_FILE), JSON.stringify({ ...heardMeta(meta, events), epoch: randomUUID() }));
  const restored = await fileLog(log);
  await restored.append(events);
  await restored.close();
}

async function seed(data: Data, path: string): Promise<void> {
  const text = await readFile(path, 'utf8').catch((error: Error) => {
    throw new HubFailure(problem('file-unreadable', { file: path, why: error.message }));
  });
  const { events, problems } = readLog(text, nodeSha256());
  data.problems.push(...problems);
  await data.append(events);
}

function memoryData(): Data {
  const log = memoryLog();
  const lines = async (after: Cursor, limit: number) => {
    const { events, next, head } = await log.read(after, limit);
    return { lines: events.map(eventLine), next, head };
  };
  return new Data({ append: (events) => log.append(events), head: () => log.head(), close: () => log.close(), lines });
}

async function directoryData(dataDir: string): Promise<Data> {
  await mkdir(dataDir, { recursive: true });
  const path = join(dataDir, META_FILE);
  const log = await fileLog(join(dataDir, EVENTS_FILE));
  try {
    const found = await readMeta(path);
    // A log that is not as we left it was restored or harmed: the devices must offer what they hold.
    const changed = found === null || log.problems.some(({ code }) => code === 'file-edited');
    const meta = changed ? { ...(found ?? newMeta()), epoch: randomUUID() } : found;
    const save = (next: Meta) => replaceDurably(path, JSON.stringify(next));
    if (changed) await save(meta);
    return new Data(log, log.problems, meta, save);
  } catch (error) {
    await log.close();
    throw error;
  }
}

type Lines = Pick<FileLog, 'append' | 'head' | 'lines' | 'close'>;

class Data implements HubData {
  readonly problems: Problem[];
  readonly #log: Lines;
  readonly #save: (meta: Meta) => Promise<void>;
  #meta: Meta;
  #last: Promise<unknown> = Promise.resolve();

  constructor(log: Lines, problems: readonly Problem[] = [], meta = newMeta(), save = async (_meta: Meta) => {}) {
    this.#log = log;
    this.problems = [...problems];
    this.#meta = meta;
    this.#save = save;
  }

  meta(): Meta {
    return this.#meta;
  }

  async append(events: readonly LogEvent[]): Promise<Appended> {
    await this.#change((meta) => heardMeta(meta, events));
    return this.#log.append(events);
  }

  lines(after: Cursor, limit: number): Promise<LinePage> {
    return this.#log.lines(after, limit);
  }

  head(): Promise<Cursor> {
    return this.#log.head();
  }

  async enrol(name: string): Promise<Result<Enrolled>> {
    let device = ENROLLED.devices;
    const meta = await this.#change((before) => {
      device = before.nextDevice;
      return enrolled(before, name);
    });
    if (device >= ENROLLED.devices) return refuse('device-number', { device, most: ENROLLED.devices - 1 });
    return ok({ device, site: meta.site, epoch: meta.epoch });
  }

  async close(): Promise<void> {
    await this.#last;
    await this.#log.close();
  }

  /** One change after another, each on the disk before it counts. */
  #change(change: (meta: Meta) => Meta): Promise<Meta> {
    const done = this.#last.then(async () => {
      const next = change(this.#meta);
      if (next !== this.#meta) await this.#save(next);
      this.#meta = next;
      return next;
    });
    this.#last = done.catch(() => undefined);
    return done;
  }
}

function enrolled(meta: Meta, name: string): Meta {
  const number = meta.nextDevice;
  if (number >= ENROLLED.devices) return meta;
  const at = new Date().toISOString();
  return { ...meta, nextDevice: number + 1, devices: [...meta.devices, { number, name, at }] };
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}
