import { useState } from 'preact/hooks';
import { type FemaleSeason, icsText } from '../../core/index.ts';
import { useApp } from '../model/app.ts';
import { saveText } from '../model/files.ts';
import { calendarName, entriesOf, stampOfInstant } from './calendarEntries.ts';

/** The open windows as a calendar file; read in again it moves its entries and doubles none. */
export function SaveCalendar({ board }: { readonly board: readonly FemaleSeason[] }) {
  const { site, clock } = useApp();
  const [said, setSaid] = useState('');
  const entries = entriesOf(board);
  function save(): void {
    const { name } = site.facility.value.site;
    const text = icsText(`Season, ${name}`, entries, stampOfInstant(clock.instantOn(clock.today.value)));
    saveText(calendarName(name), text, 'text/calendar;charset=utf-8');
    setSaid(`${entries.length} ${entries.length === 1 ? 'window is' : 'windows are'} in ${calendarName(name)}.`);
  }
  return (
    <div class="season-calendar">
      <button type="button" class="secondary" disabled={entries.length === 0} onClick={save}>
        Save the windows for a calendar
      </button>
      <p class="soft because">
        {entries.length === 0 ? 'No window is open yet. ' : ''}
        An .ics file of whole days, for any calendar. Saved again it moves its entries and doubles none.
      </p>
      <p role="status">{said}</p>
    </div>
  );
}
