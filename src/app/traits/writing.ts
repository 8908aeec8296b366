import { type AnimalRecord, type EventDraft, nameOf, type Problem } from '../../core/index.ts';
import type { App } from '../model/app.ts';

/** Writes on an animal's record and says so on the strip, where it can be taken back; null when it is durable. */
export async function writeOn(
  { site, strip, signs }: App,
  animal: AnimalRecord,
  draft: EventDraft,
  said: string,
): Promise<Problem | null> {
  const written = await site.write([draft]);
  if (!written.ok) {
    signs.give('refused');
    return written.problem;
  }
  signs.give('accepted');
  const name = nameOf(site.facility.value, animal.id);
  strip.add({ subject: animal.id, name, said, result: 'accepted', problem: null, events: written.value });
  return null;
}
