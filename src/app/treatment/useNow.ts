import { useEffect, useState } from 'preact/hooks';
import { useApp } from '../model/app.ts';
import { aheadOfUtcMs, type Now } from './siteTime.ts';

const LOOK_MS = 30_000;

/** The moment on the site’s clock, looked at again every half minute: a dose becomes due while the page stands open. */
export function useNow(): Now {
  const { clock } = useApp();
  const [, setLooks] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setLooks((looks) => looks + 1), LOOK_MS);
    return () => clearInterval(timer);
  }, []);
  const [nowMs, timeZone] = [clock.nowMs(), clock.timeZone.value];
  return { today: clock.today.value, nowMs, timeZone, aheadMs: aheadOfUtcMs(nowMs, timeZone) };
}
