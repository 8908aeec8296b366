import { useEffect } from 'preact/hooks';
import type { TypedScan } from '../../../scanner/index.ts';
import { listenForTypedScans } from '../../../scanner/web/index.ts';
import type { App } from '../model/app.ts';
import { useScanned } from './scanned.ts';

/** Listens for scanners that type, on every screen. */
export function useTypedScans(app: App): void {
  const scanned = useScanned(app);
  const host = app.site.facility.value.site.host;
  useEffect(
    () =>
      listenForTypedScans(window, {
        host: host ?? undefined,
        onScan: (scan) => void scanned(textOf(scan, app)),
      }),
    [host, scanned],
  );
}

/** Where both readings of a scan are sound ids, the one that this site knows is meant. */
function textOf({ text, code, other }: TypedScan, { site }: App): string {
  if (other?.value.kind !== 'id' || !code.ok || code.value.kind !== 'id') return text;
  const { animals, places, clutches } = site.facility.value;
  const knows = (id: typeof other.value.id) => animals.has(id) || places.has(id) || clutches.has(id);
  return !knows(code.value.id) && knows(other.value.id) ? other.value.id : text;
}
