import { useEffect, useState } from 'preact/hooks';
import { sayNumber } from '../../core/index.ts';
import type { DeviceState, Unsent } from '../../store/index.ts';
import { useApp } from '../model/app.ts';
import { lastExport } from './lastExport.ts';
import { sayAge, sayBytes } from './sayAge.ts';
import { askToPersist, lookAtStorage, type StorageState } from './storageState.ts';

interface Seen {
  readonly device: DeviceState;
  readonly unsent: Unsent;
  readonly head: number;
  readonly storage: StorageState;
}

/** Where the log lives and how safe it is there, with every age in words. */
export function DeviceLines() {
  const { site, clock } = useApp();
  const [seen, setSeen] = useState<Seen | null>(null);
  const [asked, setAsked] = useState(0);
  const revision = site.revision.value;
  useEffect(() => {
    const { log } = site;
    void Promise.all([log.device(), log.unsent(), log.head(), lookAtStorage()]).then(
      ([device, unsent, head, storage]) => setSeen({ device, unsent, head, storage }),
      () => setSeen(null),
    );
  }, [revision, asked]);
  if (seen === null) return <p class="soft">Looking at the log…</p>;
  return (
    <dl class="device-lines">
      <Line words="Backup" said={sayBackup(seen, clock.nowMs())} />
      <Line words="Last export" said={sayExport(clock.nowMs())} />
      <Line words="Entries here" said={sayNumber(seen.head)} />
      <Line words="Device number" said={sayDevice(seen.device)} />
      <div>
        <dt>Storage</dt>
        <dd>
          {sayStorage(seen.storage)}
          {seen.storage.kept === 'may-be-cleared' ? (
            <button
              type="button"
              class="link"
              onClick={() => void askToPersist().then(() => setAsked((count) => count + 1))}
            >
              Ask the browser to keep it
            </button>
          ) : null}
        </dd>
      </div>
    </dl>
  );
}

function Line({ words, said }: { readonly words: string; readonly said: string }) {
  return (
    <div>
      <dt>{words}</dt>
      <dd>{said}</dd>
    </div>
  );
}

function sayBackup({ device, unsent, head }: Seen, nowMs: number): string {
  if (head === 0) return 'Nothing is logged yet.';
  if (unsent.count === 0) return 'Everything is on the hub.';
  const age = unsent.oldestAt === null ? '' : `, the oldest ${sayAge(nowMs - Date.parse(unsent.oldestAt))} old`;
  const count = `${sayNumber(unsent.count)} ${unsent.count === 1 ? 'entry is' : 'entries are'}`;
  return device.enrolled
    ? `${count} only on this device until the hub is reached${age}.`
    : `${count} only on this device${age}. No hub is set up: export a copy now and then.`;
}

function sayExport(nowMs: number): string {
  const at = lastExport.value;
  return at === null ? 'never from this device' : `${sayAge(nowMs - at)} ago`;
}

function sayDevice({ number, enrolled, site }: DeviceState): string {
  return enrolled ? `${number}, enrolled${site === null ? '' : ` at ${site}`}` : `${number}, not enrolled with a hub`;
}

function sayStorage({ kept, usedBytes, roomBytes }: StorageState): string {
  const size =
    usedBytes === null || roomBytes === null ? '' : ` ${sayBytes(usedBytes)} used of ${sayBytes(roomBytes)}.`;
  switch (kept) {
    case 'kept':
      return `The browser keeps it.${size}`;
    case 'may-be-cleared':
      return `The browser may clear it when the disk is full.${size} `;
    case 'unknown':
      return `This browser does not say whether it keeps it (https is needed).${size}`;
    default:
      return kept satisfies never;
  }
}
