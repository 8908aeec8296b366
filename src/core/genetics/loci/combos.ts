import type { Combo } from './row.ts';

const PRACTICE = 'common practice, no source';

/** Trade names that mean several genes. */
export const COMBOS: readonly (Combo & { readonly species: string })[] = [
  { species: 'Python regius', name: 'Bumblebee', means: [['Spi'], ['Pas']], basis: PRACTICE },
  { species: 'Python regius', name: 'Spinner', means: [['Spi'], ['Pin']], basis: 'from memory' },
  { species: 'Python regius', name: 'Lemon Blast', means: [['Pas'], ['Pin']], basis: PRACTICE },
  { species: 'Python regius', name: 'Kingpin', means: [['Pin'], ['Les']], basis: PRACTICE },
  { species: 'Python regius', name: 'King Spin', means: [['Spi'], ['Pin'], ['Les']], basis: PRACTICE },
  {
    species: 'Pantherophis guttatus',
    name: 'Snow',
    means: [
      ['amel', 'amel'],
      ['ane', 'ane'],
    ],
    basis: PRACTICE,
  },
];
