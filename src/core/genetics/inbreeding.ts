import { AncestorWalk } from './ancestorWalk.ts';
import { type OnProgress, ownShare, type PedigreeArrays } from './pedigreeArrays.ts';
import { LANES, type SireFamily, SireWalk } from './sireWalk.ts';

/** One generation of a pedigree on its way: those with two known parents, by sire, and how many ancestors they have. */
interface Generation {
  readonly families: readonly SireFamily[];
  readonly ancestors: number;
}

/** Which of the two ways works a generation out. */
type Choice = (generation: Generation) => 'by ancestors' | 'by sires';

/**
 * Inbreeding coefficients of a whole pedigree as doubles, generation by generation on the way that takes fewer steps:
 * Meuwissen & Luo 1992 where lines are short or sires many, the indirect way of Colleau 2002 by sires (as Sargolzaei,
 * Iwaisaki & Colleau 2005) where they are long. `founderF` holds what is known of founders.
 */
export function inbreedingOf(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  return byGenerations(pedigree, founderF, onProgress, fewerSteps(pedigree));
}

/** {@link inbreedingOf}, each pair's ancestors one by one. */
export function inbreedingByAncestors(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  return byGenerations(pedigree, founderF, onProgress, () => 'by ancestors');
}

/** {@link inbreedingOf}, all mates of a sire in one generation from a single walk up and down the pedigree. */
export function inbreedingBySires(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress = () => undefined,
): Float64Array {
  return byGenerations(pedigree, founderF, onProgress, () => 'by sires');
}

function byGenerations(
  pedigree: PedigreeArrays,
  founderF: Float64Array,
  onProgress: OnProgress,
  choice: Choice,
): Float64Array {
  const size = pedigree.sire.length;
  const found = new Float64Array(size);
  const own = new Float64Array(size);
  const [ancestorWalk, sireWalk] = [new AncestorWalk(pedigree, own), new SireWalk(pedigree, own)];
  const tell = teller(onProgress, size);
  for (const level of levelsOf(pedigree.depth)) {
    for (const at of level) {
      own[at] = ownShare(pedigree, found, founderF, at);
      if ((pedigree.sire[at] ?? -1) < 0 && (pedigree.dam[at] ?? -1) < 0) found[at] = founderF[at] ?? 0;
    }
    const families = familiesOf(level, pedigree);
    const young = families.flatMap((family) => family.young);
    const ancestors = sireWalk.enter(young);
    const isLong = choice({ families, ancestors }) === 'by sires';
    for (let at = 0; at < families.length; at += LANES) {
      const some = families.slice(at, at + LANES);
      if (isLong) sireWalk.families(some, found);
      else for (const family of some) eachPair(family, pedigree, ancestorWalk, found);
      tell(some.reduce((sum, family) => sum + family.young.length, 0));
    }
    tell(level.length - young.length);
  }
  onProgress(size, size);
  return found;
}

const REPORT_EVERY = 1024;

/** Adds up what is done and passes it on now and then. */
function teller(onProgress: OnProgress, size: number): (more: number) => void {
  let [done, told] = [0, 0];
  return (more) => {
    done += more;
    if (done < told + REPORT_EVERY) return;
    told = done;
    onProgress(done, size);
  };
}

/** Full sibs have the same inbreeding: a pair is worked out once. */
function eachPair({ young }: SireFamily, { dam }: PedigreeArrays, walk: AncestorWalk, found: Float64Array): void {
  const byDam = new Map<number, number>();
  for (const at of young) {
    const mate = dam[at] ?? -1;
    const known = byDam.get(mate) ?? walk.withItself(at) - 1;
    byDam.set(mate, known);
    found[at] = known;
  }
}

/** A step on the heap costs about as much as so many steps of one lane; measured in tests/bench. */
const HEAP_STEP = 20;

function fewerSteps(pedigree: PedigreeArrays): Choice {
  const ways = waysUp(pedigree);
  return ({ families, ancestors }) => {
    const bySires = 2 * ancestors * families.length;
    let byAncestors = 0;
    for (const { young } of families) {
      const once = new Map(young.map((at) => [pedigree.dam[at] ?? -1, at]));
      for (const at of once.values()) byAncestors += HEAP_STEP * Math.min(ancestors, ways[at] ?? 0);
    }
    return byAncestors < bySires ? 'by ancestors' : 'by sires';
  };
}

/** How many lines lead up from each animal: at least as many as it has ancestors. */
function waysUp({ sire, dam }: PedigreeArrays): Float64Array {
  const ways = new Float64Array(sire.length);
  const through = (parent: number): number => (parent < 0 ? 0 : 1 + (ways[parent] ?? 0));
  for (let at = 0; at < ways.length; at++) ways[at] = through(sire[at] ?? -1) + through(dam[at] ?? -1);
  return ways;
}

function levelsOf(depth: Int32Array): readonly (readonly number[])[] {
  const levels: number[][] = [];
  depth.forEach((level, at) => {
    levels[level] ??= [];
    levels[level]?.push(at);
  });
  return levels;
}

function familiesOf(level: readonly number[], { sire, dam }: PedigreeArrays): readonly SireFamily[] {
  const groups = new Map<number, number[]>();
  for (const at of level) {
    const s = sire[at] ?? -1;
    if (s < 0 || (dam[at] ?? -1) < 0) continue;
    const list = groups.get(s);
    if (list === undefined) groups.set(s, [at]);
    else list.push(at);
  }
  // Sires of like age side by side: the walk up starts at the youngest of them.
  return [...groups].map(([s, young]) => ({ sire: s, young })).sort((a, b) => a.sire - b.sire);
}
