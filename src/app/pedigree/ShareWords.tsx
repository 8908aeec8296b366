import { type Fraction, sayFraction } from '../../core/index.ts';
import { type Share, sayAboutPercent, sayPercent } from '../genetics/index.ts';

/** More digits than this below the line are not read at a glance. */
const LONG_DIGITS = 5;

/** A share in figures: `1/4 · 25 %`; one with a long bottom as its percent, and the exact fraction on asking. */
export function ShareWords({ share }: { readonly share: Share }) {
  if (typeof share === 'number') return <span class="share">{sayAboutPercent(share)}</span>;
  const exact = sayFraction(share);
  if (isLong(share))
    return (
      <details class="share-long">
        <summary>
          {sayPercent(share)} <span>exactly</span>
        </summary>
        <span class="share-exact">{exact}</span>
      </details>
    );
  return (
    <span class="share">
      {share.bottom !== 1n && (
        <>
          <b>{exact}</b> ·{' '}
        </>
      )}
      {sayPercent(share)}
    </span>
  );
}

/** In one line, where there is no room to unfold. */
export function sayShareLine(share: Fraction): string {
  return isLong(share) || share.bottom === 1n ? sayPercent(share) : `${sayFraction(share)} · ${sayPercent(share)}`;
}

/** Whether there is nothing of it. */
export function isNothing(share: Share): boolean {
  return typeof share === 'number' ? share === 0 : share.top === 0n;
}

function isLong({ bottom }: Fraction): boolean {
  return `${bottom}`.length >= LONG_DIGITS;
}
