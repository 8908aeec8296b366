/** A body as the simulation knows it; keepers only see it on the scales. */
export interface Body {
  massG: number;
  /** Where growth ends. */
  readonly adultG: number;
  /** What it has lost to fasting or laying and will put on again first. */
  lostG: number;
}

/** What the day costs a body of a kilogram that does not eat, below the 0.12 % a day of McCue 2007 for resting adults. */
const DAILY_LOSS = 0.0009;
/** Smaller bodies lose faster; the exponent is that of mass-specific metabolism (Andrews & Pough 1985: 0.80 - 1). */
const LOSS_EXPONENT = -0.2;
/** How much of a meal becomes new body, and how much of it makes good a loss (our choice; growth lies near published logs). */
const GROWTH_SHARE = 0.3;
const RECOVERY_SHARE = 0.5;

/** A day without a meal. */
export function liveADay(body: Body): void {
  const loss = body.massG * DAILY_LOSS * (body.massG / 1000) ** LOSS_EXPONENT;
  body.massG -= loss;
  body.lostG += loss;
}

/** A meal: first what was lost, then growth, which slows towards the adult mass; returns the grams put on. */
export function eat(body: Body, mealG: number): number {
  const back = Math.min(body.lostG, RECOVERY_SHARE * mealG);
  const grown = GROWTH_SHARE * mealG * Math.max(0, 1 - body.massG / body.adultG);
  body.massG += back + grown;
  body.lostG -= back;
  return back + grown;
}

/** Loses a share of the mass at once, as in laying. */
export function lose(body: Body, share: number): void {
  body.lostG += body.massG * share;
  body.massG *= 1 - share;
}
