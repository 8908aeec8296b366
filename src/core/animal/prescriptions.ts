import { type Day, dayNumber, isDay } from '../days.ts';
import type { EventOf, Payload, SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';

/** A dose that was given on a prescription. */
export interface GivenDose {
  readonly id: EventId;
  readonly day: Day;
  /** When it was given, in milliseconds since 1970. */
  readonly atMs: number;
  readonly ml: number;
  readonly by: string;
  readonly second: string | null;
}

/** A prescription of an animal with what was given on it. */
export interface PrescriptionRecord {
  readonly id: EventId;
  readonly writtenOn: Day;
  readonly written: Payload<'prescription-written'>;
  readonly stopped: { readonly day: Day; readonly by: string } | null;
  /** Oldest first. */
  readonly given: readonly GivenDose[];
}

/** An animal’s prescriptions, oldest first; doses and ends that name none of them are left out. */
export function prescriptionsOf(animal: Id, events: readonly SiteEvent[]): readonly PrescriptionRecord[] {
  const own = events.filter((event) => event.subjects[0] === animal);
  return own.flatMap((event) => {
    if (event.kind !== 'prescription-written') return [];
    const stop = own.find((one) => one.kind === 'prescription-stopped' && one.payload.prescription === event.id);
    const stopped = stop?.kind === 'prescription-stopped' ? { day: stop.day, by: stop.payload.by } : null;
    const given = own.flatMap((one) =>
      one.kind === 'dose-given' && one.payload.prescription === event.id ? [givenDose(one)] : [],
    );
    return [{ id: event.id, writtenOn: event.day, written: event.payload, stopped, given }];
  });
}

function givenDose(event: EventOf<'dose-given'>): GivenDose {
  const { ml, second } = event.payload;
  return { id: event.id, day: event.day, atMs: instantMs(event), ml, by: event.keeper, second: second ?? null };
}

const DAY_MS = 86_400_000;

/** The instant of an event; core has no clock, so it is worked out from its text. */
function instantMs({ at, day }: SiteEvent): number {
  const date = at.slice(0, 10);
  const [hours = 0, minutes = 0, seconds = 0] = at.slice(11, 19).split(':').map(Number);
  const days = dayNumber(isDay(date) ? date : day);
  return days * DAY_MS + ((hours * 60 + minutes) * 60 + seconds) * 1000;
}
