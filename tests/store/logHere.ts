import type { Id, LogEvent } from '../../src/core/index.ts';
import type { DeviceLog } from '../../src/store/index.ts';

/** What a writing gave. */
export interface Logged {
  readonly events: readonly LogEvent[];
  readonly minted: Id;
}

/** Logs drafts with stamps, and mints an id on the way. */
export async function logHere(log: DeviceLog, nowMs: number, drafts: readonly LogEvent[]): Promise<Logged> {
  let minted = '' as Id;
  const written = await log.log(nowMs, (stamper) => {
    const id = stamper.mint();
    if (id.ok) minted = id.value;
    return drafts.map((draft) => ({ ...draft, ...stamper.next() }));
  });
  return { events: written, minted };
}
