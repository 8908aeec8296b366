import { effect } from '@preact/signals';
import { useCallback } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { CalibrationOf } from '../../core/index.ts';
import type { App } from '../model/app.ts';
import type { ScanResult } from '../model/desk.ts';

/** What a read text does on any screen: it stamps, or it opens what it names. */
export function useScanned(app: App): (text: string) => Promise<ScanResult | null> {
  const { route } = useLocation();
  return useCallback(
    async (text) => {
      if (!(await isReady(app))) return null;
      if (isSheetOpen()) {
        app.signs.give('asks');
        return null;
      }
      const result = await app.desk.scanned(text);
      follow(result, route);
      return result;
    },
    [app, route],
  );
}

/** True when the log is open; a read that comes before waits for it. */
function isReady({ site }: App): Promise<boolean> {
  return new Promise((resolve) => {
    const stop = effect(() => {
      if (site.state.value === 'opening') return;
      resolve(site.state.value === 'ready');
      queueMicrotask(() => stop());
    });
  });
}

/** A card must push no question away unanswered, and no note or stamp half chosen: it says so by its sign, and is scanned after. */
function isSheetOpen(): boolean {
  return document.querySelector('dialog[open]') !== null;
}

function calibrationAddress({ stock, printer }: CalibrationOf): string {
  return `/print/calibration?${new URLSearchParams({ stock, printer })}`;
}

function follow(result: ScanResult, route: (url: string) => void): void {
  if (result.to === 'record') route(`/animal/${result.id}`);
  if (result.to === 'wanted') route(result.address);
  if (result.to === 'clutch') route(`/clutch/${result.id}`);
  if (result.to === 'lot') route(`/lot/${result.id}`);
  if (result.to === 'item') route(`/item/${result.id}`);
  if (result.to === 'calibration') route(calibrationAddress(result.of));
  if (result.to === 'place') route(`/place/${result.id}`);
}
