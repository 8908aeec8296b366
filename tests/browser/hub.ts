import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { EventKind, EventOf, Id, LogEvent } from '../../src/core/index.ts';
import type { RunningApp } from './runningApp.ts';

/** What a screen writes is on the device at once and reaches the hub a moment later, on a busy machine several. */
const REACHES = { timeout: 20_000 };

/** What the hub holds now, as another device would get it. */
export async function onTheHub(app: RunningApp): Promise<readonly LogEvent[]> {
  const answer = await fetch(`${app.url}/pull?after=0&limit=5000`);
  return ((await answer.json()) as { readonly rows: readonly LogEvent[] }).rows;
}

/** The events of a kind, about one subject if it is given, once the hub has just so many of them; fails when it never has. */
export async function reached<K extends EventKind>(
  app: RunningApp,
  kind: K,
  count: number,
  about?: Id,
): Promise<readonly EventOf<K>[]> {
  const isMeant = (one: LogEvent): one is EventOf<K> =>
    one.kind === kind && (about === undefined || one.subjects[0] === about);
  let found: readonly EventOf<K>[] = [];
  const have = async (): Promise<number> => {
    found = (await onTheHub(app)).filter(isMeant);
    return found.length;
  };
  await expect.poll(have, REACHES).toBe(count);
  return found;
}

/** How many events the hub holds when the page has nothing left to send: with it, “nothing was written” can be told. */
export async function countedOnceSent(page: Page, app: RunningApp): Promise<number> {
  await page.goto(`${app.url}/books`);
  await page.getByText('Everything is on the hub.').waitFor();
  return (await onTheHub(app)).length;
}
