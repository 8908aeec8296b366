import {
  type AnimalRecord,
  type ConfirmedDose,
  type Day,
  type Decision,
  decideDose,
  decideOutcome,
  decideStop,
  type EventId,
  type OutcomeWord,
  type StopWord,
} from '../../core/index.ts';
import type { App } from '../model/app.ts';

/** What a confirmed dose would write, ask or refuse, by the site’s own rules; on a day, or today. */
export function decisionOn(app: App, animal: AnimalRecord, given: ConfirmedDose, day: Day | null): Decision {
  const { secondAtDoses } = app.site.facility.value.site.rules;
  return decideDose(animal, given, momentOf(app, day), {
    needsSecond: secondAtDoses,
    keeper: app.settings.keeper.value,
  });
}

/** What the vet’s word that ends a prescription would write. */
export function stopOf(app: App, animal: AnimalRecord, prescription: EventId, word: StopWord): Decision {
  return decideStop(animal, prescription, word, momentOf(app, null));
}

/** What words about how a treatment went would write. */
export function outcomeOf(app: App, animal: AnimalRecord, prescription: EventId, word: OutcomeWord): Decision {
  return decideOutcome(animal, prescription, word, momentOf(app, null));
}

function momentOf({ clock }: App, day: Day | null) {
  return { day: day ?? clock.today.value, today: clock.today.value, nowMs: clock.nowMs() };
}
