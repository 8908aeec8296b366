import { addDays, type Day } from '../days.ts';

/** An entry of a calendar: whole days, `to` the last of them. */
export interface CalendarEntry {
  readonly uid: string;
  readonly from: Day;
  readonly to: Day;
  readonly summary: string;
  readonly description: string;
}

/** Lines are folded at so many octets (RFC 5545, section 3.1). */
const MOST_OCTETS = 75;

/**
 * Whole-day entries as an iCalendar stream (RFC 5545): CRLF line ends, folded lines, escaped text. DTEND is the day after
 * the last one (section 3.6.1). `stampUtc` is the instant of making as `20260309T080000Z`, the same for all entries.
 */
export function icsText(name: string, entries: readonly CalendarEntry[], stampUtc: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Tubwright//Season windows//EN',
    'CALSCALE:GREGORIAN',
    `NAME:${escaped(name)}`,
    ...entries.flatMap((entry) => eventLines(entry, stampUtc)),
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}

function eventLines({ uid, from, to, summary, description }: CalendarEntry, stampUtc: string): readonly string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${stampUtc}`,
    `DTSTART;VALUE=DATE:${basic(from)}`,
    `DTEND;VALUE=DATE:${basic(addDays(to, 1))}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

function basic(day: Day): string {
  return day.replaceAll('-', '');
}

/** TEXT values (section 3.3.11): backslash, semicolon, comma and line break are escaped; other control characters are left out. */
function escaped(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replaceAll('\n', '\\n')
    .replace(/\p{Cc}/gu, '');
}

/** A line in pieces of at most 75 octets, never within a character; each further piece begins with a space. */
function folded(line: string): string {
  let octets = 0;
  let text = '';
  for (const character of line) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}

function octetsOf(character: string): number {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
