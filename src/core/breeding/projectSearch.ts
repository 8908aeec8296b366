import { type Fraction, isZero, toNumber } from '../genetics/index.ts';
import { type KnownYoung, knownYoung, type ProjectKeeps, wantedShare } from './projectCross.ts';
import type { Doses, Gene } from './projectGenes.ts';

/** Animals to begin with that carry the same, by the sexes that are at hand. */
export interface Founders {
  readonly doses: Doses;
  readonly sexes: readonly ('M' | 'F')[];
}

/** What routes are compared by: clutches, or years until the wanted young hatches. */
export type Aim = 'clutches' | 'years';

/** Which crosses a route may make: the parents, what is kept, and whether a parent is one of the animals to begin with. */
export type Rule = (cross: CrossOfRoute) => boolean;
export interface CrossOfRoute {
  readonly sire: Doses;
  readonly dam: Doses;
  /** Null for the last cross, which gives the wanted animal. */
  readonly young: Doses | null;
  readonly withFounder: boolean;
}

/** Everything a search needs besides its rule. */
export interface Ground {
  readonly genes: readonly Gene[];
  readonly crosses: CrossTable;
  readonly founders: readonly Founders[];
  readonly clutch: number;
  readonly years: { readonly M: number; readonly F: number; readonly clutch: number };
}

/** What can come of two animals, with the clutches that it takes as doubles; each cross is worked out once for all routes. */
export type CrossTable = (
  sire: Doses,
  dam: Doses,
) => {
  readonly young: readonly (KnownYoung & { readonly until: Until })[];
  readonly wanted: { readonly p: Fraction; readonly until: number } | null;
};
type Until = Readonly<Record<Held['kept'], number>>;

/** A cross of a route with its parents' own crosses; null for animals to begin with. */
export interface Made {
  readonly doses: Doses | null;
  readonly kept: ProjectKeeps;
  readonly p: Fraction;
  readonly sire: Held;
  readonly dam: Held;
}

/** Animals that are at hand at some time: what they carry, what they cost until then, and how they were made. */
export interface Held {
  readonly doses: Doses;
  readonly kept: 'M' | 'F' | 'pair';
  readonly clutches: number;
  /** Years from the beginning until they can be bred. */
  readonly ready: number;
  readonly made: Made | null;
}

/** The last cross of a route: from it comes the wanted animal. */
export interface Goal {
  readonly made: Made;
  readonly clutches: number;
  readonly years: number;
}

/**
 * The cheapest way to the wanted animal under a rule: as in Dijkstra's search, the cheapest animals that are not at hand yet come
 * next and are crossed with all that are (Knuth 1977, from memory); a step that two lines share is counted for both.
 */
export function cheapest(ground: Ground, rule: Rule, aim: Aim): Goal | null {
  const settled = new Map<string, Held>();
  const open = new Map<string, Held>();
  const cost = ({ clutches, ready }: Held): number =>
    aim === 'clutches' ? clutches + ready * TIE : ready + clutches * TIE;
  const offer = (held: Held): void => {
    const key = keyOf(held.doses, held.kept);
    const known = settled.get(key) ?? open.get(key);
    if (known === undefined || (!settled.has(key) && cost(held) < cost(known))) open.set(key, held);
  };
  for (const held of ground.founders.flatMap(foundersHeld)) offer(held);
  let best: Goal | null = null;
  for (;;) {
    const next = least(open, cost);
    // Costs only grow, so no later animal can better a goal that is cheaper already.
    if (next === null || (best !== null && cost(next) >= goalCost(best, aim))) return best;
    open.delete(keyOf(next.doses, next.kept));
    settled.set(keyOf(next.doses, next.kept), next);
    for (const [sire, dam] of partnersOf(next, settled)) {
      const goal = goalOf(ground, sire, dam, rule);
      if (goal !== null && (best === null || goalCost(goal, aim) < goalCost(best, aim))) best = goal;
      for (const held of heldFrom(ground, sire, dam, rule)) offer(held);
    }
  }
}

/** Weighs the other figure only where the first one is equal. */
const TIE = 1e-6;

function goalCost({ clutches, years }: Goal, aim: Aim): number {
  return aim === 'clutches' ? clutches + years * TIE : years + clutches * TIE;
}

function foundersHeld({ doses, sexes }: Founders): readonly Held[] {
  const kept = [...sexes, ...(sexes.length === 2 ? (['pair'] as const) : [])];
  return kept.map((one) => ({ doses, kept: one, clutches: 0, ready: 0, made: null }));
}

function least(open: ReadonlyMap<string, Held>, cost: (held: Held) => number): Held | null {
  let best: Held | null = null;
  for (const held of open.values()) if (best === null || cost(held) < cost(best)) best = held;
  return best;
}

/** Whom an animal can be crossed with: a pair with itself, one of a sex with all of the other. */
function partnersOf(one: Held, settled: ReadonlyMap<string, Held>): readonly (readonly [sire: Held, dam: Held])[] {
  if (one.kept === 'pair') return [[one, one]];
  const others = [...settled.values()].filter(({ kept }) => kept === (one.kept === 'M' ? 'F' : 'M'));
  return others.map((other) => (one.kept === 'M' ? [one, other] : [other, one]));
}

/** A table that remembers what it worked out; the clutches are those of `clutchesUntil` as doubles, to compare by. */
export function crossTable(genes: readonly Gene[], clutch: number): CrossTable {
  const known = new Map<string, ReturnType<CrossTable>>();
  return (sire, dam) => {
    const key = `${sire.join('')} ${dam.join('')}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const until = (chance: number): number => -1 / Math.expm1(clutch * Math.log1p(-chance));
    const share = wantedShare(genes, sire, dam);
    const found = {
      young: knownYoung(genes, sire, dam)
        .filter(({ doses }) => !same(doses, sire) || !same(doses, dam))
        .map((one) => {
          const p = toNumber(one.p);
          const single = until(p / 2);
          return { ...one, until: { M: single, F: single, pair: 2 * single - until(p) } };
        }),
      wanted: isZero(share) ? null : { p: share, until: until(toNumber(share)) },
    };
    known.set(key, found);
    return found;
  };
}

function goalOf({ crosses, years }: Ground, sire: Held, dam: Held, rule: Rule): Goal | null {
  if (!rule(crossOf(sire, dam, null))) return null;
  const { wanted } = crosses(sire.doses, dam.doses);
  if (wanted === null) return null;
  return {
    made: { doses: null, kept: 'one', p: wanted.p, sire, dam },
    clutches: before(sire, dam) + wanted.until,
    years: Math.max(sire.ready, dam.ready) + wanted.until * years.clutch,
  };
}

function heldFrom(ground: Ground, sire: Held, dam: Held, rule: Rule): readonly Held[] {
  return ground
    .crosses(sire.doses, dam.doses)
    .young.filter(({ doses }) => rule(crossOf(sire, dam, doses)))
    .flatMap((young) => (['M', 'F', 'pair'] as const).map((kept) => heldOf(ground, sire, dam, young, kept)));
}

function heldOf(
  { years }: Ground,
  sire: Held,
  dam: Held,
  { doses, p, until }: KnownYoung & { readonly until: Until },
  kept: Held['kept'],
): Held {
  const hatched = Math.max(sire.ready, dam.ready) + until[kept] * years.clutch;
  const grows = kept === 'pair' ? Math.max(years.M, years.F) : years[kept];
  return {
    doses,
    kept,
    clutches: before(sire, dam) + until[kept],
    ready: hatched + grows,
    made: { doses, kept, p, sire, dam },
  };
}

/** What both parents cost; a pair is counted once. */
function before(sire: Held, dam: Held): number {
  return sire === dam ? sire.clutches : sire.clutches + dam.clutches;
}

function crossOf(sire: Held, dam: Held, young: Doses | null): CrossOfRoute {
  return { sire: sire.doses, dam: dam.doses, young, withFounder: sire.made === null || dam.made === null };
}

function same(a: Doses, b: Doses): boolean {
  return a.every((dose, at) => dose === b[at]);
}

function keyOf(doses: Doses, kept: string): string {
  return `${doses.join('')}${kept}`;
}
