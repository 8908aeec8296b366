import type { LogEvent } from '../../src/core/index.ts';
import { idbLog } from '../../src/store/idb/index.ts';
import { type DeviceLog, LogFailure } from '../../src/store/index.ts';
import { logHere } from './logHere.ts';

/** What the page answers: a value, or the problem of a failed writing. */
export type Answer = { readonly value: unknown } | { readonly failure: unknown } | { readonly error: string };

const logs = new Map<string, DeviceLog>();

async function call(place: string, method: string, args: readonly unknown[]): Promise<Answer> {
  try {
    return { value: (await run(place, method, args)) ?? null };
  } catch (error) {
    return error instanceof LogFailure ? { failure: error.problem } : { error: String(error) };
  }
}

async function run(place: string, method: string, args: readonly unknown[]): Promise<unknown> {
  if (method === 'open') return void logs.set(place, await idbLog(place));
  const log = logs.get(place);
  if (log === undefined) throw new Error(`The log ${place} is not open.`);
  if (method === 'logDrafts') return logHere(log, args[0] as number, args[1] as LogEvent[]);
  const found: unknown = Reflect.get(log, method);
  if (typeof found !== 'function') throw new Error(`A log has no ${method}.`);
  return Reflect.apply(found, log, args);
}

Object.assign(globalThis, {
  callLog: async (text: string) => {
    const [place, method, args]: [string, string, unknown[]] = JSON.parse(text);
    return JSON.stringify(await call(place, method, args));
  },
});
