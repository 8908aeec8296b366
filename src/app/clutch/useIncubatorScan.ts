import { useEffect, useRef } from 'preact/hooks';
import { useLocation } from 'preact-iso';
import { type ClutchRecord, decideClutch, type Id, ok, type Result } from '../../core/index.ts';
import { type App, useApp } from '../model/app.ts';
import type { AnimalWanted } from '../model/desk.ts';
import { momentOn } from './writing.ts';

/** The scan of the place that a clutch goes to: by camera on the Scan screen, or typed while the page waits for it. */
export function useIncubatorScan(clutch: ClutchRecord): { walk(): void } {
  const app = useApp();
  const { route } = useLocation();
  return {
    walk() {
      app.desk.want(placeWanted(app, clutch));
      route('/');
    },
  };
}

/** While a clutch lies nowhere yet, the place scanned next is its own; the camera's wish outlives the page. */
export function useWaitForPlace(clutch: ClutchRecord, isWaiting: boolean): void {
  const app = useApp();
  const own = useRef<AnimalWanted | null>(null);
  const isFree = app.desk.wanted.value === null;
  useEffect(() => {
    if (!isWaiting || !isFree) return;
    own.current = placeWanted(app, clutch);
    app.desk.want(own.current);
  }, [isWaiting, isFree, clutch]);
  useEffect(
    () => () => {
      if (own.current !== null && app.desk.wanted.peek() === own.current) app.desk.want(null);
    },
    [isWaiting],
  );
}

function placeWanted(app: App, clutch: ClutchRecord): AnimalWanted {
  return { says: 'Scan the incubator’s place', of: 'place', take: (place) => laidInto(app, clutch, place) };
}

/** Refused in words before the page is left; written while it opens again. */
function laidInto(app: App, clutch: ClutchRecord, place: Id): Result<string> {
  const act = { do: 'incubated', place, setC: null } as const;
  const decision = decideClutch(app.site.facility.value, clutch, act, momentOn(app, null));
  if (decision.kind === 'refused') return { ok: false, problem: decision.problem };
  void app.desk.decided(clutch.dam, decision);
  return ok(`/clutch/${clutch.id}`);
}
