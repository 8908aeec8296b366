import type { OwnPlan } from '../animal/index.ts';
import { ok, type Result, refuse } from '../problems.ts';
import { bandFor, type FeedBand, type Species, speciesOf } from './species.ts';

/** What an animal of this mass is fed: percent of body mass a meal and days between meals, with where they come from. */
export interface FeedPlan {
  readonly percent: readonly [number, number];
  readonly everyDays: readonly [number, number];
  readonly prey: string | null;
  readonly count: number | null;
  readonly because: string;
}

/**
 * Rule CARE-PLAN: the keeper's own figures where given, the species' band for the rest.
 * Without a weight the interval spans all bands. Errors: `species-unknown`, `plan-malformed`.
 */
export function feedPlan(speciesName: string, massG: number | null, own: OwnPlan | null): Result<FeedPlan> {
  const wrong = own === null ? null : whatIsWrong(own);
  if (wrong !== null) return refuse('plan-malformed', { why: wrong }, 'plan');
  const prior = priorPlan(speciesName, massG);
  const percent = own?.percent ?? prior?.percent;
  const everyDays = own?.everyDays ?? prior?.everyDays;
  if (percent === undefined || everyDays === undefined)
    return refuse('species-unknown', { species: speciesName }, 'species');
  if (own === null) return ok({ percent, everyDays, prey: null, count: null, because: prior?.because ?? '' });
  const mine = [own.percent && 'percent', own.everyDays && 'days'].filter(Boolean).join(' and ');
  const because = [mine && `keeper’s own ${mine}`, (!own.percent || !own.everyDays) && prior?.because]
    .filter(Boolean)
    .join('; ');
  return ok({ percent, everyDays, prey: own.prey ?? null, count: own.count ?? null, because });
}

function priorPlan(
  speciesName: string,
  massG: number | null,
): Pick<FeedPlan, 'percent' | 'everyDays' | 'because'> | undefined {
  const species = speciesOf(speciesName);
  if (species === undefined) return undefined;
  if (massG === null) {
    const spans = (key: 'percent' | 'everyDays'): readonly [number, number] => [
      Math.min(...species.bands.map((band) => band[key][0])),
      Math.max(...species.bands.map((band) => band[key][1])),
    ];
    return {
      percent: spans('percent'),
      everyDays: spans('everyDays'),
      because: `all bands of ${species.name}: no weight is known`,
    };
  }
  const band = bandFor(species, massG);
  if (band === undefined) return undefined;
  return { percent: band.percent, everyDays: band.everyDays, because: bandWords(species, band) };
}

/** The words of a band are asked for with every animal of it, so they are made once. */
const BAND_WORDS = new WeakMap<FeedBand, string>();

function bandWords({ name }: Species, band: FeedBand): string {
  const known = BAND_WORDS.get(band);
  if (known !== undefined) return known;
  const size = band.belowG === null ? 'largest band' : `under ${band.belowG} g`;
  const words = `${name}, ${size} (${band.mark}: ${band.source})`;
  BAND_WORDS.set(band, words);
  return words;
}

function whatIsWrong(own: OwnPlan): string | null {
  if (own.percent && own.percent[0] > own.percent[1]) return 'percent runs from high to low';
  if (own.everyDays && own.everyDays[0] > own.everyDays[1]) return 'days run from high to low';
  return null;
}
