import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarEntry, icsText } from '../../../src/core/index.ts';
import { day } from '../log.ts';

const ENTRY: CalendarEntry = {
  uid: '7K3M9QXA-laid@quillmarsh.example',
  from: day('2026-03-29'),
  to: day('2026-04-02'),
  summary: 'Bracken, laying; usually 28–32 d',
  description: `Line one\nline \\ two ${'wörter '.repeat(30)}🐍`,
};
const text = icsText('Season windows', [ENTRY], '20260309T080000Z');

// ical.js (general library, MPL-2.0) in its strictest mode stands in for the calendars that will read it.
function strictly<T>(read: () => T): T {
  const { strict } = ICAL.design as unknown as { strict: boolean };
  (ICAL.design as unknown as { strict: boolean }).strict = true;
  try {
    return read();
  } finally {
    (ICAL.design as unknown as { strict: boolean }).strict = strict;
  }
}

describe('a calendar of windows (RFC 5545)', () => {
  const component = strictly(() => new ICAL.Component(ICAL.parse(text)));
  const event = new ICAL.Event(component.getFirstSubcomponent('vevent') ?? undefined);
  it('is read by an independent library in its strictest mode, word for word', () => {
    expect([event.uid, event.summary, event.description]).toEqual([ENTRY.uid, ENTRY.summary, ENTRY.description]);
  });
  it('lasts whole days, its end the day after the last (3.6.1)', () => {
    expect([event.startDate.toString(), event.endDate.toString(), event.startDate.isDate]).toEqual([
      '2026-03-29',
      '2026-04-03',
      true,
    ]);
  });
  it('folds at 75 octets and ends lines with CRLF (3.1)', () => {
    const lines = text.split('\r\n');
    expect(lines.at(-1)).toBe('');
    expect(lines.every((line) => new TextEncoder().encode(line).length <= 75 && !line.includes('\n'))).toBe(true);
  });
  it('leaves control characters out and is whole without entries', () => {
    const odd = icsText('a\u0007b', [], '20260309T080000Z');
    expect(strictly(() => ICAL.parse(odd))[0]).toBe('vcalendar');
    expect(odd).toContain('NAME:ab');
  });
});
