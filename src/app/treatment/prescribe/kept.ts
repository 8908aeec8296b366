import type { Id, Picture } from '../../../core/index.ts';
import { BLANK, type Draft } from './draft.ts';

/** What was typed and neither written nor left: a card that is scanned meanwhile must not take it away. */
const drafts = new Map<Id, Draft>();

/** The animal’s draft as it was left; blank where there is none. */
export function keptDraft(animal: Id): Draft {
  return drafts.get(animal) ?? BLANK;
}

/** The photos that were taken for it, kept apart from what is typed. */
const photos = new Map<Id, readonly Picture[]>();

/** The photos of an animal’s draft; none where there is none. */
export function keptPhotos(animal: Id): readonly Picture[] {
  return photos.get(animal) ?? [];
}

/** Keeps photos while the app is open. */
export function keepPhotos(animal: Id, pictures: readonly Picture[]): void {
  if (pictures.length === 0) photos.delete(animal);
  else photos.set(animal, pictures);
}

/** Keeps a draft while the app is open; a blank one is none. */
export function keepDraft(animal: Id, draft: Draft): void {
  const isBlank = Object.values(draft).every((text) => text === '');
  if (isBlank) drafts.delete(animal);
  else drafts.set(animal, draft);
}
