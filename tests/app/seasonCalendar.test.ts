import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarName, entriesOf, stampOfInstant } from '../../src/app/season/calendarEntries.ts';
import { addDays, foldFacility, icsText, type LogEvent, seasonBoard } from '../../src/core/index.ts';
import { ago, CLUTCH, GORSE, IVY, JUNIPER, seasonLog, TODAY } from '../browser/seasonHouse.ts';
import { eventsOf } from '../cli/sampleSite.ts';

const LOG = seasonLog();

function entries(log: readonly LogEvent[] = LOG, on = TODAY) {
  return entriesOf(seasonBoard(foldFacility(log), on));
}

describe('the calendar of due windows', () => {
  it('has an entry for each window of a female and of a clutch, with where its figures come from', () => {
    const laying = entries().find(({ uid }) => uid.startsWith(`tubwright-laid-${JUNIPER.id}`));
    expect(laying?.summary).toBe('Laying: Juniper');
    expect(laying?.description).toContain('usually 28–32 d (weak)');
    expect(laying?.description).toContain('BREED-CALENDAR');
    expect(entries().some(({ uid }) => uid === `tubwright-hatched-${CLUTCH}`)).toBe(true);
    expect(new Set(entries().map(({ uid }) => uid)).size).toBe(entries().length);
  });

  it('keeps an entry’s uid while its window moves: a later ovulation, another day', () => {
    const uidOf = (all: ReturnType<typeof entries>, of: string): string | undefined =>
      all.find(({ summary }) => summary === of)?.uid;
    const later = [...LOG, ...eventsOf([[ago(3), 'ovulation-seen', [IVY.id]]], 900)];
    const [before, after] = [entries(), entries(later)];
    const from = (all: typeof before): string | undefined =>
      all.find(({ summary }) => summary === 'Pre-lay shed: Ivy')?.from;
    expect(from(after)).not.toBe(from(before));
    expect(uidOf(after, 'Pre-lay shed: Ivy')).toBe(uidOf(before, 'Pre-lay shed: Ivy'));
    expect(uidOf(entries(LOG, addDays(TODAY, 2)), 'Laying: Juniper')).toBe(uidOf(before, 'Laying: Juniper'));
    expect(before.some(({ summary }) => summary.includes(GORSE.name))).toBe(false);
  });

  it('has one stamp for all entries, and a name that depends on the site alone', () => {
    expect(stampOfInstant('2026-11-25T08:00:01.250Z')).toBe('20261125T080001Z');
    expect([calendarName('Season House'), calendarName('…')]).toEqual(['season-season-house.ics', 'season-site.ics']);
  });

  it('is read by an independent reader in its strict mode (ical.js, RFC 5545)', () => {
    ICAL.design.strict = true;
    const text = icsText('Season, Season House', entries(), '20261125T080001Z');
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    expect(events.map((one) => one.getFirstPropertyValue('uid'))).toEqual(entries().map(({ uid }) => uid));
  });
});
