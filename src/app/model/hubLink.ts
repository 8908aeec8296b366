import { type ReadonlySignal, signal } from '@preact/signals';
import { isDay } from '../../core/index.ts';
import { hubOver, type SyncState, syncClient } from '../../sync/index.ts';
import type { Clock } from './clock.ts';
import type { SiteModel } from './site.ts';

/** The way to the hub that served this page. Everything works without it; then what is logged waits here. */
export interface HubLink {
  /** Null until the first exchange has ended. */
  readonly state: ReadonlySignal<SyncState | null>;
  /** True while the hub shows its demo, which stands on a day of its own. */
  readonly demo: ReadonlySignal<boolean>;
  /** Fetches what the hub has, for a device that knows nothing yet; resolves also when there is no hub. */
  firstCopy(onCount: (events: number) => void): Promise<void>;
  start(): Promise<void>;
  syncNow(): Promise<void>;
}

const DEMO_DAY = 'demo-day';
const LOOK_EVERY_MS = 400;

export function createHubLink(site: SiteModel, clock: Clock, storage: Storage = localStorage): HubLink {
  const state = signal<SyncState | null>(null);
  const demo = signal(false);
  const client = syncClient({
    log: site.log,
    hub: hubOver((url, init) => fetch(url, init)),
    name: navigator.userAgent.slice(0, 60),
    now: clock.nowMs,
  });
  client.listen((next) => {
    state.value = next;
    if (site.state.value === 'ready') void site.heard();
  });

  function standOn(day: string | null): void {
    const known = day !== null && isDay(day);
    demo.value = known;
    clock.standOn(known ? day : null);
  }

  async function askForDemoDay(): Promise<void> {
    try {
      const answer: unknown = await (await fetch('/health', { cache: 'no-store' })).json();
      const day: unknown = typeof answer === 'object' && answer !== null ? Reflect.get(answer, 'demoDay') : null;
      if (typeof day === 'string') storage.setItem(DEMO_DAY, day);
      else storage.removeItem(DEMO_DAY);
    } catch {
      // Without the hub the day last heard of stands.
    }
    standOn(storage.getItem(DEMO_DAY));
  }

  // Before the first entry can be written: one on the real day among those of the demo's day would be taken for long ago.
  standOn(storage.getItem(DEMO_DAY));

  return {
    state,
    demo,
    async firstCopy(onCount) {
      // Events that are heard move this device's clock on, so it must stand on the demo's day before the first of them.
      await askForDemoDay();
      // A large log takes a while, and a screen that says nothing would look broken.
      const timer = setInterval(() => void site.log.head().then(onCount, () => undefined), LOOK_EVERY_MS);
      await client.syncNow();
      clearInterval(timer);
    },
    async start() {
      await askForDemoDay();
      // Back in reach of the network, nobody should wait for the pause after the last failure to end.
      addEventListener('online', () => void client.syncNow());
      // One tab talks to the hub; on plain http, where locks are missing, each tab does, which does no harm.
      if (navigator.locks === undefined) client.start();
      else void navigator.locks.request('tubwright-hub', () => new Promise(() => client.start()));
    },
    async syncNow() {
      await client.syncNow();
    },
  };
}
