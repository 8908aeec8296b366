import { type ReadonlySignal, signal } from '@preact/signals';
import {
  type EventId,
  feedRack,
  type Id,
  nameOf,
  offerAmended,
  type Problem,
  preyUsed,
  type Result,
  sayPrey,
} from '../../core/index.ts';
import type { Clock } from './clock.ts';
import type { Signs } from './signs.ts';
import type { SiteModel } from './site.ts';
import type { StripModel } from './strip.ts';

/** One animal of a rack that was fed as planned, and whether it turned out to refuse. */
export interface RoundOffer {
  readonly id: EventId;
  readonly payload: object;
  readonly refused: boolean;
}

/** A rack that was fed with one touch: until it is ended, each scanned animal of it is one that refused. */
export interface OpenRound {
  readonly place: Id;
  readonly name: string;
  readonly day: string;
  readonly offers: Readonly<Record<Id, RoundOffer>>;
  /** Who was left out, with the reason. */
  readonly left: readonly { readonly id: Id; readonly problem: Problem }[];
  /** `57 × rat weaned`: what was taken out of the thaw box. */
  readonly used: readonly string[];
}

/** The round of one rack: all as planned, then the exceptions by scan. */
export interface RackRoundModel {
  readonly open: ReadonlySignal<OpenRound | null>;
  /** Feeds everybody in a place who is due, in one transaction. Errors: those of writing. */
  begin(place: Id): Promise<Result<OpenRound>>;
  /** True if the animal is of the open round: then it is written as refused, or as taken if it was refused before. */
  except(id: Id): Promise<boolean>;
  end(): void;
}

/** Kept on the device so that a page closed in the middle of a rack loses nothing of the round. */
const KEY = 'rack-round';

interface RackRoundParts {
  readonly site: SiteModel;
  readonly clock: Clock;
  readonly strip: StripModel;
  readonly signs: Signs;
}

export function createRackRound({ site, clock, strip, signs }: RackRoundParts): RackRoundModel {
  const open = signal<OpenRound | null>(kept(clock.today.value));

  function set(next: OpenRound | null): void {
    open.value = next;
    if (next === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify(next));
  }

  async function begin(place: Id): Promise<Result<OpenRound>> {
    const facility = site.facility.value;
    const today = clock.today.value;
    const feeding = feedRack(facility, place, { day: today, today, nowMs: clock.nowMs() });
    const written = await site.write(feeding.drafts);
    signs.give(written.ok ? 'accepted' : 'refused');
    if (!written.ok) return written;
    const name = nameOf(facility, place);
    const offers = Object.fromEntries(
      written.value.map((event) => [
        event.subjects[0],
        { id: event.id, payload: event.payload as object, refused: false },
      ]),
    );
    const used = preyUsed(feeding.fed).map(([prey, count]) => `${count} × ${sayPrey(prey)}`);
    const left = feeding.left.map(({ animal, problem }) => ({ id: animal.id, problem }));
    const round: OpenRound = { place, name, day: today, offers, left, used };
    if (written.value.length > 0) {
      const said = `fed as planned: ${written.value.length}`;
      strip.add({ subject: place, name, said, result: 'accepted', problem: null, events: written.value });
    }
    set(round);
    return { ok: true, value: round };
  }

  async function except(id: Id): Promise<boolean> {
    const round = open.value;
    const offer = round?.offers[id];
    const animal = site.facility.value.animals.get(id);
    if (round === null || offer === undefined || animal === undefined) return false;
    const outcome = offer.refused ? 'taken' : 'refused';
    const slip = await site.write([offerAmended(animal, offer, outcome, { day: clock.today.value })]);
    signs.give(slip.ok ? 'accepted' : 'refused');
    const name = nameOf(site.facility.value, id);
    const said = `${outcome} instead`;
    if (slip.ok) {
      set({ ...round, offers: { ...round.offers, [id]: { ...offer, refused: !offer.refused } } });
      strip.add({ subject: id, name, said, result: 'accepted', problem: null, events: slip.value });
    } else strip.add({ subject: id, name, said: `not written: ${said}`, result: 'refused', problem: slip.problem });
    return true;
  }

  return { open, begin, except, end: () => set(null) };
}

/** A round of another day is over. */
function kept(today: string): OpenRound | null {
  try {
    const round = JSON.parse(localStorage.getItem(KEY) ?? 'null') as OpenRound | null;
    return round !== null && round.day === today ? round : null;
  } catch {
    return null;
  }
}
