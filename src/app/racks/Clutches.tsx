import { type ClutchRecord, sayId } from '../../core/index.ts';
import { sayOut } from '../clutch/hatchWords.ts';
import { sayClutch, sayCount } from '../clutch/sayClutch.ts';
import { hatchWindow, sayAhead, sayRange } from '../clutch/window.ts';
import { useApp } from '../model/app.ts';

/** The clutches that lie in a place, and when each is expected to hatch. */
export function Clutches({ clutches }: { readonly clutches: readonly ClutchRecord[] }) {
  const { site, clock } = useApp();
  const facility = site.facility.value;
  const today = clock.today.value;
  return (
    <>
      {clutches.map((clutch) => {
        const window = hatchWindow(facility, clutch);
        return (
          <a key={clutch.id} class="occupant" href={`/clutch/${clutch.id}`}>
            <span class="occupant-name">{sayClutch(facility, clutch)}</span>
            <span class="occupant-id">{sayId(clutch.id)}</span>
            <span>{clutch.hatchedOn === null ? sayCount(clutch) : sayOut(clutch, today)}</span>
            {window !== null && (
              <span class="occupant-due">
                Hatches {sayRange(window, today)}, {sayAhead(window, today)}
              </span>
            )}
          </a>
        );
      })}
    </>
  );
}
