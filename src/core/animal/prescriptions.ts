import type { Day } from '../days.ts';
import type { EventOf, Payload, SiteEvent } from '../events/index.ts';
import type { EventId, Id } from '../ids.ts';
import { instantMs } from '../instants.ts';

/** A dose that was given on a prescription. */
export interface GivenDose {
  readonly id: EventId;
  readonly day: Day;
  /** When it was given, in milliseconds since 1970. */
  readonly atMs: number;
  readonly ml: number;
  readonly by: string;
  readonly second: string | null;
  readonly lot: string | null;
  readonly note: string | null;
}

/** How a treatment went, as somebody wrote it down. */
export interface Outcome {
  readonly id: EventId;
  readonly day: Day;
  readonly words: string;
  readonly by: string;
}

/** A prescription of an animal with what was given on it. */
export interface PrescriptionRecord {
  readonly id: EventId;
  readonly writtenOn: Day;
  readonly written: Payload<'prescription-written'>;
  readonly stopped: { readonly day: Day; readonly by: string; readonly why: string | null } | null;
  /** Oldest first. */
  readonly given: readonly GivenDose[];
  /** Oldest first; none takes another's place. */
  readonly outcomes: readonly Outcome[];
}

/** An animal’s prescriptions, oldest first; doses and ends that name none of them are left out. */
export function prescriptionsOf(animal: Id, events: readonly SiteEvent[]): readonly PrescriptionRecord[] {
  // Few animals ever have one, and all events of the others would be sorted out for nothing.
  if (!events.some((event) => event.kind === 'prescription-written')) return [];
  const own = events.filter((event) => event.subjects[0] === animal);
  return own.flatMap((event) => (event.kind === 'prescription-written' ? [recordOf(event, own)] : []));
}

function recordOf(
  { id, day, payload }: EventOf<'prescription-written'>,
  own: readonly SiteEvent[],
): PrescriptionRecord {
  const about = own.filter(isAbout).filter((one) => one.payload.prescription === id);
  const [stopped = null] = about.flatMap((one) => (one.kind === 'prescription-stopped' ? [stopOf(one)] : []));
  return {
    ...{ id, writtenOn: day, written: payload, stopped },
    given: about.flatMap((one) => (one.kind === 'dose-given' ? [givenDose(one)] : [])),
    outcomes: about.flatMap((one) => (one.kind === 'outcome-noted' ? [outcomeOf(one)] : [])),
  };
}

type About = EventOf<'dose-given'> | EventOf<'prescription-stopped'> | EventOf<'outcome-noted'>;

function isAbout(event: SiteEvent): event is About {
  return event.kind === 'dose-given' || event.kind === 'prescription-stopped' || event.kind === 'outcome-noted';
}

function stopOf({ day, payload: { by, why } }: EventOf<'prescription-stopped'>) {
  return { day, by, why: why ?? null };
}

function outcomeOf({ id, day, keeper, payload }: EventOf<'outcome-noted'>): Outcome {
  return { id, day, words: payload.words, by: payload.by ?? keeper };
}

function givenDose({ id, day, at, keeper, payload }: EventOf<'dose-given'>): GivenDose {
  const { ml, second, lot, note } = payload;
  const said = { second: second ?? null, lot: lot ?? null, note: note ?? null };
  return { id, day, atMs: instantMs(at, day), ml, by: keeper, ...said };
}
