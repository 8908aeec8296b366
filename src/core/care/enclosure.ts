import { ok, type Problem, problem, type Result, refuse } from '../problems.ts';
import { exact } from './exact.ts';
import { lengthInRange } from './length.ts';

/** A published rule of space; its id. */
export type EnclosureRule = (typeof ENCLOSURE_RULES)[number];

/** What {@link enclosureFor} takes: total length of the longest animal, and how many live together. */
export interface EnclosureQuestion {
  readonly rule: string;
  readonly species: string;
  readonly lengthM: number;
  readonly animals: number;
}

/** The least space by one published rule: a floor and a height, or length, width and height. */
export type Enclosure = {
  readonly heightM: number;
  readonly source: string;
  readonly caution: string;
} & ({ readonly floorM2: number } | { readonly lengthM: number; readonly widthM: number; readonly floorM2?: number });

/** The rules that are known here. */
export const ENCLOSURE_RULES = ['austria', 'germany', 'england'] as const;

/** Stands beside every figure; what is special to a case follows it. */
export const ENCLOSURE_CAUTION =
  'For comparison only: your local code, licence or inspector decides. The text was seen as quoted and not in the original.';

/** Up to this length in m: floor for one or two animals, height, floor for each further animal; null is the last row. */
type Row = readonly [upToM: number | null, floorM2: number, heightM: number, furtherM2: number];

const AUSTRIA = 'Austria, BGBl. II 486/2004, as reproduced on web pages';
const GERMANY = 'Germany, expert report of 10 January 1997, as quoted on web pages';
const ENGLAND = 'England, Animal Welfare Committee, opinion of 2023, as quoted on a web page';

/** Where the figures of each rule set come from, as it stands beside them. */
export const ENCLOSURE_SOURCES: Readonly<Record<EnclosureRule, string>> = {
  austria: AUSTRIA,
  germany: GERMANY,
  england: ENGLAND,
};

const GROUND: readonly Row[] = [
  [0.2, 0.1, 0.2, 0.015],
  [0.5, 0.2, 0.3, 0.05],
  [1, 0.5, 0.4, 0.15],
  [1.5, 0.9, 0.6, 0.2],
  [2, 1.2, 0.8, 0.4],
  [null, 1.5, 1.2, 0.6],
];
const CLIMBING: readonly Row[] = [
  [0.5, 0.2, 0.4, 0.05],
  [1, 0.5, 0.6, 0.1],
  [1.5, 0.9, 1, 0.2],
  [2, 1.2, 1.5, 0.4],
  [null, 1.5, 1.8, 0.6],
];
const BALL_PYTHON: readonly Row[] = [
  [0.5, 0.2, 0.4, 0.1],
  [1, 0.5, 0.6, 0.1],
  [null, 0.9, 0.7, 0.2],
];
const CORN_SNAKE: readonly Row[] = [
  [0.2, 0.1, 0.2, 0.015],
  [0.5, 0.2, 0.3, 0.05],
  [1, 0.5, 0.4, 0.1],
  [null, 0.9, 0.6, 0.2],
];

/** Which of the groups a name means; a name may be a species, or the group itself, such as “climbing snake”. */
const KINDS: readonly (readonly [RegExp, Kind])[] = [
  [/^python regius$|^ball python$|^royal python$/, 'ball-python'],
  [/^(pantherophis|elaphe) guttat(us|a)$|^corn snake$/, 'corn-snake'],
  [/^boa( (constrictor|imperator).*)?$/, 'boa'],
  [/^(morelia|corallus|boiga) |climbing|arboreal|tree/, 'climbing'],
  [/ground|terrestrial/, 'ground'],
];
type Kind = 'ball-python' | 'corn-snake' | 'boa' | 'climbing' | 'ground' | 'other';

/** Each further animal above two: 20 % more (Germany). */
const FURTHER_SHARE = 0.2;
const GERMAN_MOST_HEIGHT_M = 2;
/** Up to this length in m a boa is held to the longer of the two German factors. */
const LONG_BOA_M = 1.5;

/**
 * Rule CARE-ENCLOSURE: the least space by a published rule, for comparison only. Errors: `enclosure-rule-unknown`,
 * `enclosure-species-unknown`, `length-impossible`, `not-finite`, `not-positive`, `not-whole`.
 */
export function enclosureFor(question: EnclosureQuestion): Result<Enclosure> {
  const rule = ruleOf(question.rule);
  if (rule === null)
    return refuse('enclosure-rule-unknown', { rule: clip(question.rule), known: ENCLOSURE_RULES.join(', ') }, 'rule');
  const wrong = figureFault(question);
  if (wrong !== null) return { ok: false, problem: wrong };
  switch (rule) {
    case 'austria':
      return ok(austria(question));
    case 'germany':
      return germany(question);
    case 'england':
      return ok(england(question));
    default:
      return rule satisfies never;
  }
}

function figureFault({ lengthM, animals, species }: EnclosureQuestion): Problem | null {
  const length = lengthInRange(lengthM);
  if (!length.ok) return length.problem;
  if (species.trim() === '') return problem('text-missing', { what: 'species' }, 'species');
  if (!Number.isFinite(animals)) return problem('not-finite', { what: 'number of animals' }, 'animals');
  if (animals <= 0) return problem('not-positive', { what: 'number of animals' }, 'animals');
  return Number.isInteger(animals) ? null : problem('not-whole', { what: 'number of animals' }, 'animals');
}

/** A rule by its id, by its country’s code, or with its year. */
function ruleOf(text: string): EnclosureRule | null {
  const word = text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]*\d{4}$/, '');
  const named: Readonly<Record<EnclosureRule, readonly string[]>> = {
    austria: ['austria', 'at'],
    germany: ['germany', 'de'],
    england: ['england', 'gb-eng', 'awc'],
  };
  return ENCLOSURE_RULES.find((rule) => named[rule].includes(word)) ?? null;
}

function austria({ species, lengthM, animals }: EnclosureQuestion): Enclosure {
  const kind = kindOf(species);
  const rows = austrianRows(kind);
  const [, floorM2, heightM, furtherM2] = rows.find(([upToM]) => upToM === null || lengthM <= upToM) ?? LARGEST;
  const taken =
    kind === 'other' || kind === 'boa'
      ? ' The rows for ground-dwelling snakes in general were used; a climbing snake needs more height, and the law may have rows of its own for this species.'
      : '';
  return {
    floorM2: exact(floorM2 + furtherM2 * Math.max(0, animals - 2)),
    heightM,
    source: AUSTRIA,
    caution: ENCLOSURE_CAUTION + taken,
  };
}

const LARGEST: Row = [null, 1.5, 1.2, 0.6];

function austrianRows(kind: Kind): readonly Row[] {
  switch (kind) {
    case 'ball-python':
      return BALL_PYTHON;
    case 'corn-snake':
      return CORN_SNAKE;
    case 'climbing':
      return CLIMBING;
    case 'boa':
    case 'ground':
    case 'other':
      return GROUND;
    default:
      return kind satisfies never;
  }
}

function germany({ species, lengthM, animals }: EnclosureQuestion): Result<Enclosure> {
  const kind = kindOf(species);
  if (kind !== 'ball-python' && kind !== 'boa')
    return refuse(
      'enclosure-species-unknown',
      { rule: 'germany', species: clip(species), known: 'Python regius, Boa constrictor, Boa imperator' },
      'species',
    );
  const longFactor = kind === 'boa' && lengthM > LONG_BOA_M ? 0.75 : 1;
  const [length, width] = [exact(longFactor * lengthM), exact(0.5 * lengthM)];
  const further = Math.max(0, animals - 2);
  const more = ` The sides are those for two animals; the floor is that with 20 % more for each further one, which is how the quotation was read.`;
  return ok({
    lengthM: length,
    widthM: width,
    heightM: Math.min(exact(0.75 * lengthM), GERMAN_MOST_HEIGHT_M),
    ...(further > 0 && { floorM2: exact(length * width * (1 + FURTHER_SHARE * further)) }),
    source: GERMANY,
    caution: ENCLOSURE_CAUTION + (further > 0 ? more : ''),
  });
}

function england({ species, lengthM, animals }: EnclosureQuestion): Enclosure {
  const notes = [
    kindOf(species) === 'climbing' &&
      ' The figures are those for ground-dwelling snakes; a climbing snake needs more height.',
    animals > 1 && ' What was quoted says nothing of several animals together: ask for more.',
  ];
  return {
    lengthM: exact(lengthM),
    widthM: exact((2 * lengthM) / 3),
    heightM: exact(lengthM / 3),
    source: ENGLAND,
    caution: ENCLOSURE_CAUTION + notes.filter((one) => one !== false).join(''),
  };
}

function kindOf(species: string): Kind {
  const name = species.trim().toLowerCase().replace(/\s+/g, ' ');
  return KINDS.find(([pattern]) => pattern.test(name))?.[1] ?? 'other';
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
