import { useApp } from '../model/app.ts';
import { StampInHand, Strip } from '../scan/index.ts';

/** On every screen but Scan: the last entry above the thumb, and the five of them at a touch. */
export function LastEntries() {
  const { strip, desk } = useApp();
  const [last, ...before] = strip.entries.value;
  const held = desk.stamp.value !== null;
  if (last === undefined && !held) return null;
  return (
    <section class="last-entries" aria-label="Last entries">
      {last !== undefined && <Strip entries={[last]} />}
      {before.length > 0 && (
        <details>
          <summary>{before.length} before it</summary>
          <Strip entries={before} />
        </details>
      )}
      {held && <StampInHand />}
    </section>
  );
}
