import { type AnimalRecord, decidePaper, type EventId, type Picture } from '../../core/index.ts';
import type { App } from '../model/app.ts';

/** Keeps a photo of a paper, for an event such as a prescription or for the animal alone. */
export async function keepPaper(
  { desk, clock }: App,
  animal: AnimalRecord,
  picture: Picture,
  of: EventId | null,
): Promise<void> {
  const today = clock.today.value;
  await desk.decided(animal.id, decidePaper(animal, picture, of, { day: today, today, nowMs: clock.nowMs() }));
}
