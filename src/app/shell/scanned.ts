import { effect } from '@preact/signals';
import { useCallback } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import type { App } from '../model/app.ts';
import type { ScanResult } from '../model/desk.ts';

/** What a read text does on any screen: it stamps, or it opens what it names. */
export function useScanned(app: App): (text: string) => Promise<ScanResult | null> {
  const { route } = useLocation();
  return useCallback(
    async (text) => {
      if (!(await isReady(app)) || isAsking(app)) return null;
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

/** A second card must not push a question away unanswered: it is asked again by its sign, and the card is scanned after. */
function isAsking({ desk, signs }: App): boolean {
  if (desk.question.value === null && desk.numberWanted.value === null) return false;
  signs.give('asks');
  return true;
}

function follow(result: ScanResult, route: (url: string) => void): void {
  if (result.to === 'record') route(`/animal/${result.id}`);
  if (result.to === 'place') route(`/place/${result.id}`);
}
