/** How a species brings its young, in words, and how many at once on average. */
export interface Brood {
  readonly clutch: 'clutch' | 'litter';
  readonly egg: 'egg' | 'embryo';
  readonly eggs: 'eggs' | 'embryos';
  readonly young: 'hatchling' | 'newborn';
  readonly youngs: 'hatchlings' | 'newborn';
  readonly mean: number;
  /** What the mean rests on. */
  readonly basis: string;
}

const EGGS = { clutch: 'clutch', egg: 'egg', eggs: 'eggs', young: 'hatchling', youngs: 'hatchlings' } as const;
const LIVE = { clutch: 'litter', egg: 'embryo', eggs: 'embryos', young: 'newborn', youngs: 'newborn' } as const;

/** Where nobody has given a mean. */
const PLAIN = { mean: 6, basis: 'six to begin with: no mean is known here' } as const;

/** The brood of a species. Boas bear live young (common knowledge of the trade, no source). */
export function broodOf(species: string): Brood {
  if (species === 'Python regius')
    return { ...EGGS, mean: 8, basis: 'mean clutch about 8.1 (common practice, no source)' };
  return species.startsWith('Boa ') ? { ...LIVE, ...PLAIN } : { ...EGGS, ...PLAIN };
}
