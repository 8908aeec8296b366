import type { Completeness, GenerationKnown } from './completeness.ts';
import { compare, type Fraction, fraction, isZero, multiply } from './fraction.ts';

/**
 * An inbreeding coefficient in words that do not say more than is known: unknown ancestors are taken as unrelated, so
 * that it is a lower bound where some are unknown, as in `at least 12.5 %: 3 of 4 grandparents known`.
 */
export function sayInbreeding(inbreeding: Fraction, { generations }: Completeness): string {
  const gap = generations.find((one) => one.known < one.of);
  if (gap?.generation === 1) return `not known: ${knownWords(gap)}`;
  if (gap !== undefined) return `${atLeast(inbreeding)}: ${knownWords(gap)}`;
  const asked = generations.length;
  const span = asked === 1 ? 'both parents known, nothing asked beyond' : `all ancestors of ${asked} generations known`;
  return `${exactly(inbreeding)}: ${span}`;
}

const NAMES: Readonly<Record<number, string>> = { 1: 'parents', 2: 'grandparents', 3: 'great-grandparents' };

function knownWords({ generation, known, of }: GenerationKnown): string {
  return `${known} of ${of} ${NAMES[generation] ?? `ancestors in generation ${generation}`} known`;
}

/** Rounded down to hundredths of a percent, so that it stays a lower bound. */
function atLeast(inbreeding: Fraction): string {
  const { words, isSmall } = percent(inbreeding);
  return isSmall ? 'above 0 %' : `at least ${words}`;
}

function exactly(inbreeding: Fraction): string {
  const { words, isSmall, isRounded } = percent(inbreeding);
  if (isSmall) return 'less than 0.01 %';
  return isRounded ? `about ${words}` : words;
}

function percent(a: Fraction): { words: string; isSmall: boolean; isRounded: boolean } {
  const hundredths = multiply(a, fraction(10_000n, 1n));
  const down = hundredths.top / hundredths.bottom;
  const part = String(down % 100n)
    .padStart(2, '0')
    .replace(/0+$/, '');
  const isRounded = compare(hundredths, fraction(down, 1n)) !== 0;
  return {
    words: `${down / 100n}${part === '' ? '' : `.${part}`} %`,
    isSmall: down === 0n && !isZero(a),
    isRounded,
  };
}
