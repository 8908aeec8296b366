import { compareFractions, type Fraction, fraction, multiplyFractions, ONE } from '../../core/index.ts';

const HUNDRED = fraction(100n, 1n);
const SMALLEST = fraction(1n, 1000n);
const LARGEST = fraction(999n, 1000n);

/**
 * A chance as a percent of at most three digits: `25 %`, `≈ 36.5 %` where it is rounded, `< 0.1 %` and `> 99.9 %` at the
 * ends, so that what is possible is never said to be 0 and what is open never 100.
 */
export function sayPercent(chance: Fraction): string {
  if (chance.top > 0n && compareFractions(chance, SMALLEST) < 0) return '< 0.1 %';
  if (compareFractions(chance, ONE) < 0 && compareFractions(chance, LARGEST) > 0) return '> 99.9 %';
  return `${sayRounded(multiplyFractions(chance, HUNDRED), 3)} %`;
}

/** A count that is expected, to at most three digits: `4.5`, `≈ 1.33`. */
export function sayExpected(count: Fraction): string {
  return sayRounded(count, 3);
}

/** A double that stands for a chance: always rounded, since nobody knows its last digits. */
export function sayAboutPercent(chance: number): string {
  const [top, bottom] = [BigInt(Math.round(chance * 1e12)), 10n ** 12n];
  const said = sayPercent(fraction(top, bottom));
  return /^[<>≈]/.test(said) ? said : `≈ ${said}`;
}

/** Halves go up; what was rounded says so. */
function sayRounded(value: Fraction, digits: number): string {
  const whole = value.top / value.bottom;
  const decimals = Math.max(0, digits - (whole === 0n ? leadingZeros(value, digits) : String(whole).length));
  const scale = 10n ** BigInt(decimals);
  const scaled = (2n * value.top * scale + value.bottom) / (2n * value.bottom);
  const isExact = scaled * value.bottom === value.top * scale;
  const text = String(scaled).padStart(decimals + 1, '0');
  const [before, after] = [text.slice(0, text.length - decimals), text.slice(text.length - decimals)];
  const part = decimals === 0 ? '' : after.replace(/0+$/, '');
  const figure = part === '' ? before : `${before}.${part}`;
  return isExact ? figure : `≈ ${figure}`;
}

/** Below 1 the zeros behind the point are no digits that count: 0.0123 has three. */
function leadingZeros({ top, bottom }: Fraction, most: number): number {
  let zeros = 0;
  for (let value = top * 10n; value > 0n && value < bottom && zeros < most; value *= 10n) zeros++;
  return -zeros;
}
