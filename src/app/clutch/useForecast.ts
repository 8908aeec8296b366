import {
  type ClutchRecord,
  type Id,
  MOST_LOOKS,
  type PlannedPairing,
  type Problem,
  planPairing,
  problem,
} from '../../core/index.ts';
import { type Asked, useAsked, type YoungAnswer } from '../genetics/index.ts';
import { useApp } from '../model/app.ts';

/** What a clutch can hold, worked out in the worker. */
export interface Forecast {
  /** Why nothing can be said: no sire, or records that cannot be crossed. */
  readonly fault: Problem | null;
  readonly pairing: PlannedPairing | null;
  readonly looks: Asked<YoungAnswer> | null;
}

/** The looks of a clutch's young by its parents' records; `sire` stands in where the clutch names none. */
export function useForecast(clutch: ClutchRecord, sire: Id | null): Forecast {
  const { site } = useApp();
  const facility = site.facility.value;
  const pairing = sire === null ? null : planPairing(facility, sire, clutch.dam);
  const planned = pairing?.ok ? pairing.value : null;
  const species = planned?.dam.species ?? '';
  const siteRows = facility.site.loci.filter((row) => row.species === species);
  const key = JSON.stringify([planned?.sire.id, planned?.sire.traits, planned?.dam.traits, planned?.dam.sex, siteRows]);
  const ask = planned && { ask: 'young' as const, cross: planned.cross, species, siteRows, limit: MOST_LOOKS };
  const looks = useAsked(ask, key);
  const fault = pairing === null ? problem('clutch-sire-unknown') : pairing.ok ? null : pairing.problem;
  return { fault, pairing: planned, looks };
}
