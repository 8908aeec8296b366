import type { Day, Window } from '../../core/index.ts';
import { Because } from '../record/Because.tsx';
import { sayAhead, sayRange, whyWindow } from './window.ts';

/** A window as a range of days, how far off it is, and what it rests on. */
export function WindowLine({ window, today }: { readonly window: Window; readonly today: Day }) {
  const { from, to, step } = window;
  const isLate = to < today;
  return (
    <div class={`window-line${isLate ? ' window-late' : from <= today ? ' window-open' : ''}`}>
      <p>
        <WindowDot window={window} today={today} />
        <strong>
          <time dateTime={from} title={`${from} to ${to}`}>
            {sayRange(window, today)}
          </time>
        </strong>
      </p>
      <Because lead={sayAhead(window, today)} about={`${step.to} window`} why={whyWindow(window)} />
    </div>
  );
}

/** Open ring: still to come. Filled: now. With a bar: it should have come. */
function WindowDot({ window: { from, to }, today }: { readonly window: Window; readonly today: Day }) {
  return (
    <svg class="window-dot" viewBox="0 0 24 24" width="20" height="20" aria-hidden="true">
      {from > today ? (
        <circle class="stroke" cx="12" cy="12" r="5" />
      ) : (
        <circle class="fill" cx="12" cy={to < today ? 10 : 12} r="6" />
      )}
      {to < today && <path class="stroke" d="M4 21h16" />}
    </svg>
  );
}
