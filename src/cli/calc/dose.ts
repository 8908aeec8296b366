import * as z from 'zod/mini';
import {
  type DoseAnswer,
  type DoseQuestion,
  doseVolume,
  ok,
  type Result,
  refuse,
  tenfoldFault,
} from '../../core/index.ts';
import { dayAt, figure, word } from './fields.ts';
import { type Kind, readCase, wrongCase } from './kind.ts';

const HELP = `dose: the volume of a dose that a vet wrote; it proposes no drug and no dose
  {"massKg"|"massG"|"massLb" (one of them), "massDate", "on", "young"?: true|false, "flagged"?: true|false,
   "dose": {"mgPerKg"}, "strength": {"mgPerMl"}|{"percentWv"}, "syringesMl"?: [1, 3, …], "capPercent"?, "route",
   "earlierMl"?: [what was given before on the same prescription, in mL]}
    -> {"exactMl","ml","syringeMl","markMl","differencePercent","warnings":[…],"caution"}`;

const yesOrNo = z.nullish(z.boolean('true or false is wanted'));
const caseOf = z.object({
  massKg: z.optional(figure),
  massG: z.optional(figure),
  massLb: z.optional(figure),
  massDate: z.string('a day is wanted, such as 2026-03-09'),
  on: z.string('a day is wanted, such as 2026-03-09'),
  young: yesOrNo,
  flagged: yesOrNo,
  dose: z.optional(z.unknown()),
  strength: z.optional(z.unknown()),
  syringesMl: z.optional(z.array(figure, 'a list of sizes in mL is wanted, such as [1, 3]')),
  capPercent: z.optional(figure),
  earlierMl: z.optional(z.array(figure, 'a list of volumes in mL is wanted, such as [0.5]')),
  route: word,
});
type Case = z.infer<typeof caseOf>;

/** Doses from outside. */
export const doseKind: Kind = {
  name: 'dose',
  help: HELP,
  answer: (given) => {
    const read = readCase(caseOf, given);
    return read.ok ? answer(read.value) : read;
  },
};

function answer(given: Case): Result<DoseAnswer> {
  const question = questionOf(given);
  if (!question.ok) return question;
  const dose = doseVolume(question.value);
  if (!dose.ok) return dose;
  const odd = tenfoldFault(dose.value.ml, given.earlierMl ?? []);
  if (odd !== null) return { ok: false, problem: { ...odd, path: 'earlierMl' } };
  // Field by field, so that the answer keeps the form of its help whatever core adds.
  const { exactMl, ml, syringeMl, markMl, differencePercent, warnings, caution } = dose.value;
  return ok({ exactMl, ml, syringeMl, markMl, differencePercent, warnings, caution });
}

function questionOf(given: Case): Result<DoseQuestion> {
  const massDate = dayAt(given.massDate, 'massDate');
  if (!massDate.ok) return massDate;
  const on = dayAt(given.on, 'on');
  if (!on.ok) return on;
  const dose = unitsOf(given.dose, 'dose', ['mgPerKg']);
  if (!dose.ok) return dose;
  const strength = unitsOf(given.strength, 'strength', ['mgPerMl', 'percentWv']);
  if (!strength.ok) return strength;
  const { massKg, massG, massLb, syringesMl, capPercent, route } = given;
  return ok({
    ...{ massKg, massG, massLb, syringesMl, capPercent, route },
    massDate: massDate.value,
    on: on.value,
    young: given.young ?? undefined,
    flagged: given.flagged ?? undefined,
    // Without the unit this is NaN and never reached: unitsOf has refused it.
    dose: { mgPerKg: dose.value.mgPerKg ?? Number.NaN },
    strength: strength.value,
  });
}

/**
 * The figures of a dose or a strength by their units. What is not known here is refused and not passed over, because it may
 * be another figure of the vet's. Errors: `unit-missing`, `case-malformed`.
 */
function unitsOf<K extends string>(given: unknown, name: string, units: readonly K[]): Result<{ [key in K]?: number }> {
  const example = units.map((unit) => `{"${unit}": 5}`).join(' or ');
  const bare = given === undefined || given === null || typeof given === 'number';
  if (bare) return refuse('unit-missing', { text: typeof given === 'number' ? String(given) : name, example }, name);
  if (typeof given !== 'object' || Array.isArray(given)) return wrongCase(`${example} is wanted`, name);
  const fields = Object.entries(given);
  const isUnit = (text: string): text is K => units.some((unit) => unit === text);
  if (!fields.some(([field]) => isUnit(field))) return refuse('unit-missing', { text: name, example }, name);
  const figures: { [key in K]?: number } = {};
  for (const [field, value] of fields) {
    const path = `${name}.${field}`;
    if (!isUnit(field)) return wrongCase(`only ${units.join(' or ')} is known here`, path);
    if (value !== null && typeof value !== 'number') return wrongCase('a number is wanted, such as 5', path);
    figures[field] = value ?? Number.NaN;
  }
  return ok(figures);
}
