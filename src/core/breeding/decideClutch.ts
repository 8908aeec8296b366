import { AGAIN_MINUTES, type Decision, type EventDraft, type Moment } from '../care/index.ts';
import { type Day, sayDayShort } from '../days.ts';
import { minutesSince } from '../events/index.ts';
import type { ClutchRecord, EggState, Facility } from '../facility/index.ts';
import type { Id } from '../ids.ts';
import { type Problem, problem } from '../problems.ts';
import { eggsLeft } from './hatchSpan.ts';

/** What can be written of a clutch in the incubator. */
export type ClutchAct =
  | { readonly do: 'incubated'; readonly place: Id | null; readonly setC: number | null }
  | { readonly do: 'read'; readonly tempC: number; readonly humidityPercent: number | null }
  | { readonly do: 'candled'; readonly egg: number; readonly state: EggState['state'] }
  | { readonly do: 'pip'; readonly count: number | null }
  /** So many more came out; `last`: no more will come. That none hatched says so by itself. */
  | { readonly do: 'hatched'; readonly hatched: number; readonly last?: boolean };

/** Readings outside of these are hardly an incubator’s. */
const INCUBATOR_C = [15, 40] as const;

/** What an act on a clutch writes; refused or asked about in words. */
export function decideClutch(facility: Facility, clutch: ClutchRecord, act: ClutchAct, moment: Moment): Decision {
  const refused = dayRefusal(clutch, act, moment) ?? actRefusal(facility, clutch, act);
  if (refused !== null) return { kind: 'refused', problem: refused };
  const [draft, said] = draftOf(clutch, act, moment);
  const doubt = actDoubt(clutch, act, moment);
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
      return hatchedRefusal(clutch, act.hatched);
    default:
      return act satisfies never;
  }
}

function tempFault(tempC: number | null): Problem | null {
  if (tempC === null || (tempC >= INCUBATOR_C[0] && tempC <= INCUBATOR_C[1])) return null;
  return problem('incubator-impossible', { temp: tempC, low: INCUBATOR_C[0], high: INCUBATOR_C[1] });
}

/** What is out already counts with what comes out now. */
function hatchedRefusal({ eggs, hatched: out }: ClutchRecord, hatched: number): Problem | null {
  if (!Number.isInteger(hatched) || hatched < 0) return problem('count-whole', {});
  if (hatched + (out ?? 0) <= eggs) return null;
  return out === null || out === 0
    ? problem('hatched-too-many', { hatched, eggs })
    : problem('hatched-too-many-more', { hatched, out, eggs });
}

function actDoubt(clutch: ClutchRecord, act: ClutchAct, moment: Moment): Problem | null {
  if (act.do !== 'hatched') return null;
  const [out, left] = [clutch.hatched ?? 0, eggsLeft(clutch)];
  if (clutch.isOver && act.hatched > 0) return problem('hatched-over', { out, eggs: clutch.eggs });
  if (act.hatched > 0 && isSameAgain(clutch, act.hatched, moment))
    return problem('hatched-again', { hatched: act.hatched, out, eggs: clutch.eggs });
  return act.hatched > 0 && act.hatched + out > left
    ? problem('hatched-failed-eggs', { hatched: act.hatched + out, left })
    : null;
}

/** As CARE-AGAIN: the same count for the same day so soon is more likely a second touch than a second hatching. */
function isSameAgain({ hatchings, lastWritten }: ClutchRecord, hatched: number, { day, nowMs }: Moment): boolean {
  const last = hatchings.at(-1);
  const since = minutesSince(lastWritten, 'clutch-hatched', nowMs);
  return last?.count === hatched && last.day === day && since < AGAIN_MINUTES;
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
      return hatchedDraft(clutch, act, day);
    default:
      return act satisfies never;
  }
}

function hatchedDraft(
  { id, hatched: out }: ClutchRecord,
  { hatched, last }: Extract<ClutchAct, { do: 'hatched' }>,
  day: Day,
): readonly [EventDraft, string] {
  const payload = { hatched, ...((last === true || hatched === 0) && { last: true }) };
  const isMore = out !== null && out > 0;
  const said = hatched === 0 && isMore ? 'no more to come' : `hatched ${hatched}${isMore ? ' more' : ''}`;
  return [{ kind: 'clutch-hatched', subjects: [id], payload, day }, said];
}
