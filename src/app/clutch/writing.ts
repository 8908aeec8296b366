import {
  type ClutchAct,
  type ClutchRecord,
  type Day,
  type Decision,
  decideClutch,
  type EventDraft,
  type Id,
  type LogEvent,
  type Moment,
  type Problem,
  type Result,
} from '../../core/index.ts';
import type { App } from '../model/app.ts';

/** The moment for a rule: the day that is written for, and now. */
export function momentOn({ clock }: App, day: Day | null): Moment {
  const today = clock.today.value;
  return { day: day ?? today, today, nowMs: clock.nowMs() };
}

/** Writes an act on a clutch, or asks about it; a refusal is given back for the spot where it happened. */
export async function writeAct(
  app: App,
  clutch: ClutchRecord,
  act: ClutchAct,
  day: Day | null = null,
): Promise<Problem | null> {
  const decision = decideClutch(app.site.facility.value, clutch, act, momentOn(app, day));
  if (decision.kind === 'refused') {
    app.signs.give('refused');
    return decision.problem;
  }
  await app.desk.decided(clutch.dam, decision);
  return null;
}

/** Candles every egg that nobody has candled yet as good, in one entry. */
export async function candleAllGood(app: App, clutch: ClutchRecord, eggs: readonly number[]): Promise<void> {
  const facility = app.site.facility.value;
  const moment = momentOn(app, null);
  const all = eggs.map((egg) => decideClutch(facility, clutch, { do: 'candled', egg, state: 'good' }, moment));
  const drafts = all.flatMap((one) => (one.kind === 'refused' ? [] : one.drafts));
  const refused = all.find((one) => one.kind === 'refused');
  const said = `${eggs.length} ${eggs.length === 1 ? 'egg' : 'eggs'} candled: good`;
  await app.desk.decided(clutch.dam, refused ?? { kind: 'accepted', drafts, said });
}

/** Whom an entry is of, and what it says on the strip. */
interface About {
  readonly subject: Id;
  readonly name: string;
  readonly said: string;
}

/** Writes what needs new ids in one transaction and puts it on the strip, where one touch takes all of it back. */
export async function writeMinted(
  { site, strip, signs }: App,
  about: About,
  make: (mint: () => Id) => readonly EventDraft[],
): Promise<Result<readonly LogEvent[]>> {
  const written = await site.writeNew(make);
  signs.give(written.ok ? 'accepted' : 'refused');
  if (written.ok) strip.add({ ...about, result: 'accepted', problem: null, events: written.value });
  return written;
}

/** What a decision writes; nothing where it was refused. */
export function draftsOf(decision: Decision): readonly EventDraft[] {
  return decision.kind === 'refused' ? [] : decision.drafts;
}
