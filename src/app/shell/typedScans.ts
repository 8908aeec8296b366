import { useLayoutEffect } from 'preact/hooks';
import type { ScaleReading, TypedScan } from '../../../scanner/index.ts';
import { listenForTypedScans } from '../../../scanner/web/index.ts';
import { type Id, type Result, refuse } from '../../core/index.ts';
import type { App } from '../model/app.ts';
import { useScanned } from './scanned.ts';

/** Whom typed scans are given to, and how they are read for him at the moment. */
interface Listener {
  host(): string | undefined;
  weighs(): boolean;
  take(scan: TypedScan): void;
}

/** What scanners and scales type on this page, from its first script on. */
export interface TypedScans {
  /** From here on scans are given to this one: first those that came before anybody was there. */
  giveTo(listener: Listener): void;
}

/**
 * Hears what is typed for as long as the page lives. A screen that is drawn anew, the log that opens and an address that
 * changes only change who is told: a scan has twenty keys, and one that falls into such a moment must not lose its first ten.
 */
export function hearTypedScans(target: Window): TypedScans {
  let told: Listener | null = null;
  const early: TypedScan[] = [];
  listenForTypedScans(target, {
    get host() {
      return told?.host();
    },
    weighs: () => told?.weighs() ?? false,
    onScan: (scan) => (told === null ? void early.push(scan) : told.take(scan)),
  });
  return {
    giveTo(listener) {
      told = listener;
      for (const scan of early.splice(0)) listener.take(scan);
    },
  };
}

/** Takes what scanners and scales type, on every screen; before the first paint, so that what is seen already listens. */
export function useTypedScans(app: App, typed: TypedScans): void {
  const scanned = useScanned(app);
  useLayoutEffect(
    () =>
      typed.giveTo({
        host: () => app.site.facility.value.site.host ?? undefined,
        weighs: app.desk.weighs,
        take: (scan) => void (isWeight(scan, app) ? app.desk.scaleSent(weightIn(scan)) : scanned(textOf(scan, app))),
      }),
    [app, typed, scanned],
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
