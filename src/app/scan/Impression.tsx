import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { useApp } from '../model/app.ts';
import type { Sign } from '../model/signs.ts';
import type { StripEntry } from '../model/strip.ts';

const SHOWN_MS = 1600;

/** What the stamp left on the last card, for a moment: those who hear nothing see that it was written, asked or refused. */
export function Impression() {
  const { signs, strip, desk } = useApp();
  const shown = useSignal<{ readonly sign: Sign; readonly words: string } | null>(null);
  const seen = useRef({ count: signs.last.value?.count ?? 0, entry: strip.entries.value[0] });
  const count = signs.last.value?.count ?? 0;
  useEffect(() => {
    const entry = strip.entries.value[0];
    const before = seen.current;
    seen.current = { count, entry };
    if (count === before.count || signs.last.value === null) return;
    const { sign } = signs.last.value;
    shown.value = { sign, words: wordsOf(sign, before.entry, entry, desk.stamp.value?.words) };
    const timer = setTimeout(() => {
      shown.value = null;
    }, SHOWN_MS);
    return () => clearTimeout(timer);
  }, [count]);
  if (shown.value === null) return null;
  return (
    <p key={count} class={`impression impression-${shown.value.sign}`} aria-hidden="true">
      {shown.value.words}
    </p>
  );
}

/** An accepted sign without a new entry was a stamp taken up, or an entry taken back. */
function wordsOf(sign: Sign, before: StripEntry | undefined, now: StripEntry | undefined, stamp = 'taken up'): string {
  if (sign === 'asks') return 'asks';
  if (sign === 'refused') return 'not written';
  if (now !== undefined && now.key !== before?.key) return now.said;
  return wasTakenBack(before, now) ? 'taken back' : stamp;
}

function wasTakenBack(before: StripEntry | undefined, now: StripEntry | undefined): boolean {
  return now !== undefined && before !== undefined && now !== before;
}
