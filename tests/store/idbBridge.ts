import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { LogEvent, Problem } from '../../src/core/index.ts';
import { type DeviceLog, LogFailure } from '../../src/store/index.ts';
import { type ServedPage, serveEntry } from '../tools/serve.ts';
import type { Answer } from './idbPage.ts';
import type { Logged } from './logHere.ts';

/** Serves the page in which the browser's store lives. */
export function serveStore(): Promise<ServedPage> {
  return serveEntry(fileURLToPath(new URL('./idbPage.ts', import.meta.url)));
}

/** Opens a page and waits until its store answers. */
export async function openPage(page: Page, url: string): Promise<Page> {
  await page.goto(url);
  await page.waitForFunction(() => 'callLog' in globalThis);
  return page;
}

/** A device log that lives in the page; every call crosses into the real browser. */
export async function logIn(page: Page, place: string): Promise<DeviceLog> {
  const call = (method: string, ...args: unknown[]) => callIn(page, place, method, args);
  await call('open');
  const bridge = new Proxy({}, { get: (_target, method) => bridged(call, String(method)) });
  return bridge as DeviceLog;
}

/** Logs drafts with the store's own stamps, inside the page. */
export async function logDrafts(log: DeviceLog, nowMs: number, drafts: readonly LogEvent[]): Promise<Logged> {
  return (log as unknown as { logDrafts(now: number, drafts: readonly LogEvent[]): Promise<Logged> }).logDrafts(
    nowMs,
    drafts,
  );
}

function bridged(call: (method: string, ...args: unknown[]) => Promise<unknown>, method: string) {
  // A promise asks every value for `then`; a log has none.
  return method === 'then' ? undefined : (...args: unknown[]) => call(method, ...args);
}

async function callIn(page: Page, place: string, method: string, args: readonly unknown[]): Promise<unknown> {
  // One text each way: the browser's driver takes thousands of small objects apart one by one.
  const said = await page.evaluate(
    (call) => (globalThis as unknown as { callLog(call: string): Promise<string> }).callLog(call),
    JSON.stringify([place, method, args]),
  );
  const answer: Answer = JSON.parse(said);
  if ('failure' in answer) throw new LogFailure(answer.failure as Problem);
  if ('error' in answer) throw new Error(answer.error);
  return answer.value;
}
