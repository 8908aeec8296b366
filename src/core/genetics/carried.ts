import { add, compare, divide, type Fraction, isZero, ONE, toNumber, ZERO } from './fraction.ts';
import { type LocusRow, type LocusTable, showsInOneDose } from './loci/index.ts';
import type { Slot, TraitPiece } from './notation/index.ts';
import { HIDDEN } from './outcomes.ts';
import { ABSENT, lookOf, nameOf, WILD } from './phenotype.ts';
import { locusWords, pairAside, sayChance } from './words/index.ts';

/** What a young of some look carries unseen. */
export interface CarriedChance {
  readonly locus: string;
  /** `het Clown`, `66 % possible het Clown`, `1 in 3 possible two copies of Pinstripe`. */
  readonly words: string;
  /** Among the young of this look; where the words end in `if male` or `if female`, among those of that sex. */
  readonly chance: Fraction;
  readonly sure: boolean;
}

/** Genotype keys with their chances. */
export type KeyChances = ReadonlyMap<string, Fraction>;

/** What young of a look carry unseen at one locus, likeliest first. */
export function carriedAt(row: LocusRow, label: string, keys: KeyChances, loci: LocusTable): readonly CarriedChance[] {
  const unlike = shareOf(keys, (key) => key.includes('|'));
  const like = shareOf(keys, (key) => !key.includes('|'));
  const words = (key: string): readonly string[] => [unseen(row, label, key, loci), sideOf(row, key)];
  const [first, second] = [tally(unlike, words), tally(like, words)];
  const all = [...new Set([...first.keys(), ...second.keys()])].filter((one) => one !== '');
  const unlikeSex = row.sexLink?.system === 'ZW' ? 'female' : 'male';
  const found = all.flatMap((one): readonly CarriedChance[] => {
    const [a, b] = [first.get(one) ?? ZERO, second.get(one) ?? ZERO];
    if (unlike.size === 0 || like.size === 0 || compare(a, b) === 0)
      return [carried(row, one, unlike.size === 0 ? b : a, '')];
    const likeSex = unlikeSex === 'male' ? 'female' : 'male';
    return [carried(row, one, a, `, if ${unlikeSex}`), carried(row, one, b, `, if ${likeSex}`)];
  });
  return found.filter((one) => !isZero(one.chance)).sort((a, b) => compare(b.chance, a.chance));
}

/** The chances of the keys that fit, as shares of all that fit. */
export function shareOf(keys: KeyChances, fits: (key: string) => boolean): KeyChances {
  const own = [...keys].filter(([key, p]) => fits(key) && !isZero(p));
  const total = own.reduce((sum, [, p]) => add(sum, p), ZERO);
  return new Map(own.map(([key, p]) => [key, divide(p, total)] as const));
}

function tally(keys: KeyChances, wordsOf: (key: string) => readonly string[]): KeyChances {
  const found = new Map<string, Fraction>();
  for (const [key, p] of keys) for (const one of wordsOf(key)) found.set(one, add(found.get(one) ?? ZERO, p));
  return found;
}

function carried(row: LocusRow, what: string, chance: Fraction, whom: string): CarriedChance {
  const sure = compare(chance, ONE) === 0;
  return { locus: row.locus, words: `${sure ? what : possible(what, chance)}${whom}`, chance, sure };
}

/** The trade says percents of hets; of all else `p in q` is plainer. */
function possible(what: string, chance: Fraction): string {
  const [p, q] = [Number(chance.top), Number(chance.bottom)];
  if (chance.bottom >= LONG) return `${roundly(chance)} possible ${what}`;
  return what.startsWith('het ') ? `${sayChance(p, q)} possible ${what}` : `${p} in ${q} possible ${what}`;
}

/** From here on `p in q` is no longer read at a glance. */
const LONG = 1000n;

function roundly(chance: Fraction): string {
  const percent = toNumber(chance) * 100;
  if (percent < 0.1) return 'under 0.1 %';
  if (percent > 99.9) return 'over 99.9 %';
  return `about ${percent.toFixed(1)} %`;
}

/** What a genotype holds beyond its look; nothing if the look tells it. */
function unseen(row: LocusRow, label: string, key: string, loci: LocusTable): string {
  const [a = WILD, b = WILD] = key.split(/[/|]/);
  if (label === HIDDEN) return pairWords(row, a, b, loci);
  if (b === ABSENT) return '';
  for (const [x, y] of [
    [a, b],
    [b, a],
  ] as const) {
    const isSeen = (x === WILD || showsInOneDose(x)) && lookOf(row, `${x}/${WILD}`) === label;
    if (isSeen) return besideSeen(row, x, y);
  }
  return amongPairs(row, label, a, b);
}

/** One copy makes the look alone, so the other may be anything that it covers. */
function besideSeen(row: LocusRow, seen: string, other: string): string {
  if (other === WILD) return '';
  if (other === seen) return `two copies of ${nameOf(row, other)}`;
  return showsInOneDose(other) ? `one copy of ${nameOf(row, other)}` : `het ${nameOf(row, other)}`;
}

/** Both copies make the look: told only where other pairs look the same. */
function amongPairs(row: LocusRow, label: string, a: string, b: string): string {
  if (a === b && !showsInOneDose(a)) return '';
  const pure = (symbol: string): boolean => symbol !== WILD && lookOf(row, `${symbol}/${symbol}`) === label;
  if (a !== b && pure(a) !== pure(b)) {
    const other = pure(a) ? b : a;
    if (other !== WILD && !showsInOneDose(other)) return `het ${nameOf(row, other)}`;
  }
  return row.named.filter((one) => (one.looks ?? one.name) === label).length > 1 ? pairAside(row, [a, b]) : '';
}

function pairWords(row: LocusRow, a: string, b: string, loci: LocusTable): string {
  if (a === WILD && (b === WILD || b === ABSENT)) return '';
  const slot = (symbol: string): Slot => (symbol === WILD ? { kind: 'wild' } : { kind: 'allele', symbol });
  const second = b === ABSENT ? ([{ kind: 'absent' }] as const) : [slot(b)];
  const piece: TraitPiece = {
    loci: [row.locus],
    copies: [[slot(a)], second],
    second: b === ABSENT ? 'W' : 'same',
  };
  return locusWords({ species: loci.species, pieces: [piece] }, loci)[0]?.long ?? '';
}

/** Which copy of a male lies on the Y, where that can matter. */
function sideOf(row: LocusRow, key: string): string {
  const [x = WILD, y = WILD] = key.split('|');
  if (!key.includes('|') || y === ABSENT || x === y) return '';
  if (y === WILD) return `${nameOf(row, x)} female-maker`;
  return x === WILD ? `${nameOf(row, y)} male-maker` : `${nameOf(row, x)} on X and ${nameOf(row, y)} on Y`;
}
