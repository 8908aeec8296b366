import type { Id } from '../../../core/index.ts';
import { BLANK, type Draft } from './draft.ts';

/** What was typed and neither written nor left: a card that is scanned meanwhile must not take it away. */
const drafts = new Map<Id, Draft>();

/** The animal’s draft as it was left; blank where there is none. */
export function keptDraft(animal: Id): Draft {
  return drafts.get(animal) ?? BLANK;
}

/** Keeps a draft while the app is open; a blank one is none. */
export function keepDraft(animal: Id, draft: Draft): void {
  const isBlank = Object.values(draft).every((text) => text === '');
  if (isBlank) drafts.delete(animal);
  else drafts.set(animal, draft);
}
