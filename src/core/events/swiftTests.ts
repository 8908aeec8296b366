import type * as z from 'zod/mini';

/** True only for a value that passes the check; where it is false the check itself has the last word. */
export type Test = (value: unknown) => boolean;

/** The tests that stand for a schema's checks; null if one of them is of a kind that is not known here. */
export function testsOf(checks: readonly z.core.$ZodCheck<never>[]): readonly Test[] | null {
  const tests = checks.map(testOf);
  return tests.every((test) => test !== null) ? tests : null;
}

type Definition = (z.core.$ZodChecks | z.core.$ZodCheckRegex | z.core.$ZodCustom)['_zod']['def'];

function testOf(check: z.core.$ZodCheck<never>): Test | null {
  const def = check._zod.def as Definition;
  switch (def.check) {
    case 'less_than':
      return typeof def.value === 'number' ? mostTest(def.value, def.inclusive) : null;
    case 'greater_than':
      return typeof def.value === 'number' ? leastTest(def.value, def.inclusive) : null;
    case 'max_length':
      return longestTest(def.maximum);
    case 'min_length':
      return shortestTest(def.minimum);
    case 'string_format':
      return def.format === 'regex' ? patternTest(def.pattern) : null;
    case 'custom':
      return 'fn' in def && def.when === undefined ? ownTest(def.fn) : null;
    default:
      return null;
  }
}

function mostTest(most: number, inclusive: boolean): Test {
  return (value) => typeof value === 'number' && (inclusive ? value <= most : value < most);
}

function leastTest(least: number, inclusive: boolean): Test {
  return (value) => typeof value === 'number' && (inclusive ? value >= least : value > least);
}

/** A text has no more code points, which zod counts, than units. */
function longestTest(most: number): Test {
  return (value) => (typeof value === 'string' || Array.isArray(value)) && value.length <= most;
}

/** A text has at least half as many code points as units. */
function shortestTest(least: number): Test {
  const units = 2 * least - 1;
  return (value) => (typeof value === 'string' ? value.length >= units : Array.isArray(value) && value.length >= least);
}

/** A pattern that remembers where it stopped would tell two looks at one text apart. */
function patternTest(pattern: RegExp | undefined): Test | null {
  if (pattern === undefined || pattern.global || pattern.sticky) return null;
  return (value) => typeof value === 'string' && pattern.test(value);
}

/** Only a plain `true` counts: a promise would be no answer, and zod says so. */
function ownTest(judge: (value: unknown) => unknown): Test {
  return (value) => judge(value) === true;
}
