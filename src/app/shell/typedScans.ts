import { useEffect } from 'preact/hooks';
import type { ScaleReading, TypedScan } from '../../../scanner/index.ts';
import { listenForTypedScans } from '../../../scanner/web/index.ts';
import { type Id, type Result, refuse } from '../../core/index.ts';
import type { App } from '../model/app.ts';
import { useScanned } from './scanned.ts';

/** Listens for scanners and scales that type, on every screen. */
export function useTypedScans(app: App): void {
  const scanned = useScanned(app);
  const host = app.site.facility.value.site.host;
  useEffect(
    () =>
      listenForTypedScans(window, {
        host: host ?? undefined,
        weighs: app.desk.weighs,
        onScan: (scan) => void (isWeight(scan, app) ? app.desk.scaleSent(weightIn(scan)) : scanned(textOf(scan, app))),
      }),
    [app, host, scanned],
  );
}

/** A code is a code first. One that reads as a weight too and that nobody here knows is neither, while somebody weighs. */
function isWeight({ code, scale, other }: TypedScan, app: App): boolean {
  if (scale === undefined) return false;
  if (!code.ok) return true;
  const isOurs = [code.value, other?.value].some(
    (one) => one !== undefined && (one.kind !== 'id' || knows(app, one.id)),
  );
  return !isOurs && app.desk.weighs();
}

function weightIn({ code, scale, text }: TypedScan): Result<ScaleReading> {
  if (scale === undefined || code.ok) return refuse('scale-or-id', { text: text.trim() });
  return scale;
}

/** Where both readings of a scan are sound ids, the one that this site knows is meant. */
function textOf({ text, code, other }: TypedScan, app: App): string {
  if (other?.value.kind !== 'id' || !code.ok || code.value.kind !== 'id') return text;
  return !knows(app, code.value.id) && knows(app, other.value.id) ? other.value.id : text;
}

function knows({ site }: App, id: Id): boolean {
  const { animals, places, clutches, items } = site.facility.value;
  return animals.has(id) || places.has(id) || clutches.has(id) || items.has(id);
}
