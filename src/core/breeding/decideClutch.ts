import type { Decision, EventDraft, Moment } from '../care/index.ts';
import { sayDayShort } from '../days.ts';
import type { ClutchRecord, EggState, Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';

/** What can be written of a clutch in the incubator. */
export type ClutchAct =
  | { readonly do: 'incubated'; readonly place: Id | null; readonly setC: number | null }
  | { readonly do: 'read'; readonly tempC: number; readonly humidityPercent: number | null }
  | { readonly do: 'candled'; readonly egg: number; readonly state: EggState['state'] }
  | { readonly do: 'pip'; readonly count: number | null }
  | { readonly do: 'hatched'; readonly hatched: number };

/** Readings outside of these are hardly an incubator’s. */
const INCUBATOR_C = [15, 40] as const;

/** The eggs that nobody has seen fail: as laid, less those candled as slug or lost. */
export function eggsLeft(clutch: ClutchRecord): number {
  const failed = Object.values(clutch.eggStates).filter((one) => one.state !== 'good').length;
  return Math.max(0, clutch.eggs - failed);
}

/** What an act on a clutch writes; refused or asked about in words. */
export function decideClutch(facility: Facility, clutch: ClutchRecord, act: ClutchAct, moment: Moment): Decision {
  const refused = dayRefusal(clutch, act, moment) ?? actRefusal(facility, clutch, act);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const [draft, said] = draftOf(clutch, act, moment);
  const doubt = actDoubt(clutch, act);
  return doubt === null
    ? { kind: 'accepted', drafts: [draft], said }
    : { kind: 'asks', problem: doubt, drafts: [draft], said };
}

function dayRefusal(clutch: ClutchRecord, act: ClutchAct, { day, today }: Moment): Problem | null {
  if (day > today) return problem('date-future', { day: sayDayShort(day) });
  if (clutch.bears === 'live young') return problem('litter-no-eggs', {});
  if (day >= clutch.laidOn) return null;
  const what = act.do === 'hatched' || act.do === 'pip' ? act.do : 'this';
  return problem('before-laying', { what, day: sayDayShort(day), laid: sayDayShort(clutch.laidOn) });
}

function actRefusal({ places }: Facility, clutch: ClutchRecord, act: ClutchAct): Problem | null {
  switch (act.do) {
    case 'incubated':
      return act.place !== null && !places.has(act.place)
        ? problem('unknown-id', { id: act.place })
        : tempFault(act.setC);
    case 'read':
      return tempFault(act.tempC);
    case 'candled':
      return Number.isInteger(act.egg) && act.egg >= 1 && act.egg <= clutch.eggs
        ? null
        : problem('egg-beyond', { egg: act.egg, eggs: clutch.eggs });
    case 'pip':
      return act.count !== null && act.count > clutch.eggs
        ? problem('hatched-too-many', { hatched: act.count, eggs: clutch.eggs })
        : null;
    case 'hatched':
      if (!Number.isInteger(act.hatched) || act.hatched < 0) return problem('count-whole', {});
      return act.hatched > clutch.eggs
        ? problem('hatched-too-many', { hatched: act.hatched, eggs: clutch.eggs })
        : null;
    default:
      return act satisfies never;
  }
}

function tempFault(tempC: number | null): Problem | null {
  if (tempC === null || (tempC >= INCUBATOR_C[0] && tempC <= INCUBATOR_C[1])) return null;
  return problem('incubator-impossible', { temp: tempC, low: INCUBATOR_C[0], high: INCUBATOR_C[1] });
}

function actDoubt(clutch: ClutchRecord, act: ClutchAct): Problem | null {
  if (act.do === 'hatched' && clutch.hatchedOn !== null)
    return problem('hatched-twice', { hatched: clutch.hatched ?? 0, day: sayDayShort(clutch.hatchedOn) });
  if (act.do === 'hatched' && act.hatched > eggsLeft(clutch))
    return problem('hatched-failed-eggs', { hatched: act.hatched, left: eggsLeft(clutch) });
  return null;
}

function draftOf(clutch: ClutchRecord, act: ClutchAct, { day }: Moment): readonly [EventDraft, string] {
  const subjects = [clutch.id];
  switch (act.do) {
    case 'incubated': {
      const payload = { ...(act.place && { place: act.place }), ...(act.setC !== null && { setC: act.setC }) };
      const of = act.place === null ? subjects : [clutch.id, act.place];
      return [{ kind: 'clutch-incubated', subjects: of, payload, day }, 'in the incubator'];
    }
    case 'read': {
      const payload = {
        tempC: act.tempC,
        ...(act.humidityPercent !== null && { humidityPercent: act.humidityPercent }),
      };
      return [{ kind: 'incubation-read', subjects, payload, day }, `incubator ${act.tempC} °C`];
    }
    case 'candled':
      return [
        { kind: 'egg-candled', subjects, payload: { egg: act.egg, state: act.state }, day },
        `egg ${act.egg}: ${act.state}`,
      ];
    case 'pip':
      return [{ kind: 'pip-seen', subjects, payload: act.count === null ? {} : { count: act.count }, day }, 'pipped'];
    case 'hatched':
      return [{ kind: 'clutch-hatched', subjects, payload: { hatched: act.hatched }, day }, `hatched ${act.hatched}`];
    default:
      return act satisfies never;
  }
}
