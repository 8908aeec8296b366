import { randomUUID } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import * as z from 'zod/mini';
import { ENROLLED, isKnown, type LogEvent, laterWriter, problem } from '../core/index.ts';
import { LogFailure } from '../store/index.ts';

/** What a hub keeps beside its log. */
export interface Meta {
  /** A new one begins whenever the log is not the one that the devices know. */
  readonly epoch: string;
  /** The site's name, from the latest event that named it. */
  readonly site: string;
  /** The next device's number; numbers are never given twice. */
  readonly nextDevice: number;
  readonly devices: readonly { readonly number: number; readonly name: string; readonly at: string }[];
}

const schema = z.object({
  epoch: z.string().check(z.minLength(1), z.maxLength(64)),
  site: z.string(),
  nextDevice: z.int().check(z.gte(0), z.lte(ENROLLED.devices)),
  devices: z.array(z.object({ number: z.int(), name: z.string(), at: z.string() })),
});

/** A hub that knows nobody yet. Number 0 is left to the hub itself. */
export function newMeta(): Meta {
  return { epoch: randomUUID(), site: '', nextDevice: 1, devices: [] };
}

/** Reads the file; null when there is none. Rejects with `storage-failed` when it is not sound. */
export async function readMeta(path: string): Promise<Meta | null> {
  const text = await readFile(path, 'utf8').catch(() => null);
  if (text === null) return null;
  try {
    return schema.parse(JSON.parse(text));
  } catch {
    throw new LogFailure(problem('storage-failed', { why: `${path} cannot be read; restore it from a backup` }));
  }
}

/** The meta after these events: no number that an event carries is given out again, and the latest name counts. */
export function heardMeta(meta: Meta, events: readonly LogEvent[]): Meta {
  const named = events
    .filter((event) => isKnown(event))
    .filter((event) => event.kind === 'site-named')
    .sort(laterWriter)
    .at(-1);
  const highest = events.reduce((most, { device }) => (device < ENROLLED.devices ? Math.max(most, device) : most), 0);
  const nextDevice = Math.max(meta.nextDevice, highest + 1);
  const site = named?.payload.name ?? meta.site;
  return nextDevice === meta.nextDevice && site === meta.site ? meta : { ...meta, nextDevice, site };
}
