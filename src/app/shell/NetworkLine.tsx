import { useComputed, useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { sayDay } from '../../core/index.ts';
import type { SyncState } from '../../sync/index.ts';
import { useApp } from '../model/app.ts';
import { isNewerHere } from './serviceWorker.ts';

const LOOK_EVERY_MS = 5000;

/** Says that the network is away and how much waits for it; nothing while all is sent. */
export function NetworkLine() {
  const words = useNetworkWords();
  const { hub, clock } = useApp();
  const demo = hub.demo.value ? `Demo: an invented house on ${sayDay(clock.today.value)}` : null;
  if (words === null && demo === null && !isNewerHere.value) return null;
  return (
    <div class="network-line" role="status">
      {demo !== null && <p>{demo}</p>}
      {words !== null && <p>{words}</p>}
      {isNewerHere.value && (
        <p>
          A newer version is on this device.
          <button type="button" onClick={() => location.reload()}>
            Load it
          </button>
        </p>
      )}
    </div>
  );
}

interface Waiting {
  readonly count: number;
  /** What waited already at the look before, for a tab that leaves the talking to another one. */
  readonly before: number;
  readonly isEnrolled: boolean;
}

function useNetworkWords(): string | null {
  const { site, hub } = useApp();
  const isOnline = useSignal(navigator.onLine);
  const waiting = useSignal<Waiting>({ count: 0, before: 0, isEnrolled: false });
  useEffect(() => {
    const look = async () => {
      isOnline.value = navigator.onLine;
      if (site.state.value !== 'ready') return;
      const [{ count }, device] = await Promise.all([site.log.unsent(), site.log.device()]);
      waiting.value = { count, before: waiting.value.count, isEnrolled: device.site !== null };
    };
    const lookAgain = () => void look().catch(() => undefined);
    const timer = setInterval(lookAgain, LOOK_EVERY_MS);
    for (const change of ['online', 'offline']) addEventListener(change, lookAgain);
    return () => {
      clearInterval(timer);
      for (const change of ['online', 'offline']) removeEventListener(change, lookAgain);
    };
  }, [site]);
  return useComputed(() => sayNetwork(isOnline.value, waiting.value, hub.state.value)).value;
}

function sayNetwork(isOnline: boolean, waiting: Waiting, hub: SyncState | null): string | null {
  // Without a hub nothing is ever sent: what is written is kept here, and Books makes the backup.
  const late = waiting.isEnrolled ? (isOnline ? lateOnline(waiting, hub) : waiting.count) : 0;
  const said = `${late.toLocaleString('en')} ${late === 1 ? 'entry waits' : 'entries wait'} to be sent`;
  if (isOnline) return late > 0 ? said : null;
  return `Offline — ${late > 0 ? said : 'everything is kept on this device'}`;
}

/** With a network, entries are merely on their way for as long as the hub answers. */
function lateOnline({ count, before }: Waiting, hub: SyncState | null): number {
  if (hub === null) return Math.min(count, before);
  return hub.link === 'offline' ? count : 0;
}
