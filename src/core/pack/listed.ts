import { type Listing, listingOf } from '../care/index.ts';

/** What a list says of a species; that it is not found here does not mean that it is not listed. */
export function listedIn(species: string, list: Listing['list']): string {
  const found = listingOf(species).find((one) => one.list === list);
  return found?.words ?? `${species} was not found in the list as this version knows it: check the current one.`;
}

/** The snakes that G.S. 14-417.1(a) names, by the names of its text and by newer ones (the newer ones from memory). */
const LARGE_CONSTRICTORS: Readonly<Record<string, string>> = {
  'python reticulatus': 'Reticulated Python, Python reticulatus',
  'malayopython reticulatus': 'Reticulated Python, Python reticulatus',
  'python molurus': 'Burmese Python, Python molurus',
  'python bivittatus': 'Burmese Python, Python molurus',
  'python sebae': 'African Rock Python, Python sebae',
  'morelia amethistina': 'Amethystine Python, Morelia amethistina',
  'simalia amethistina': 'Amethystine Python, Morelia amethistina',
  'eunectes murinus': 'Green Anaconda, Eunectes murinus',
};

/** Whether that text names the species; its subspecies and hybrids count too, and only people know hybrids. */
export function largeConstrictor(species: string): string {
  const [genus = '', name = ''] = species.trim().toLowerCase().split(/\s+/);
  const key = `${genus} ${name}`;
  const found = Object.hasOwn(LARGE_CONSTRICTORS, key) ? LARGE_CONSTRICTORS[key] : undefined;
  return found === undefined ? 'not named in the text; its hybrids with one that is named are' : `yes: ${found}`;
}
