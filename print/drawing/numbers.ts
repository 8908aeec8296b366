/** The texts of hundredths that were asked for before: most numbers of a run come again on every card. */
const known: string[] = [];
const KEPT = 30_000;

/** So many hundredths as a number of the page's content: as short as it can be written, `.5` and not `0.50`. */
export function hundredths(count: number): string {
  if (count < 0) return `-${hundredths(-count)}`;
  if (count >= KEPT) return short(count / 100);
  const text = known[count];
  if (text !== undefined) return text;
  const made = short(count / 100);
  known[count] = made;
  return made;
}

/** A length in mm to a hundredth, as a number of the page's content. */
export function mm(value: number): string {
  return hundredths(Math.round(value * 100) + 0);
}

/** A number to five decimals: less than a thousandth of any printer's dot. */
export function exact(value: number): string {
  return short(Math.round(value * 1e5) / 1e5 + 0);
}

/** A scale: it is multiplied by hundreds of units, so it has seven decimals. */
export function scale(value: number): string {
  return short(Math.round(value * 1e7) / 1e7);
}

function short(value: number): string {
  const text = String(value);
  if (text.startsWith('0.')) return text.slice(1);
  return text.startsWith('-0.') ? `-${text.slice(2)}` : text;
}
