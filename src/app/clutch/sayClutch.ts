import { type ClutchRecord, type Facility, nameOf } from '../../core/index.ts';

/** What people call a clutch: by the female that laid it. */
export function sayClutch(facility: Facility, { bears, dam }: ClutchRecord): string {
  return `${bears === 'eggs' ? 'Clutch' : 'Litter'} of ${nameOf(facility, dam)}`;
}

/** `7 eggs, 1 slug`; of a litter `9 young, 1 stillborn`. */
export function sayCount({ bears, eggs, slugs, hatched }: ClutchRecord): string {
  const slugWords = slugs === 0 ? [] : [counted(slugs, 'slug')];
  if (bears === 'eggs') return [counted(eggs, 'egg'), ...slugWords].join(', ');
  const stillborn = eggs - (hatched ?? eggs);
  return [`${hatched ?? eggs} young`, ...(stillborn === 0 ? [] : [`${stillborn} stillborn`]), ...slugWords].join(', ');
}

/** `1 egg`, `3 eggs`. */
export function counted(count: number, word: string): string {
  return `${count} ${count === 1 ? word : `${word}s`}`;
}
