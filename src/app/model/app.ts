import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { ok, type Result } from '../../core/index.ts';
import { idbLog } from '../../store/idb/index.ts';
import type { DeviceLog } from '../../store/index.ts';
import { type Clock, createClock } from './clock.ts';
import { createDesk, type DeskModel } from './desk.ts';
import { createFreezer, type FreezerModel } from './freezer.ts';
import { createHubLink, type HubLink } from './hubLink.ts';
import { createRound, type RoundModel } from './rackRound.ts';
import { createScale, type ScaleModel } from './scale.ts';
import { createSettings, type Settings } from './settings.ts';
import { createShelf, type ShelfModel } from './shelf.ts';
import { createSigns, type Signs } from './signs.ts';
import { createSite, problemOf, type SiteModel } from './site.ts';
import { createStrip, type StripModel } from './strip.ts';

/** All models of the app; screens get them from one context. */
export interface App {
  readonly clock: Clock;
  readonly settings: Settings;
  readonly signs: Signs;
  readonly site: SiteModel;
  readonly strip: StripModel;
  readonly desk: DeskModel;
  readonly round: RoundModel;
  readonly scale: ScaleModel;
  readonly shelf: ShelfModel;
  readonly freezer: FreezerModel;
  readonly hub: HubLink;
}

/** All models, on the device's log. Errors: `storage-full`, `storage-failed`. */
export async function createApp(): Promise<Result<App>> {
  const settings = createSettings();
  const log = await openLog();
  if (!log.ok) return log;
  const clock = createClock();
  const signs = createSigns();
  const site = createSite(log.value, clock, settings.keeper);
  const strip = createStrip();
  const round = createRound({ site, clock, strip, signs, keeper: settings.keeper });
  const scale = createScale();
  const shelf = createShelf({ site, clock, strip, signs });
  const desk = createDesk({ site, clock, strip, signs, round, scale, shelf });
  const freezer = createFreezer({ site, clock, strip, signs });
  const hub = createHubLink(site, clock);
  return ok({ clock, settings, signs, site, strip, desk, round, scale, shelf, freezer, hub });
}

async function openLog(): Promise<Result<DeviceLog>> {
  try {
    return ok(await idbLog('tubwright'));
  } catch (error) {
    return { ok: false, problem: problemOf(error) };
  }
}

export const AppContext = createContext<App | null>(null);

/** The models; a screen outside of the context is a bug. */
export function useApp(): App {
  const app = useContext(AppContext);
  if (app === null) throw new RangeError('no app context');
  return app;
}
