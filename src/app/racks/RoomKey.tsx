import { type DotState, StateDot, sayDot } from '../look/StateDot.tsx';
import type { RoomLens } from './roomView.ts';

const DOTS: readonly DotState[] = ['due', 'overdue', 'soon', 'hold', 'vet', 'fed'];

/** What the marks mean, in words. */
export function RoomKey({ lens, far }: { readonly lens: RoomLens; readonly far: boolean }) {
  if (lens === 'weight')
    return (
      <p class="room-key">
        <span class="tub-weigh">{far ? 'A bar' : 'Underlined'}</span> is a weight older than this size is weighed, or
        never weighed (hatchlings 14, growers 30, adults 90 days: common practice, no source).
      </p>
    );
  if (lens === 'empty') return <p class="room-key">A broken frame is empty; an open dot is somebody’s home.</p>;
  return (
    <ul class="room-key">
      {DOTS.map((dot) => (
        <li key={dot}>
          <StateDot state={dot} silent /> {sayDot(dot)}
        </li>
      ))}
    </ul>
  );
}
