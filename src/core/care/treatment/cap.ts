import { ok, type Result, refuse } from '../../problems.ts';
import { roundTo } from '../../units.ts';
import { exact, isOver } from '../exact.ts';
import { positive } from './amount.ts';
import { sayMl } from './syringe.ts';

/**
 * Rule CARE-CAP: at most 2 % of body mass at once into the stomach, 1 mL taken as 1 g; more, up to 5 %, only with the
 * volume that the vet wrote (S: stomach capacity 2-5 % of body mass). Other ways are warned of above 2 % (common practice).
 */
export const CAP_PERCENT = { gavage: 2, most: 5 } as const;

/** Where a drug goes; a way that is not known here counts as one into the stomach, the stricter of the two. */
export type Way = 'stomach' | 'other' | 'unknown';

const STOMACH = words(
  'gavage|oral gavage|tube|stomach tube|feeding tube|gastric tube|tube feed|tube feeding|tube fed|stomach|into the stomach',
  'oral|orally|by mouth|po|per os',
);
const OTHER = words(
  'im|intramuscular|sc|sq|subq|subcut|subcutaneous|ic|ice|ico|intracoelomic|intracelomic|iv|intravenous|io|intraosseous|injection|injected',
  'topical|skin|on the skin|eye|ophthalmic|nasal|intranasal|nebulised|nebulized|inhaled|cloacal|bath',
);

/** What a volume is held against. */
export interface CapQuestion {
  readonly exactMl: number;
  readonly ml: number;
  readonly massG: number;
  readonly route: string;
  readonly capPercent?: number | undefined;
}

/** Where a route leads: capitals, dots, hyphens, blanks and a “by” or “via” before it do not matter. */
export function wayOf(route: string): Way {
  const word = route
    .toLowerCase()
    .replaceAll('.', '')
    .replace(/[\s_-]+/g, ' ')
    .trim();
  const bare = word.replace(/^(?:by|via) (?:an? |the )?/, '');
  if (STOMACH.has(word) || STOMACH.has(bare)) return 'stomach';
  return OTHER.has(word) || OTHER.has(bare) ? 'other' : 'unknown';
}

/** Whether a route says that a tube goes into the stomach; what is only given by mouth needs none. */
export function isTubeRoute(route: string): boolean {
  return wayOf(route) === 'stomach' && /tube|gavage|stomach/i.test(route);
}

/** Rule CARE-CAP: the warnings of a volume, or `over-cap`; also `text-missing`, `not-finite`, `not-positive` for route and cap. */
export function checkCap(question: CapQuestion): Result<readonly string[]> {
  const { route, capPercent } = question;
  if (route.trim() === '') return refuse('text-missing', { what: 'route' }, 'route');
  if (capPercent !== undefined) {
    const sound = positive(capPercent, 'cap', 'capPercent');
    if (!sound.ok) return sound;
  }
  const way = wayOf(route);
  const cap = Math.min(capPercent ?? (way === 'other' ? CAP_PERCENT.most : CAP_PERCENT.gavage), CAP_PERCENT.most);
  // The rounded volume is what goes in, so a cap that only the exact one keeps is not kept.
  const volume = Math.max(question.exactMl, question.ml);
  const percent = sharePercent(volume, question.massG);
  if (isOver(percent, cap)) return refuse('over-cap', { volume: sayMl(volume), percent: sayShare(percent, cap), cap });
  return ok([...routeWarnings(route, way), ...capWarnings(capPercent, cap), ...shareWarnings(way, percent, volume)]);
}

/** A share in percent with as many decimals as show that it lies over the cap. */
function sayShare(percent: number, cap: number): number {
  const decimals = [2, 3, 4].find((one) => roundTo(percent, one) > cap) ?? 4;
  return roundTo(percent, decimals);
}

/** How much of the body mass a volume is, in percent, 1 mL taken as 1 g. */
export function sharePercent(ml: number, massG: number): number {
  return exact((100 * ml) / massG);
}

function routeWarnings(route: string, way: Way): readonly string[] {
  if (way !== 'unknown') return [];
  return [
    `The route “${clip(route)}” is not known here, so the cap for the stomach was used. Compare it with what the vet wrote.`,
  ];
}

function capWarnings(asked: number | undefined, cap: number): readonly string[] {
  if (asked === undefined || !isOver(asked, CAP_PERCENT.gavage)) return [];
  const held = isOver(asked, cap) ? ` It was held at ${cap} %, the most that is taken here.` : '';
  return [
    `The cap is ${roundTo(asked, 2)} % and not ${CAP_PERCENT.gavage} %: only with the volume that the vet wrote.${held}`,
  ];
}

function shareWarnings(way: Way, percent: number, volume: number): readonly string[] {
  if (way !== 'other' || !isOver(percent, CAP_PERCENT.gavage)) return [];
  return [`${sayMl(volume)} is ${roundTo(percent, 2)} % of the body mass: ask the vet whether that is meant.`];
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

function words(...lists: readonly string[]): ReadonlySet<string> {
  return new Set(lists.flatMap((list) => list.split('|')));
}
